import { cardinal } from './cardinal.ts';
import { closePencil } from './coddington.ts';
import type { Prescription } from './prescription.ts';
import { THROUGH } from './rays.ts';

/**
 * What the way in which a lens maps angles to heights adds to relative illumination on the paraxial focal
 * plane: `f² d(sin²θ)/d(r²)` of the chief ray, 1 on the axis and wherever `r = f sin θ`, cos⁴θ where
 * `r = f tan θ`. Rays through the middle of the pupil that part by `dσ` across the field axis and `dτ`
 * along it fall on `B_s dσ` times `B_t dτ / cos θ'` of the plane, so that it is `f² cos θ cos θ' / (B_s B_t)`:
 * the same (`B_s = r / sin θ`, since the lens is round; `B_t = cos θ' dr/dθ`), without 0/0 on the axis.
 * 0 where no chief ray comes through, and where the picture folds over: `r²` no longer grows with the slope.
 * @param focalLengthMm the lens's own effective focal length
 */
export function mappingFactor(lens: Prescription, pupilDistanceMm: number, slope: number, focalLengthMm: number): number {
  const pencil = closePencil(lens, { pupilDistanceMm, slope });
  if (pencil.status !== THROUGH) return 0;
  const { sagittal, tangential, z, N } = pencil;
  const rest = (cardinal(lens).backFocalLengthMm - z) / N;
  const square = (sagittal.b + rest * sagittal.d) * (tangential.b + rest * tangential.d);
  return square > 0 ? (focalLengthMm * focalLengthMm * N) / (Math.sqrt(1 + slope * slope) * square) : 0;
}
