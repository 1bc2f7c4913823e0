import type { RayPair } from './paraxial-rays.ts';
import type { Prescription } from './prescription.ts';

/** First-order colour between two wavelengths, mm, of one surface or of a whole lens: C1 along the axis, C2 across the field. */
export interface Colour {
  readonly C1: number;
  readonly C2: number;
}

/**
 * What each surface adds between two wavelengths (Welford 1986, 10.3, from memory). The rays are those of
 * a wavelength between the two; the indices of both are taken to differ little from it.
 */
export function colourBySurface(middle: Prescription, short: Prescription, long: Prescription, { marginal, chief }: RayPair): Colour[] {
  const dispersion = middle.index.map((n, k) => ((short.index[k] as number) - (long.index[k] as number)) / n);
  return Array.from({ length: middle.count }, (_, k) => {
    const spread = (marginal.height[k] as number) * ((dispersion[k + 1] as number) - (dispersion[k] as number));
    return { C1: (marginal.incidence[k] as number) * spread, C2: (chief.incidence[k] as number) * spread };
  });
}

/** The whole lens's sums. */
export const colourSums = (surfaces: readonly Colour[]): Colour =>
  surfaces.reduce((sum, one) => ({ C1: sum.C1 + one.C1, C2: sum.C2 + one.C2 }));

/** The sums once the pupil has been moved: `shift` as in `pupilShifted` of the Seidel sums. */
export const colourPupilShifted = ({ C1, C2 }: Colour, shift: number): Colour => ({ C1, C2: C2 + shift * C1 });

/** Two wavelengths on the paraxial image plane, the shorter less the longer, mm. */
export interface ColourFringes {
  /** Half the blur of the axial point at the edge of the pupil, signed. */
  readonly axialMm: number;
  /** Image height at the edge of the field. */
  readonly lateralMm: number;
  /** Where they focus, along the axis, positive away from the lens. */
  readonly focusMm: number;
}

/** @param imageSlope of the marginal ray behind the lens, in air */
export const colourFringes = ({ C1, C2 }: Colour, imageSlope: number): ColourFringes => ({
  axialMm: C1 / imageSlope,
  lateralMm: C2 / imageSlope,
  focusMm: -C1 / (imageSlope * imageSlope),
});
