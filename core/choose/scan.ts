import { type Asking, answered, narrowing } from '../numeric.ts';
import type { Span } from './spans.ts';

/**
 * Steps no longer than this part of the value: half of what a relay's marking is good to (common practice, 5 %),
 * so that a window too narrow to be seen between two of them is narrower than anybody can buy. Peaks between
 * the steps are looked for besides.
 */
const STEP_RATIO = 0.025;
/** Of lengths so many steps from end to end: the discs walk in proportion to the space, so few would do. */
const STEPS_OF_LENGTH = 80;
const LEAST_STEPS = 16;

/** Where a quantity is tried from `low` to `high`, both among them. */
export function places([low, high]: Span, steps: 'ratio' | 'length'): number[] {
  if (high <= low) return [low];
  if (steps === 'length' || low <= 0) return spread(STEPS_OF_LENGTH, (share) => low + (high - low) * share, high);
  const count = Math.max(LEAST_STEPS, Math.ceil(Math.log(high / low) / Math.log1p(STEP_RATIO)));
  return spread(count, (share) => low * (high / low) ** share, high);
}

const spread = (count: number, at: (share: number) => number, high: number): number[] =>
  Array.from({ length: count + 1 }, (_, i) => (i === count ? high : at(i / count)));

/** A margin tried at a place. */
export interface Tried {
  readonly at: number;
  readonly margin: number;
}

/**
 * The spans in which a margin is not negative, between the first and the last place that were tried. Their ends are
 * good to a relative 1e-12; several are possible. Only a window that opens and closes again between two places
 * without so much as a rise toward it at either is passed over.
 */
export const metWithin = (margin: (x: number) => number, tried: readonly Tried[]): Span[] => answered(margin, meeting(tried));

/** `metWithin` as a search. */
export function* meeting(tried: readonly Tried[]): Asking<Span[]> {
  const all = [...tried, ...(yield* hidden(tried))].sort((a, b) => a.at - b.at);
  const spans: Span[] = [];
  let before: Tried | undefined;
  for (const here of all) {
    const isMet = here.margin >= 0;
    const wasMet = before !== undefined && before.margin >= 0;
    if (isMet && !wasMet) spans.push([before ? yield* border(before, here) : here.at, here.at]);
    else if (isMet) (spans.at(-1) as Span)[1] = here.at;
    else if (wasMet) (spans.at(-1) as Span)[1] = yield* border(here, before as Tried);
    before = here;
  }
  return spans;
}

const border = (not: Tried, met: Tried): Asking<number> => narrowing(not.at, met.at, not.margin, met.margin);

/** Places between those tried where the margin has another sign than about them: at its peaks and hollows. */
function* hidden(tried: readonly Tried[]): Asking<Tried[]> {
  const found: Tried[] = [];
  for (let i = 1; i + 1 < tried.length; i++) {
    const [a, b, c] = [tried[i - 1], tried[i], tried[i + 1]] as [Tried, Tried, Tried];
    const sign = b.margin >= 0 ? -1 : 1;
    // Where one of them has the other sign already, it stands higher than the middle one.
    const [left, middle, right] = [sign * a.margin, sign * b.margin, sign * c.margin];
    // Between places evenly apart a peak stands no higher over the middle one than that over its neighbours; twice for safety.
    const rise = middle - Math.min(left, right);
    if (!(middle >= left && middle >= right && rise > 0 && middle + 2 * rise >= 0)) continue;
    const peak = yield* highest(sign, a.at, c.at);
    if (peak) found.push(peak);
  }
  return found;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;
const CLOSE_IN = 32;

/** Golden section toward the highest place of `sign` times a margin with one peak, until its sign changes; undefined where it never does. */
function* highest(sign: number, low: number, high: number): Asking<Tried | undefined> {
  const enough = (margin: number): boolean => (sign > 0 ? margin >= 0 : margin < 0);
  let [a, b] = [low, high];
  let [p, q] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
  let [fp, fq] = [yield p, yield q];
  for (let i = 0; i < CLOSE_IN; i++) {
    if (enough(fp)) return { at: p, margin: fp };
    if (enough(fq)) return { at: q, margin: fq };
    if (sign * fp > sign * fq) {
      [b, q, fq] = [q, p, fp];
      p = b - GOLDEN * (b - a);
      fp = yield p;
    } else {
      [a, p, fp] = [p, q, fq];
      q = a + GOLDEN * (b - a);
      fq = yield q;
    }
  }
  return undefined;
}
