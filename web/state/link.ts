import type { Pairing } from '../../core/index.ts';
import { judge } from './draft.ts';
import { said } from './words.ts';

/** `#1.` and the pairing as JSON in base64url: version 1 of the link. It holds values, never ids. */
const MARK = '#1.';
/** Far more than a pairing with everything in it. */
const LONGEST = 40_000;

export function linkTo(pairing: Pairing): string {
  const bytes = new TextEncoder().encode(JSON.stringify(pairing));
  const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return MARK + btoa(text).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
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
    const text = atob(hash.slice(MARK.length).replaceAll('-', '+').replaceAll('_', '/'));
    const bytes = Uint8Array.from(text, (c) => c.charCodeAt(0));
    held = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
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
