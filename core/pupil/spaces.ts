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
  const there = reaches(rig, rig.infinitySpaceMm + APART);
  if (rig.sensorOffsetMm !== 0) return rig.stops.map((_, k) => spanOf(rig, here, there, r, k)).filter((span) => span !== undefined);
  const span = spanOf(rig, here, there, r, narrowest(rig, here.A));
  return span ? [span] : [];
}

type Reach = ReturnType<typeof reaches>;

/** The span in which stop `k` is disc 0. */
function spanOf(rig: Rig, here: Reach, there: Reach, r: number, k: number): Span | undefined {
  let least = 0;
  for (const stop of rig.stops) if (stop.place === 'shoulder') least = Math.max(least, stop.atMm);
  let greatest = Number.POSITIVE_INFINITY;
  // Two conditions a stop, one for each side of the bars; and there must be a picture at all.
  for (let c = -1; c < 2 * rig.stops.length; c++) {
    const i = c >> 1;
    if (i === k) continue;
    const side = (c & 1) === 0 ? 1 : -1;
    // A linear quantity, here and a little farther: the spaces are kept at which it is not negative.
    const value = c < 0 ? here.F : room(rig, here, r, i, k, side);
    const rate = ((c < 0 ? there.F : room(rig, there, r, i, k, side)) - value) / APART;
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
function room(rig: Rig, { A, B, F }: Reach, r: number, i: number, k: number, side: 1 | -1): number {
  const Ai = A[i] as number;
  const Ak = A[k] as number;
  const between = Ak * (B[i] as number) - Ai * (B[k] as number);
  return half(rig, i) * F * Ak - half(rig, k) * F * Ai - side * between * r;
}

const half = (rig: Rig, i: number): number => (rig.stops[i] as PlacedStop).diameterMm / 2;

/** The stop that limits the axial beam. */
function narrowest(rig: Rig, A: readonly number[]): number {
  let narrow = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < rig.stops.length; i++) {
    const radius = A[i] === 0 ? Number.POSITIVE_INFINITY : half(rig, i) / Math.abs(A[i] as number);
    if (radius >= least) continue;
    least = radius;
    narrow = i;
  }
  return narrow;
}
