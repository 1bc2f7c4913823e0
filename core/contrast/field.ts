import type { Discs } from '../pupil/discs.ts';
import type { Colours } from './colours.ts';
import { middleOf } from './middle.ts';
import { type Pairs, pairsOf } from './pairs.ts';
import { regionOf } from './region.ts';
import { contrastThroughFocus, type FocusRange, steadiest } from './through-focus.ts';

/** What does not change from one field point to the next. */
export interface Setting {
  readonly colours: Colours;
  /** The stops as they are seen in the pupil. */
  readonly discs: Discs;
  readonly pupilDistanceMm: number;
  /** The detail that is judged, lines per mm in the image. */
  readonly frequency: number;
}

/** One field point ready to be judged at any focus. */
export interface FieldPoint {
  readonly slope: number;
  readonly sagittal: Pairs;
  readonly tangential: Pairs;
}

/** @returns undefined where no light, or none of this detail even without aberrations, arrives */
export function fieldPoint({ colours, discs, pupilDistanceMm, frequency }: Setting, slope: number): FieldPoint | undefined {
  const region = regionOf(discs, slope);
  if (!region) return undefined;
  const beam = { slope, pupilDistanceMm, region };
  const middle = middleOf(colours.reference, beam, colours.focusMm);
  if (!middle) return undefined;
  const sagittal = pairsOf(colours, beam, middle, frequency, 'sagittal');
  const tangential = pairsOf(colours, beam, middle, frequency, 'tangential');
  return sagittal && tangential && { slope, sagittal, tangential };
}

/** Relative contrast through focus: the worse of sagittal and tangential. */
export function worseThroughFocus(point: FieldPoint, range: FocusRange): Float64Array {
  const sagittal = contrastThroughFocus(point.sagittal, range);
  const tangential = contrastThroughFocus(point.tangential, range);
  return sagittal.map((s, k) => Math.min(s, tangential[k] as number));
}

/** Relative contrast of several points through focus: that of the worst. */
function worstThroughFocus(points: readonly FieldPoint[], range: FocusRange): Float64Array {
  const worst = new Float64Array(range.count).fill(1);
  for (const point of points) {
    const curve = worseThroughFocus(point, range);
    for (let k = 0; k < range.count; k++) worst[k] = Math.min(worst[k] as number, curve[k] as number);
  }
  return worst;
}

/** However far apart the field points' places lie, no more than this many are looked at. */
const MOST_PLACES = 400;

/**
 * The places of the focus about the steadiest ones of these points and directions.
 *
 * @param beyond how far past them, in distances at which a fifth of the contrast is gone
 * @param fineness steps in such a distance
 */
export function placesAbout(points: readonly FieldPoint[], beyond: number, fineness: number): FocusRange {
  let [from, to, step] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const point of points)
    for (const pairs of [point.sagittal, point.tangential]) {
      const { focus, reach } = steadiest(pairs);
      from = Math.min(from, focus - beyond * reach);
      to = Math.max(to, focus + beyond * reach);
      step = Math.min(step, reach / fineness);
    }
  const count = Math.min(MOST_PLACES, Math.ceil((to - from) / step) + 1);
  return { from, step: (to - from) / (count - 1), count };
}

/** A place of the focus, mm from the paraxial one, and what the contrast is there. */
export interface Best {
  readonly focusMm: number;
  readonly contrast: number;
}

/** Looked at first, in steps of a third, and then about the best in steps of a 24th of the distance that costs a fifth. */
const FIRST = { beyond: 1, fineness: 3 };
const CLOSER = 17;

/** The one focus at which the worst of these points is best; the first place of all for none. */
export function bestFocus(points: readonly FieldPoint[]): Best {
  if (points.length === 0) return { focusMm: 0, contrast: 0 };
  const range = placesAbout(points, FIRST.beyond, FIRST.fineness);
  const coarse = range.from + range.step * greatest(worstThroughFocus(points, range));
  const closer = { from: coarse - range.step, step: (2 * range.step) / (CLOSER - 1), count: CLOSER };
  const curve = worstThroughFocus(points, closer);
  const k = greatest(curve);
  return { focusMm: closer.from + closer.step * k, contrast: curve[k] as number };
}

/** From the nearest to the farthest of some places of the focus; 0 for none. */
export const spreadOf = (foci: readonly number[]): number => (foci.length > 0 ? Math.max(...foci) - Math.min(...foci) : 0);

/** Where a curve is greatest. */
export function greatest(curve: Float64Array): number {
  let best = 0;
  for (let k = 1; k < curve.length; k++) if ((curve[k] as number) > (curve[best] as number)) best = k;
  return best;
}
