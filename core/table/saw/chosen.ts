import type { Found } from './found.ts';
import type { Known } from './unknowns.ts';

/** As much of the interval that was known before has to go, or nothing was learnt. */
const LEARNT = 0.9;

/** Whether it lies where it is known to be. */
export const meets = ({ low, high }: Found, known: Known | undefined): boolean => !known || (high >= known.least && low <= known.greatest);

export interface Chosen {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Whether an end of it is where the number's class ends, and not where the readings put it. */
  readonly cut: boolean;
  /** Whether it lies outside what was known of it before. */
  readonly beyond: boolean;
}

/**
 * Of what explains the readings the one that lies where the number is known to be; all that do, as one interval, where
 * several lie there. An end that the readings leave open is where the number's class ends. Undefined where that
 * leaves about what was known before.
 */
export function choose(kept: readonly Found[], known: Known | undefined): Chosen | undefined {
  const within = kept.every((way) => meets(way, known));
  const ends = kept.map(({ low, high, open }) => [
    open[0] && known && within ? Math.max(low, known.least) : low,
    open[1] && known && within ? Math.min(high, known.greatest) : high,
  ]);
  const low = Math.min(...ends.map(([least]) => least as number));
  const high = Math.max(...ends.map(([, greatest]) => greatest as number));
  const open = kept.some((way) => way.open[0] || way.open[1]);
  if (kept.some((way) => way.open[0] && way.open[1]) || (open && !known)) return undefined;
  if (known && !known.measured && within && high - low >= LEARNT * (known.greatest - known.least)) return undefined;
  const value = open || kept.length > 1 ? (low + high) / 2 : (kept[0] as Found).value;
  return { value, low, high, cut: open, beyond: !within };
}
