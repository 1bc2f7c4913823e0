import type { SharpFocus } from '../pairing/schema.ts';
import { type FieldPoint, fieldPoint, greatest, placesAbout, type Setting, worseThroughFocus } from './field.ts';

/** The places of the focus at which a point is sharp enough, or by how much it nowhere is. */
type Span = { readonly low: number; readonly high: number; readonly short?: undefined } | { readonly short: number };

/** Far enough past the steadiest places for a stretch to end there, in steps that place its ends to a hundredth of it. */
const BEYOND = 1.6;
const FINENESS = 6;

/** The stretch about the best place of the focus in which the contrast is at least `criterion`. */
function spanOf(point: FieldPoint, criterion: number): Span {
  const range = placesAbout([point], BEYOND, FINENESS);
  const curve = worseThroughFocus(point, range);
  const best = greatest(curve);
  const at = (k: number): number => (curve[k] as number) - criterion;
  if (at(best) < 0) return { short: -at(best) };
  const end = (towards: 1 | -1): number => {
    let k = best;
    // Past the last place there is nothing, and that is not enough either.
    while (at(k + towards) >= 0) k += towards;
    const beyond = k + towards;
    const part = beyond < 0 || beyond >= range.count ? 0 : at(k) / (at(k) - at(beyond));
    return range.from + range.step * (k + towards * part);
  };
  return { low: end(-1), high: end(1) };
}

/** Field points looked at out to the limit before the border is sought more closely. */
const LOOKS = 12;
const CLOSER = 12;

/**
 * Slope out to which a relay is sharp: every point inside has at least `criterion` of the contrast that
 * the same beam would have without the relay's aberrations, in the worse direction; with one flat focus
 * that is free to lie where it serves best (the stretches of focus in which each point is sharp have a
 * place in common), or with each point at its own.
 *
 * @param limit nothing is looked at beyond this slope; it is the answer where all is sharp
 * @returns 0 where not even the middle is
 */
export function sharpSlope(setting: Setting, criterion: number, focus: SharpFocus, limit: number): number {
  let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  /** At least 0 where a point is sharp together with all before it; else by how much it falls short. */
  const judge = (slope: number): { margin: number; low: number; high: number } => {
    const point = fieldPoint(setting, slope);
    if (!point) return { margin: -1, low, high };
    const span = spanOf(point, criterion);
    if (span.short !== undefined) return { margin: -span.short, low, high };
    if (focus === 'stack') return { margin: 1, low, high };
    const [l, h] = [Math.max(low, span.low), Math.min(high, span.high)];
    return { margin: (h - l) / (span.high - span.low), low: l, high: h };
  };
  let good = 0;
  for (let i = 0; i <= LOOKS; i++) {
    const slope = (limit * i) / LOOKS;
    const seen = judge(slope);
    if (seen.margin >= 0) {
      [good, low, high] = [slope, seen.low, seen.high];
      continue;
    }
    if (i === 0) return 0;
    let bad = slope;
    for (let k = 0; k < CLOSER; k++) {
      const middle = (good + bad) / 2;
      const there = judge(middle);
      if (there.margin >= 0) [good, low, high] = [middle, there.low, there.high];
      else bad = middle;
    }
    return good;
  }
  return limit;
}
