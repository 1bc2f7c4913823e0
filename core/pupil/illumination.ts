import { fallingRoot, type ValueAndRate } from '../numeric.ts';
import { type Discs, type Measured, measure, sharedArea } from './discs.ts';
import type { SeenStops } from './stops.ts';

/**
 * Relative illumination: the shared area at a slope over the shared area on axis, which is the
 * smallest disc. Its square root is concave in the slope (Brunn and Minkowski), so light that has
 * begun to fall never comes back farther out.
 */

const axisRadius = (seen: SeenStops): number => seen.radius[seen.limiting] as number;

/** Area of the beam on axis, mm². */
export const axisArea = (seen: SeenStops): number => Math.PI * axisRadius(seen) ** 2;

/**
 * Area of the beam at a slope, mm²; exactly the axial one as long as nothing cuts it.
 * @param onset where the light begins to fall, for those who know it
 */
export function beamArea(seen: SeenStops, slope: number, onset = onsetSlope(seen)): number {
  if (Math.abs(slope) > seen.fieldSlope) return 0;
  return Math.abs(slope) <= onset ? axisArea(seen) : sharedArea(seen, slope)[0];
}

/** 0 to 1. */
export const relativeIllumination = (seen: SeenStops, slope: number): number => Math.min(1, beamArea(seen, slope) / axisArea(seen));

/** The same at each of many slopes, for those who ask for a whole curve. */
export function illuminationsAt(seen: SeenStops, slopes: Float64Array): Float64Array {
  const onset = onsetSlope(seen);
  const whole = axisArea(seen);
  const found: Measured = { area: 0, rate: 0 };
  const light = new Float64Array(slopes.length);
  for (let i = 0; i < slopes.length; i++) {
    const slope = slopes[i] as number;
    if (Math.abs(slope) > seen.fieldSlope) continue;
    if (Math.abs(slope) <= onset) light[i] = 1;
    else {
      measure(seen, slope, found);
      light[i] = Math.min(1, found.area / whole);
    }
  }
  return light;
}

/** The slope at which disc `i` alone begins to cut the axial beam; Infinity where it never does. */
export function onsetOf(seen: SeenStops, i: number): number {
  if (i === seen.limiting) return Number.POSITIVE_INFINITY;
  const room = (seen.radius[i] as number) - axisRadius(seen);
  const walk = Math.abs((seen.walk[i] as number) - (seen.walk[seen.limiting] as number));
  return walk === 0 ? Number.POSITIVE_INFINITY : room / walk;
}

/** The slope at which the light begins to fall. */
export function onsetSlope(seen: SeenStops): number {
  let first = seen.fieldSlope;
  for (let i = 0; i < seen.radius.length; i++) first = Math.min(first, onsetOf(seen, i));
  return first;
}

/**
 * The slope at which no light is left. Discs with centres on one line share a point as soon as their
 * spans on that line do, so the first pair that parts decides.
 */
export const cutoffSlope = (seen: SeenStops): number => Math.min(seen.fieldSlope, partingSlope(seen));

function partingSlope({ walk, radius }: Discs): number {
  let first = Number.POSITIVE_INFINITY;
  for (let i = 0; i < walk.length; i++) {
    for (let j = 0; j < i; j++) {
      const apart = Math.abs((walk[i] as number) - (walk[j] as number));
      if (apart > 0) first = Math.min(first, ((radius[i] as number) + (radius[j] as number)) / apart);
    }
  }
  return first;
}

/**
 * The slope at which the relative illumination has fallen to `share` (0 < share < 1); Infinity where
 * it never does. Newton's method on the root of the area, with the area's exact rate.
 * @param onset where the light begins to fall, for those who know it
 */
export function slopeAtShare(seen: SeenStops, share: number, onset = onsetSlope(seen)): number {
  if (onset >= seen.fieldSlope) return seen.fieldSlope;
  const whole = axisArea(seen);
  const wanted = Math.sqrt(share);
  const lit: Measured = { area: 0, rate: 0 };
  const at = (slope: number, into: ValueAndRate): void => {
    measure(seen, slope, lit);
    const root = Math.sqrt(lit.area / whole);
    into.value = root - wanted;
    into.rate = root > 0 ? lit.rate / whole / (2 * root) : -1;
  };
  return Math.min(seen.fieldSlope, fallingRoot(at, onset, partingSlope(seen)));
}
