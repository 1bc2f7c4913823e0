import { type PlacedStop, type Rig, type SeenStops, scaleOf, seenStops } from './stops.ts';

/**
 * What would let the whole axial beam through at a height `r` on the sensor. With the limiting disc 0
 * it takes `|kᵢ - k₀| t <= rᵢ - r₀` of every other disc.
 */

/** Diameter of stop `i`, which is not the pupil (its own, mm), at which height `r` is clear, or undefined where others cut there. */
export function clearingDiameter(rig: Rig, i: number, r: number): number | undefined {
  const { diameterMm } = rig.stops[i] as PlacedStop;
  const t = r / scaleOf(rig);
  const whole = seenStops(rig);
  const others = seenStops({ ...rig, stops: rig.stops.filter((_, j) => j !== i) });
  if (others.fieldSlope < t || !isClear(others, t)) return undefined;
  const disc = whole.stopOf.indexOf(i);
  if (disc < 0) return (diameterMm * t) / whole.fieldSlope;
  const walk = Math.abs((whole.walk[disc] as number) - (others.walk[others.limiting] as number));
  const needed = (others.radius[others.limiting] as number) + walk * t;
  return (diameterMm * needed) / (whole.radius[disc] as number);
}

const isClear = (seen: SeenStops, t: number): boolean =>
  seen.radius.every((radius, i) => spare(seen, i) - Math.abs(apart(seen, i)) * t >= -1e-9 * radius);

/** How much wider disc `i` is than the axial beam, and how far it walks from it per slope. */
const spare = (seen: SeenStops, i: number): number => (seen.radius[i] as number) - (seen.radius[seen.limiting] as number);
const apart = (seen: SeenStops, i: number): number => (seen.walk[i] as number) - (seen.walk[seen.limiting] as number);
