import { type Course, courseOf, type PlacedStop, type Rig, reachA, reachB } from './stops.ts';

export type Span = readonly [least: number, greatest: number];

/** How far the space is moved to read off rates; any length would do, they are constant. */
const APART = 10;

/**
 * The infinity spaces at which height `r` on the sensor gets all of the axial beam, as spans in mm, none
 * below 0 and none shorter than where a ring stands. With `A`, `B` of each stop (`stops.ts`) disc 0 lies
 * within disc i, as seen from height `r`, where
 *
 *     |A₀ Bᵢ - Aᵢ B₀| r <= bᵢ F |A₀| - b₀ F |Aᵢ|.
 *
 * The left side's bars hold the matrix element between the two stops, whatever the beam; that and `F A`
 * are linear in the space, on the focus and off it, so with either sign of `A₀` each stop gives four
 * linear conditions. On the focus none is seen upside down and the stop that limits the axis does so at every
 * space; off it another may, and either way up: each is tried.
 */
export function clearingSpans(rig: Rig, r: number): Span[] {
  const here = courseOf(rig);
  const there = courseOf(rig, rig.infinitySpaceMm + APART);
  if (rig.sensorOffsetMm !== 0)
    return rig.stops
      .flatMap((_, k) => [spanOf(rig, here, there, r, k, 1), spanOf(rig, here, there, r, k, -1)])
      .filter((span) => span !== undefined);
  const span = spanOf(rig, here, there, r, narrowest(rig, here), 1);
  return span ? [span] : [];
}

/** The span in which stop `k` is disc 0, with `A` of that sign. */
function spanOf(rig: Rig, here: Course, there: Course, r: number, k: number, sign: 1 | -1): Span | undefined {
  const { stops, infinitySpaceMm } = rig;
  const axis = stops[k] as PlacedStop;
  const Ak = reachA(rig, here, axis);
  const Bk = reachB(rig, here, axis);
  const Al = reachA(rig, there, axis);
  const Bl = reachB(rig, there, axis);
  let least = 0;
  let greatest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < stops.length; i++) {
    const { place, atMm } = stops[i] as PlacedStop;
    if (place === 'shoulder' && atMm > least) least = atMm;
  }
  // Four conditions a stop, two for each pair of bars; of stop k itself that there is a picture at all, and that the sign holds.
  for (let i = 0; i < stops.length; i++) {
    const stop = stops[i] as PlacedStop;
    const Ai = reachA(rig, here, stop);
    const Aj = reachA(rig, there, stop);
    const wide = sign * (stop.diameterMm / 2) * here.F * Ak;
    const wideThere = sign * (stop.diameterMm / 2) * there.F * Al;
    const beam = (axis.diameterMm / 2) * here.F * Ai;
    const beamThere = (axis.diameterMm / 2) * there.F * Aj;
    const between = Ak * reachB(rig, here, stop) - Ai * Bk;
    const betweenThere = Al * reachB(rig, there, stop) - Aj * Bl;
    for (let bars = 0; bars < 4; bars++) {
      const side = bars % 2 === 0 ? 1 : -1;
      const upright = bars < 2 ? 1 : -1;
      // A linear quantity, here and a little farther: the spaces are kept at which it is not negative.
      const value = i === k ? (side === 1 ? here.F : sign * here.F * Ak) : wide - upright * beam - side * between * r;
      const farther = i === k ? (side === 1 ? there.F : sign * there.F * Al) : wideThere - upright * beamThere - side * betweenThere * r;
      const rate = (farther - value) / APART;
      if (Math.abs(rate) < 1e-11) {
        if (value >= -1e-9) continue;
        return undefined;
      }
      const edge = infinitySpaceMm - value / rate;
      if (rate < 0) greatest = Math.min(greatest, edge);
      else least = Math.max(least, edge);
      if (least > greatest) return undefined;
    }
  }
  return [least, greatest];
}

/** The stop that limits the axial beam, on the focus, where none is seen upside down. */
function narrowest(rig: Rig, course: Course): number {
  let narrow = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < rig.stops.length; i++) {
    const stop = rig.stops[i] as PlacedStop;
    const radius = stop.diameterMm / reachA(rig, course, stop);
    if (radius >= least) continue;
    least = radius;
    narrow = i;
  }
  return narrow;
}
