import { type Refocused, refocused } from './refocused.ts';

/** `1 − cos θ` from `sin²θ`, without the loss of digits that small angles bring. */
export const sagitta = (sine2: number): number => sine2 / (1 + Math.sqrt(Math.max(0, 1 - sine2)));

/**
 * Spherical aberration of an objective that obeys the sine condition, for an object off its front focal plane:
 * mm of wavefront per mm of `n δz`, the optical length by which the object is off, at best focus.
 *
 * A ray at `θ` from a point `δz` beyond the focal plane is `n δz (1 − cos θ)` ahead of the one along the axis, which a
 * sine lens hands on as it is; the sensor's own focus is `1 − cos θ'` with `n sin θ = m sin θ'`, and pays for it but
 * for the aberration (a relay that obeys the sine condition too). Exact where the relay stands its focal length behind
 * the pupil, else to an eighth of the share by which the magnification changes. To the fourth order it is `n δz NA⁴ (1 − n²/m²) / (8 n⁴)` over `6 √5`.
 *
 * @param focusing what is moved to the sharpest picture: the `stage`, with the sensor where the tube puts it and
 *   `n δz` what the first order asks for; or the `sensor`, with the object held. The stage finds a place a little
 *   nearer than the first order's and leaves less: 1.6 % less at NA 0.25, 12 % at 0.65.
 * @param na numerical aperture, below the index `n` of what the objective dips in and below `m`
 */
export function offConjugate(n: number, na: number, m: number, focusing: 'stage' | 'sensor' = 'stage'): Refocused {
  const object = (u: number): number => sagitta((na * na * u) / (n * n));
  const image = (u: number): number => (m / n) ** 2 * sagitta((na * na * u) / (m * m));
  return focusing === 'stage' ? refocused(image, object) : refocused(object, image);
}
