/**
 * Depth of field at the subject: a wave term and a detector term, added, both in µm and both the
 * whole depth, not half of it. `λ` is the vacuum wavelength, `n` the index around the subject.
 *
 * The published wave terms differ by up to four times, so the convention is always named:
 *  - `wave-and-pixel`: `λ n / NA²`, a quarter wave of defocus at either end (the total form of
 *    microscopy textbooks);
 *  - `half-wave-term` and `double-wave-term`: half of it and twice it;
 *  - `high-aperture`: `λ / (2 n (1 - √(1 - (NA/n)²)))`, the exact quarter wave, which tends to the
 *    first form as the aperture falls.
 */
export const DEPTH_CONVENTIONS = ['wave-and-pixel', 'half-wave-term', 'double-wave-term', 'high-aperture'] as const;
export type DepthConvention = (typeof DEPTH_CONVENTIONS)[number];

/** The wave term, in the unit of `wavelength`. `0 < na < index`. */
export function waveTerm(convention: DepthConvention, wavelength: number, na: number, index: number): number {
  const total = (wavelength * index) / (na * na);
  switch (convention) {
    case 'wave-and-pixel':
      return total;
    case 'half-wave-term':
      return total / 2;
    case 'double-wave-term':
      return total * 2;
    case 'high-aperture':
      return wavelength / (2 * index * (1 - Math.sqrt(1 - (na / index) ** 2)));
  }
}

/** What a blur of `blur` on the sensor adds: `n e / (m NA)`, in the unit of `blur`. */
export const detectorTerm = (blur: number, magnification: number, na: number, index: number): number =>
  (index * blur) / (magnification * na);
