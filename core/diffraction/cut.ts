import { overlapAcross, overlapAlong, sharedArea } from '../pupil/discs.ts';
import type { SeenStops } from '../pupil/stops.ts';

/** Contrast by the direction in which a pattern varies: along the field's radius (tangential lines), or across it. */
export interface CutMtf {
  readonly sagittal: number;
  readonly tangential: number;
}

/**
 * Contrast that diffraction leaves of sine patterns where stops cut the beam, free of aberration: the area
 * that what is left of the pupil shares with itself, shifted, over its own (Hopkins 1955; any optics
 * handbook). In the middle, where the smallest disc is all there is, it is `diffractionMtf`.
 *
 * @param slope of the field point's beam in the infinity space
 * @param relativeFrequency the frequency over the cut-off in the middle, which shifts by the whole axial beam
 * @returns undefined where no light arrives
 */
export function cutMtf(seen: SeenStops, slope: number, relativeFrequency: number): CutMtf | undefined {
  if (Math.abs(slope) > seen.fieldSlope) return undefined;
  const [whole] = sharedArea(seen, slope);
  if (!(whole > 0)) return undefined;
  const shift = 2 * (seen.radius[seen.limiting] as number) * relativeFrequency;
  return { sagittal: overlapAcross(seen, slope, shift) / whole, tangential: overlapAlong(seen, slope, shift) / whole };
}
