import type { Discs } from '../pupil/discs.ts';
import { type Colours, type Pairs, pairsOf } from './pairs.ts';
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
  const sagittal = pairsOf(colours, beam, frequency, 'sagittal');
  const tangential = sagittal && pairsOf(colours, beam, frequency, 'tangential');
  return tangential && { slope, sagittal, tangential };
}

/** Relative contrast through focus: the worse of sagittal and tangential. */
export function worseThroughFocus(point: FieldPoint, range: FocusRange): Float64Array {
  const sagittal = contrastThroughFocus(point.sagittal, range);
  const tangential = contrastThroughFocus(point.tangential, range);
  return sagittal.map((s, k) => Math.min(s, tangential[k] as number));
}

/** Steps of the focus in the distance at which a fifth of the contrast is gone. */
const FINENESS = 8;
/** How many such distances beyond the steadiest places are looked at. */
const BEYOND = 2.5;
/** However far apart the field points' places lie, no more than this many are looked at. */
const MOST_PLACES = 400;

/** The places of the focus at which any of these points can be sharp. */
export function rangeFor(points: readonly FieldPoint[]): FocusRange {
  let [from, to, step] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const point of points)
    for (const pairs of [point.sagittal, point.tangential]) {
      const { focus, reach } = steadiest(pairs);
      from = Math.min(from, focus - BEYOND * reach);
      to = Math.max(to, focus + BEYOND * reach);
      step = Math.min(step, reach / FINENESS);
    }
  const count = Math.min(MOST_PLACES, Math.ceil((to - from) / step) + 1);
  return { from, step: (to - from) / (count - 1), count };
}

/** A place of the focus and what the contrast is there. */
export interface Best {
  readonly focusMm: number;
  readonly contrast: number;
}

/** The best place of a curve through focus, between its samples by a parabola; a kink is taken as it stands. */
export function bestOf(curve: Float64Array, { from, step, count }: FocusRange): Best {
  let k = 0;
  for (let i = 1; i < count; i++) if ((curve[i] as number) > (curve[k] as number)) k = i;
  const [a, b, c] = [curve[k - 1], curve[k] as number, curve[k + 1]];
  if (a === undefined || c === undefined) return { focusMm: from + k * step, contrast: b };
  const bend = a - 2 * b + c;
  const off = bend < 0 ? (a - c) / (2 * bend) : 0;
  return { focusMm: from + (k + off) * step, contrast: b };
}
