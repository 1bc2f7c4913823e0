import { type PlacedStop, type Rig, reaches } from './stops.ts';

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
  const here = reaches(rig);
  const there = reaches({ ...rig, infinitySpaceMm: rig.infinitySpaceMm + APART });
  const half = (i: number): number => (rig.stops[i] as PlacedStop).diameterMm / 2;
  const room = ({ A, B, F }: typeof here, i: number, k: number, side: 1 | -1): number => {
    const [Ai, Ak, Bi, Bk] = [A[i], A[k], B[i], B[k]] as [number, number, number, number];
    return half(i) * F * Ak - half(k) * F * Ai - side * (Ak * Bi - Ai * Bk) * r;
  };
  const buildable = Math.max(0, ...rig.stops.map((stop) => (stop.place === 'shoulder' ? stop.atMm : 0)));

  /** The span in which stop `k` is disc 0. */
  const spanOf = (k: number): Span[] => {
    let least = buildable;
    let greatest = Number.POSITIVE_INFINITY;
    /** Keeps the spaces at which a linear quantity, given here and a little farther, is not negative. */
    const keep = (value: number, farther: number): boolean => {
      const rate = (farther - value) / APART;
      if (Math.abs(rate) < 1e-11) return value >= -1e-9;
      const edge = rig.infinitySpaceMm - value / rate;
      if (rate < 0) greatest = Math.min(greatest, edge);
      else least = Math.max(least, edge);
      return least <= greatest;
    };
    // Only where there is a picture at all.
    if (!keep(here.F, there.F)) return [];
    for (let i = 0; i < rig.stops.length; i++) {
      if (i === k) continue;
      if (!keep(room(here, i, k, 1), room(there, i, k, 1)) || !keep(room(here, i, k, -1), room(there, i, k, -1))) return [];
    }
    return [[least, greatest]];
  };
  const axes = rig.sensorOffsetMm === 0 ? [narrowest(rig, here.A)] : rig.stops.map((_, k) => k);
  return axes.flatMap(spanOf);
}

/** The stop that limits the axial beam. */
function narrowest(rig: Rig, A: readonly number[]): number {
  let narrow = 0;
  let least = Number.POSITIVE_INFINITY;
  rig.stops.forEach(({ diameterMm }, i) => {
    const radius = A[i] === 0 ? Number.POSITIVE_INFINITY : diameterMm / Math.abs(A[i] as number);
    if (radius < least) [least, narrow] = [radius, i];
  });
  return narrow;
}
