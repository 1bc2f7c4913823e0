import { type PlacedStop, type Rig, reaches } from './stops.ts';

export type Span = readonly [least: number, greatest: number];

/** How far the space is moved to read off rates; any length would do, they are constant. */
const APART = 10;

/** Either side of the axis, and either way up. */
const BOTH = [1, -1] as const;

/**
 * The infinity spaces at which height `r` on the sensor gets all of the axial beam, as spans in mm, none
 * below 0 and none shorter than where a ring stands. With `A`, `B` of each stop (`stops.ts`) disc 0 lies
 * within disc i, as seen from height `r`, where
 *
 *     |A₀ Bᵢ - Aᵢ B₀| r <= bᵢ F |A₀| - b₀ F |Aᵢ|.
 *
 * The left side's bars hold the matrix element between the two stops, whatever the beam; that and `F A`
 * are linear in the space, on the focus and off it, so with either sign of `A₀` each stop gives four
 * linear conditions. Which stop limits the axis may change with the space: each is tried, and one that
 * nowhere does has no span.
 */
export function clearingSpans(rig: Rig, r: number): Span[] {
  const here = reaches(rig);
  const there = reaches({ ...rig, infinitySpaceMm: rig.infinitySpaceMm + APART });
  const half = (i: number): number => (rig.stops[i] as PlacedStop).diameterMm / 2;
  const buildable = Math.max(0, ...rig.stops.map((stop) => (stop.place === 'shoulder' ? stop.atMm : 0)));

  /** The span in which stop `k` is disc 0, with `A` of that sign. */
  const spanOf = (k: number, sign: 1 | -1): Span[] => {
    let least = buildable;
    let greatest = Number.POSITIVE_INFINITY;
    /** Keeps the spaces at which a quantity that is linear in them is not negative. */
    const keep = (of: (reach: typeof here) => number): boolean => {
      const value = of(here);
      const rate = (of(there) - value) / APART;
      if (Math.abs(rate) < 1e-11) return value >= -1e-9;
      const edge = rig.infinitySpaceMm - value / rate;
      if (rate < 0) greatest = Math.min(greatest, edge);
      else least = Math.max(least, edge);
      return least <= greatest;
    };
    const beam = ({ A, F }: typeof here): number => sign * F * (A[k] as number);
    const within = (i: number, upright: 1 | -1, side: 1 | -1): boolean =>
      keep((reach) => {
        const { A, B, F } = reach;
        const [Ai, Ak, Bi, Bk] = [A[i], A[k], B[i], B[k]] as [number, number, number, number];
        return half(i) * beam(reach) - half(k) * upright * F * Ai - side * (Ak * Bi - Ai * Bk) * r;
      });
    // Only where there is a picture at all; that the sign holds is asked where `i` is `k` itself.
    const clear = keep(({ F }) => F) && rig.stops.every((_, i) => BOTH.every((upright) => BOTH.every((side) => within(i, upright, side))));
    return clear ? [[least, greatest]] : [];
  };
  return rig.stops.flatMap((_, k) => BOTH.flatMap((sign) => spanOf(k, sign)));
}
