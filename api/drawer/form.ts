import { z } from 'zod';
import { MOST_OWN, type OwnPart, ownId, ownPartSchema, sameJson } from '../../core/index.ts';
import { plain } from './judge.ts';

/** The drawer's file: its version, what may stand in it, and how it is read and written. */

const FILE_VERSION = 1;
/** What the file may be at most, and so what may be taken in at once: some 4 kB for each part that there can be. */
export const MOST_BYTES = 8 * 1024 * 1024;

/** An own part as it is kept: `version` grows by one with each change of it. */
export type Stored = OwnPart & { readonly id: string; readonly version: number };

export interface Contents {
  /** Grows by one with each write. */
  readonly revision: number;
  /** By id, in the order in which they came. */
  readonly parts: ReadonlyMap<string, Stored>;
  /**
   * The last version of parts that were taken out, the latest last: a part put back under the same id goes on
   * from there, so that a version never names two different states.
   */
  readonly gone: ReadonlyMap<string, number>;
}

export const EMPTY: Contents = { revision: 0, parts: new Map(), gone: new Map() };

const whole = z.number().int().min(0).max(Number.MAX_SAFE_INTEGER);
const [objective, relay, sensor] = ownPartSchema.options;
const kept = { id: ownId, version: whole.min(1) };
const stored = z.discriminatedUnion('kind', [objective.extend(kept), relay.extend(kept), sensor.extend(kept)]);
const file = z.strictObject({
  pupilwalkDrawer: z.literal(FILE_VERSION),
  revision: whole,
  parts: z.array(stored).max(MOST_OWN),
  gone: z.array(z.strictObject(kept)).max(MOST_OWN).optional(),
});

/** Why a value is no drawer of ours, before its parts are looked at; undefined where it is one. */
export function notOurs(value: unknown): { code: string; why: string } | undefined {
  const version =
    typeof value === 'object' && value !== null && Object.hasOwn(value, 'pupilwalkDrawer')
      ? (value as { pupilwalkDrawer: unknown }).pupilwalkDrawer
      : undefined;
  if (typeof version !== 'number')
    return { code: 'notADrawer', why: 'is no drawer of this program: "pupilwalkDrawer" does not stand in it' };
  if (version > FILE_VERSION)
    return {
      code: 'laterVersion',
      why: `was written by a later version of this program (its form is ${version}, this one reads ${FILE_VERSION})`,
    };
  if (version !== FILE_VERSION) return { code: 'notADrawer', why: `is of a form that there never was: "pupilwalkDrawer": ${version}` };
  return undefined;
}

/** The text of a file as what it holds, or in words why it is not taken. */
export function readContents(text: string): { contents: Contents } | { why: string } {
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return { why: text.trim() === '' ? 'is empty' : `is damaged: it is no whole JSON (${(error as Error).message.slice(0, 100)})` };
  }
  const strange = notOurs(value);
  if (strange) return strange;
  const read = file.safeParse(value);
  if (!read.success) {
    const [first] = read.error.issues;
    return { why: `is damaged at ${first?.path.join(' / ') || 'its top'}: ${first?.message ?? 'it cannot be read'}` };
  }
  const parts = new Map(read.data.parts.map((part) => [part.id, plain(part)]));
  const gone = new Map((read.data.gone ?? []).map(({ id, version }) => [id, version]));
  if (parts.size < read.data.parts.length) return { why: 'is damaged: two parts in it have the same id' };
  return { contents: { revision: read.data.revision, parts, gone } };
}

/** What is kept, as the text of the file. */
export function textOf({ revision, parts, gone }: Contents): string {
  const left = [...gone].filter(([id]) => !parts.has(id)).slice(-MOST_OWN);
  const told = {
    pupilwalkDrawer: FILE_VERSION,
    revision,
    parts: [...parts.values()].map(({ id, version, kind, owned, price, notes, part }) => ({
      id,
      version,
      kind,
      owned,
      price,
      notes,
      part,
    })),
    ...(left.length > 0 ? { gone: left.map(([id, version]) => ({ id, version })) } : {}),
  };
  return `${JSON.stringify(told, undefined, 2)}\n`;
}

/**
 * What stands on the disk now beside what was known: where somebody else changed a part and kept its version,
 * or took one out, versions go on, so that one who saw the old part cannot change the new one unawares.
 */
export function reconciled(known: Contents, found: Contents): Contents {
  const gone = new Map(found.gone);
  for (const [id, { version }] of known.parts) if (!found.parts.has(id)) gone.set(id, Math.max(version, gone.get(id) ?? 0));
  const parts = new Map(
    [...found.parts].map(([id, part]): [string, Stored] => {
      const before = known.parts.get(id);
      if (!before || part.version > before.version) return [id, part];
      const same = part.version === before.version && sameJson(part, before);
      return [id, same ? part : { ...part, version: before.version + 1 }];
    }),
  );
  return { revision: Math.max(known.revision, found.revision), parts, gone };
}
