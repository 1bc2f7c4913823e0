import type { SharpFocus } from '../pairing/schema.ts';
import { type FieldPoint, fieldPoint, greatest, placesAbout, type Setting, worseThroughFocus } from './field.ts';

/** The places of the focus at which something is sharp enough. */
interface Span {
  readonly low: number;
  readonly high: number;
}

/** Far enough past the steadiest places for a stretch to end there, in steps that place its ends to a hundredth of it. */
const BEYOND = 1.6;
const FINENESS = 6;

/** The stretch about the best place of the focus in which the contrast is at least `criterion`; undefined where it nowhere is. */
function spanOf(point: FieldPoint, criterion: number): Span | undefined {
  const range = placesAbout([point], BEYOND, FINENESS);
  const curve = worseThroughFocus(point, range);
  const best = greatest(curve);
  const at = (k: number): number => (curve[k] as number) - criterion;
  if (at(best) < 0) return undefined;
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
  let common: Span = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };
  /** Where a point is sharp, for one frame together with all before it; undefined where nowhere. */
  const judge = (slope: number): Span | undefined => {
    const point = fieldPoint(setting, slope);
    const own = point && spanOf(point, criterion);
    if (!own || focus === 'stack') return own;
    const [low, high] = [Math.max(common.low, own.low), Math.min(common.high, own.high)];
    return low <= high ? { low, high } : undefined;
  };
  let good = 0;
  for (let i = 0; i <= LOOKS; i++) {
    const slope = (limit * i) / LOOKS;
    const seen = judge(slope);
    if (seen) {
      [good, common] = [slope, seen];
      continue;
    }
    if (i === 0) return 0;
    let bad = slope;
    for (let k = 0; k < CLOSER; k++) {
      const middle = (good + bad) / 2;
      const there = judge(middle);
      if (there) [good, common] = [middle, there];
      else bad = middle;
    }
    return good;
  }
  return limit;
}
