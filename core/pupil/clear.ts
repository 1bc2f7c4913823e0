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
  seen.radius.every((radius, i) => spare(seen, i) - Math.abs(apart(seen, i)) * t >= -1e-9 * radius);

/**
 * The infinity spaces, from least to greatest, at which height `r` on the sensor is clear; undefined
 * where there is none. Each stop gives two conditions that are linear in the space as long as the
 * sensor is at the relay's focus; off it they are followed to their roots in a few steps.
 */
export function clearingSpaces(rig: Rig, r: number, seen?: SeenStops): readonly [least: number, greatest: number] | undefined {
  let spaces = linearSpaces(rig, r, seen);
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

function linearSpaces(rig: Rig, r: number, here: SeenStops = seenStops(rig)): readonly [number, number] | undefined {
  // Off the focus a space on the way to the root may be one at which there is no picture.
  if (!(scaleOf(rig) > 0)) return undefined;
  const farther = { ...rig, infinitySpaceMm: rig.infinitySpaceMm + 1 };
  const there = seenStops(farther);
  const [t, u] = [r / scaleOf(rig), r / scaleOf(farther)];
  let least = Number.NEGATIVE_INFINITY;
  let greatest = Number.POSITIVE_INFINITY;
  /** Narrows the spaces to those with room, given the room here and 1 mm farther; false where there is none anywhere. */
  const narrow = (room: number, roomFarther: number): boolean => {
    const rate = roomFarther - room;
    if (!Number.isFinite(rate)) return false;
    if (Math.abs(rate) < 1e-12) return room >= -1e-9;
    const edge = rig.infinitySpaceMm - room / rate;
    if (rate < 0) greatest = Math.min(greatest, edge);
    else least = Math.max(least, edge);
    return true;
  };
  for (let i = 0; i < here.radius.length; i++) {
    const [a, b] = [spare(here, i), spare(there, i)];
    const [x, y] = [apart(here, i) * t, apart(there, i) * u];
    if (!narrow(a - x, b - y) || !narrow(a + x, b + y)) return undefined;
  }
  if (Number.isFinite(here.fieldSlope) && !narrow(here.fieldSlope - t, there.fieldSlope - u)) return undefined;
  return least > greatest ? undefined : [least, greatest];
}

/** How much wider disc `i` is than the axial beam, and how far it walks from it per slope. */
const spare = (seen: SeenStops, i: number): number => (seen.radius[i] as number) - (seen.radius[seen.limiting] as number);
const apart = (seen: SeenStops, i: number): number => (seen.walk[i] as number) - (seen.walk[seen.limiting] as number);
