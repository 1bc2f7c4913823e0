import { amount, type Pairing, type Report } from '../../core/index.ts';
import { judge } from '../state/draft.ts';
import { said } from '../state/words.ts';

/**
 * A pairing on disk, version 1: JSON in UTF-8,
 *
 *     {"pupilwalk": 1, "pairing": {…}, "report": {…}}
 *
 * - `pupilwalk`: the version of this form, a whole number; apart from the link's and the API's own;
 * - `pairing`: as `POST /api/pairings/report` takes it, its parts written out, never by id;
 * - `report`: what that answered when the file was written, for those who read the numbers without the page;
 * - `table`: on a sheet saved as data, what was set on the table and what that came to, for the same readers.
 *
 * Whoever opens one reads `pupilwalk` and `pairing` alone and works the report out anew.
 */
const VERSION = 1;

/** Larger files are not even read: a pairing with everything in it takes some tens of kB. */
export const LARGEST_BYTES = 256 * 1024;

export const written = (pairing: Pairing, report: Report, table?: object): string =>
  `${JSON.stringify({ pupilwalk: VERSION, pairing, report, table }, null, 2)}\n`;

/** A name for the file, of its parts: `pupilwalk-10x-5D.json`. */
export function fileName({ objective, relay }: Pairing): string {
  const strength =
    relay.powerDioptre !== undefined
      ? `${amount(relay.powerDioptre)}D`
      : relay.focalLengthMm !== undefined
        ? `${amount(relay.focalLengthMm)}mm`
        : 'glass';
  return `pupilwalk-${amount(objective.magnification)}x-${strength}.json`;
}

export type Read =
  | { pairing: Pairing; fault?: undefined; waits?: undefined }
  /** Why the file holds no pairing that can be shown, to follow 'could not be opened: '. */
  | { fault: string; pairing?: undefined; waits?: undefined }
  /** Whether it holds a pairing turns out when what works with glass is there. */
  | { waits: true; pairing?: undefined; fault?: undefined };

/** What a file's bytes hold. Anybody may have written them. Never throws. */
export function read(bytes: Uint8Array): Read {
  let held: unknown;
  try {
    held = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return { fault: bytes.length === 0 ? 'it is empty' : 'it is no JSON, or cut short or damaged' };
  }
  const version = own(held, 'pupilwalk');
  if (version === undefined) return { fault: 'it was not saved from this page' };
  if (version !== VERSION)
    return {
      fault:
        typeof version === 'number' && version > VERSION ? 'it comes from a later version of this page' : 'its version is not known here',
    };
  const pairing = own(held, 'pairing');
  if (pairing === undefined) return { fault: 'there is no pairing in it' };
  try {
    const judged = judge(pairing);
    if (judged.waits) return { waits: true };
    const first = judged.problems?.[0];
    return first ? { fault: said(first).replace(/\.$/, '') } : { pairing: judged.evaluation?.pairing as Pairing };
  } catch {
    return { fault: 'what it holds is no pairing' };
  }
}

const own = (held: unknown, key: string): unknown =>
  typeof held === 'object' && held !== null && Object.hasOwn(held, key) ? (held as Record<string, unknown>)[key] : undefined;
