import type { ParaxialRay, RayPair } from './paraxial-rays.ts';
import type { Prescription } from './prescription.ts';

/**
 * Third-order aberrations as Seidel sums, mm, in Welford's signs: S1 spherical aberration, S2 coma,
 * S3 astigmatism, S4 field curvature (Petzval), S5 distortion. Of one surface, or of a whole lens.
 * As path differences at the edge of pupil and field: `W040 = S1/8`, `W131 = S2/2`, `W222 = S3/2`,
 * `W220 = (S3 + S4)/4`, `W311 = S5/2`, a wavefront that lags behind being positive.
 */
export interface Seidel {
  readonly S1: number;
  readonly S2: number;
  readonly S3: number;
  readonly S4: number;
  readonly S5: number;
}

/** What each surface adds (Welford 1986, 8.4, from memory; without a division that a surface met at right angles would spoil). */
export function seidelBySurface({ count, curvature, index }: Prescription, { marginal, chief }: RayPair): Seidel[] {
  const H = invariant(marginal, chief);
  return Array.from({ length: count }, (_, k) => {
    const [n, m] = [index[k] as number, index[k + 1] as number];
    const [h, hChief] = [marginal.height[k] as number, chief.height[k] as number];
    const [A, AChief] = [marginal.incidence[k] as number, chief.incidence[k] as number];
    const bend = h * ((marginal.slope[k + 1] as number) / m - (marginal.slope[k] as number) / n);
    const petzval = (curvature[k] as number) * (1 / m - 1 / n);
    return {
      S1: -A * A * bend,
      S2: -A * AChief * bend,
      S3: -AChief * AChief * bend,
      S4: -H * H * petzval,
      S5: -AChief * (AChief * AChief * h * (1 / (m * m) - 1 / (n * n)) - (H + AChief * h) * hChief * petzval),
    };
  });
}

/** The optical invariant `n (ū h - u h̄)` of two rays before the lens, in air; the same everywhere. */
const invariant = (marginal: ParaxialRay, chief: ParaxialRay): number =>
  (chief.slope[0] as number) * (marginal.height[0] as number) - (marginal.slope[0] as number) * (chief.height[0] as number);

/** The whole lens's sums. */
export const seidelSums = (surfaces: readonly Seidel[]): Seidel =>
  surfaces.reduce((sum, one) => ({
    S1: sum.S1 + one.S1,
    S2: sum.S2 + one.S2,
    S3: sum.S3 + one.S3,
    S4: sum.S4 + one.S4,
    S5: sum.S5 + one.S5,
  }));

/**
 * The sums once the pupil has been moved and its image in the light kept as wide. `shift` is by how much
 * that raises the chief ray over the marginal ray's height, at any surface (the same at all): in
 * collimated light, slope times the way the pupil was moved away over its radius (Welford 1986, 8.5, from memory).
 */
export const pupilShifted = ({ S1, S2, S3, S4, S5 }: Seidel, shift: number): Seidel => ({
  S1,
  S2: S2 + shift * S1,
  S3: S3 + shift * (2 * S2 + shift * S1),
  S4,
  S5: S5 + shift * (3 * S3 + S4 + shift * (3 * S2 + shift * S1)),
});

/** Where third-order rays meet the paraxial image plane, mm. */
export interface Transverse {
  /** The ray through the top of the pupil, from the axial image point. */
  readonly sphericalMm: number;
  /** The mean of the rays through top and bottom of the pupil, from the chief ray. */
  readonly tangentialComaMm: number;
  /** Half of what parts the rays through top and bottom of the pupil, for the curved field alone. */
  readonly tangentialFieldMm: number;
  /** The same for the two at its sides. */
  readonly sagittalFieldMm: number;
  readonly petzvalFieldMm: number;
  /** The chief ray, from where it would be without distortion. */
  readonly distortionMm: number;
}

/** @param imageSlope of the marginal ray behind the lens, in air */
export function transverse({ S1, S2, S3, S4, S5 }: Seidel, imageSlope: number): Transverse {
  const per = 1 / (2 * imageSlope);
  return {
    sphericalMm: S1 * per,
    tangentialComaMm: 3 * S2 * per,
    tangentialFieldMm: (3 * S3 + S4) * per,
    sagittalFieldMm: (S3 + S4) * per,
    petzvalFieldMm: S4 * per,
    distortionMm: S5 * per,
  };
}

/** How far a field's foci lie behind the paraxial focal plane, mm. */
export interface FieldCurves {
  readonly sagittalMm: number;
  readonly tangentialMm: number;
  readonly petzvalMm: number;
}

/** @param imageSlope of the marginal ray behind the lens, in air */
export function fieldCurves({ S3, S4 }: Seidel, imageSlope: number): FieldCurves {
  const per = -1 / (2 * imageSlope * imageSlope);
  return { sagittalMm: (S3 + S4) * per, tangentialMm: (3 * S3 + S4) * per, petzvalMm: S4 * per };
}
