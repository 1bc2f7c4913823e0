import { signal } from '@preact/signals';
import type { Pairing } from '../../core/index.ts';
import { judge } from './draft.ts';
import { said } from './words.ts';

/** `#1.` and the pairing as JSON in base64url: version 1 of the link. It holds values, never ids. */
const MARK = '#1.';
/** Far more than a pairing with everything in it. */
const LONGEST = 40_000;

export const linkTo = (pairing: Pairing): string => MARK + written(pairing);

/**
 * What stands behind a pairing's own link: a dot and a pairing, as often as there are pairings laid abreast.
 * Text until the view that shows them reads it (`abreast.ts`).
 */
export const further = signal('');

/** A pairing's link with those laid abreast. */
export const wholeLink = (pairing: Pairing): string => linkTo(pairing) + further.value;

/** A link's own pairing, and what stands behind it. */
export function parted(hash: string): readonly [own: string, behind: string] {
  const dot = hash.startsWith(MARK) ? hash.indexOf('.', MARK.length) : -1;
  return dot < 0 ? [hash, ''] : [hash.slice(0, dot), hash.slice(dot)];
}

/** A value as JSON in base64url. */
export function written(value: unknown): string {
  const bytes = new TextEncoder().encode(JSON.stringify(value));
  const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** @throws where it is cut short or damaged */
export function read(base64url: string): unknown {
  const text = atob(base64url.replaceAll('-', '+').replaceAll('_', '/'));
  const bytes = Uint8Array.from(text, (c) => c.charCodeAt(0));
  return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
}

export type Followed =
  | { pairing: Pairing; fault?: undefined; waits?: undefined }
  | { fault: string; pairing?: undefined; waits?: undefined }
  /** Whether it holds a pairing turns out when what works with glass is there. */
  | { waits: true; pairing?: undefined; fault?: undefined };

/** What a link holds, or in words why it holds nothing that can be shown. Never throws. */
export function follow(hash: string): Followed {
  if (!hash.startsWith(MARK))
    return { fault: /^#\d+\./.test(hash) ? 'it comes from another version of this page' : 'it does not hold a pairing' };
  if (hash.length > LONGEST) return { fault: 'it is far too long for a pairing' };
  let held: unknown;
  try {
    held = read(hash.slice(MARK.length));
  } catch {
    return { fault: 'it is cut short or damaged' };
  }
  try {
    const judged = judge(held);
    if (judged.waits) return { waits: true };
    const first = judged.problems?.[0];
    return first ? { fault: said(first) } : { pairing: judged.evaluation?.pairing as Pairing };
  } catch {
    return { fault: 'what it holds is no pairing' };
  }
}
