import { type Rig, type SeenStops, scaleOf, seenStops } from './stops.ts';

/**
 * What would let the whole axial beam through at a height `r` on the sensor. With the limiting disc 0
 * it takes `|kᵢ - k₀| t <= rᵢ - r₀` of every other disc.
 */

/** Diameter of stop `i` (its own, mm) at which height `r` is clear, or undefined where others cut there. */
export function clearingDiameter(rig: Rig, i: number, r: number): number | undefined {
  const stop = rig.stops[i];
  if (!stop) return undefined;
  const t = r / scaleOf(rig);
  const whole = seenStops(rig);
  const others = seenStops({ ...rig, stops: rig.stops.filter((_, j) => j !== i) });
  if (others.radius.length === 0 || others.fieldSlope < t || !isClear(others, t)) return undefined;
  const disc = whole.stopOf.indexOf(i);
  if (disc < 0) return (stop.diameterMm * t) / whole.fieldSlope;
  const walk = Math.abs((whole.walk[disc] as number) - (others.walk[others.limiting] as number));
  const needed = (others.radius[others.limiting] as number) + walk * t;
  return (stop.diameterMm * needed) / (whole.radius[disc] as number);
}

const isClear = (seen: SeenStops, t: number): boolean =>
  seen.radius.every((radius, i) => {
    const walk = Math.abs((seen.walk[i] as number) - (seen.walk[seen.limiting] as number));
    return radius - (seen.radius[seen.limiting] as number) - walk * t >= -1e-9 * radius;
  });

/**
 * The infinity spaces, from least to greatest, at which height `r` on the sensor is clear; undefined
 * where there is none. Each stop gives two conditions that are linear in the space as long as the
 * sensor is at the relay's focus; off it they are followed to their roots in a few steps.
 */
export function clearingSpaces(rig: Rig, r: number): readonly [least: number, greatest: number] | undefined {
  let spaces = linearSpaces(rig, r);
  if (rig.sensorOffsetMm === 0 || !spaces) return spaces;
  for (let i = 0; i < 8 && spaces; i++) {
    const least: number = spaces[0];
    const greatest: number = spaces[1];
    const below: number | undefined = Number.isFinite(least) ? linearSpaces({ ...rig, infinitySpaceMm: least }, r)?.[0] : least;
    const above: number | undefined = Number.isFinite(greatest) ? linearSpaces({ ...rig, infinitySpaceMm: greatest }, r)?.[1] : greatest;
    spaces = below === undefined || above === undefined || below > above ? undefined : [below, above];
  }
  return spaces;
}

function linearSpaces(rig: Rig, r: number): readonly [number, number] | undefined {
  // Off the focus a space on the way to the root may be one at which there is no picture.
  if (!(scaleOf(rig) > 0)) return undefined;
  const here = room(rig, r);
  const farther = room({ ...rig, infinitySpaceMm: rig.infinitySpaceMm + 1 }, r);
  let least = Number.NEGATIVE_INFINITY;
  let greatest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < here.length; i++) {
    const value = here[i] as number;
    const rate = (farther[i] as number) - value;
    if (!Number.isFinite(rate)) return undefined;
    if (Math.abs(rate) < 1e-12) {
      if (value < -1e-9) return undefined;
    } else if (rate < 0) greatest = Math.min(greatest, rig.infinitySpaceMm - value / rate);
    else least = Math.max(least, rig.infinitySpaceMm - value / rate);
  }
  return least > greatest ? undefined : [least, greatest];
}

/** Room left on either side of the axial beam at height `r`, mm in the pupil, two numbers a disc. */
function room(rig: Rig, r: number): number[] {
  const seen = seenStops(rig);
  const t = r / scaleOf(rig);
  const r0 = seen.radius[seen.limiting] as number;
  const k0 = seen.walk[seen.limiting] as number;
  const sides = seen.radius.flatMap((radius, i) => {
    const shift = ((seen.walk[i] as number) - k0) * t;
    return [radius - r0 - shift, radius - r0 + shift];
  });
  return Number.isFinite(seen.fieldSlope) ? [...sides, seen.fieldSlope - t] : sides;
}
