import { type Course, courseOf, type PlacedStop, type Rig, reachA, reachB } from './stops.ts';

export type Span = readonly [least: number, greatest: number];

/** How far the space is moved to read off rates; any length would do, they are constant. */
const APART = 10;

/**
 * The infinity spaces at which height `r` on the sensor gets all of the axial beam, as spans in mm, none
 * below 0 and none shorter than where a ring stands. With `A`, `B` of each stop (`stops.ts`) disc 0 lies
 * within disc i, as seen from height `r`, where
 *
 *     |A₀ Bᵢ - Aᵢ B₀| r <= bᵢ F A₀ - b₀ F Aᵢ.
 *
 * The left side's bars hold the matrix element between the two stops, whatever the beam; that and `F A`
 * are linear in the space, on the focus and off it, so each stop gives two linear conditions. On the
 * focus the stop that limits the axis does so at every space; off it another may: each is tried.
 */
export function clearingSpans(rig: Rig, r: number): Span[] {
  const here = courseOf(rig);
  const there = courseOf(rig, rig.infinitySpaceMm + APART);
  if (rig.sensorOffsetMm !== 0) return rig.stops.map((_, k) => spanOf(rig, here, there, r, k)).filter((span) => span !== undefined);
  const span = spanOf(rig, here, there, r, narrowest(rig, here));
  return span ? [span] : [];
}

/** The span in which stop `k` is disc 0. */
function spanOf(rig: Rig, here: Course, there: Course, r: number, k: number): Span | undefined {
  let least = 0;
  for (let i = 0; i < rig.stops.length; i++) {
    const { place, atMm } = rig.stops[i] as PlacedStop;
    if (place === 'shoulder' && atMm > least) least = atMm;
  }
  let greatest = Number.POSITIVE_INFINITY;
  // Two conditions a stop, one for each side of the bars; and there must be a picture at all.
  for (let n = -1; n < 2 * rig.stops.length; n++) {
    const i = n >> 1;
    if (i === k) continue;
    const side = (n & 1) === 0 ? 1 : -1;
    // A linear quantity, here and a little farther: the spaces are kept at which it is not negative.
    const value = n < 0 ? here.F : room(rig, here, r, i, k, side);
    const rate = ((n < 0 ? there.F : room(rig, there, r, i, k, side)) - value) / APART;
    if (Math.abs(rate) < 1e-11) {
      if (value >= -1e-9) continue;
      return undefined;
    }
    const edge = rig.infinitySpaceMm - value / rate;
    if (rate < 0) greatest = Math.min(greatest, edge);
    else least = Math.max(least, edge);
    if (least > greatest) return undefined;
  }
  return [least, greatest];
}

/** How much the right side of the condition exceeds one side of the left, mm². */
function room(rig: Rig, course: Course, r: number, i: number, k: number, side: 1 | -1): number {
  const one = rig.stops[i] as PlacedStop;
  const axis = rig.stops[k] as PlacedStop;
  const Ai = reachA(rig, course, one);
  const Ak = reachA(rig, course, axis);
  const between = Ak * reachB(rig, course, one) - Ai * reachB(rig, course, axis);
  return (one.diameterMm / 2) * course.F * Ak - (axis.diameterMm / 2) * course.F * Ai - side * between * r;
}

/** The stop that limits the axial beam. */
function narrowest(rig: Rig, course: Course): number {
  let narrow = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < rig.stops.length; i++) {
    const stop = rig.stops[i] as PlacedStop;
    const A = reachA(rig, course, stop);
    const radius = A === 0 ? Number.POSITIVE_INFINITY : stop.diameterMm / Math.abs(A);
    if (radius >= least) continue;
    least = radius;
    narrow = i;
  }
  return narrow;
}
