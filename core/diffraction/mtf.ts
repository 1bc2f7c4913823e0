/** Contrast of sine patterns, incoherent light. Frequencies and lengths in any inverse pair of units. */

/**
 * A whole round pupil without aberration: `(2/π)(acos ν - ν √(1 - ν²))`, `ν` the frequency over the
 * cut-off; 0 from the cut-off on. The overlap of two discs: Hopkins 1955; any optics handbook.
 */
export function diffractionMtf(relativeFrequency: number): number {
  const v = Math.abs(relativeFrequency);
  if (v >= 1) return 0;
  return (2 / Math.PI) * (Math.acos(v) - v * Math.sqrt(1 - v * v));
}

/** A square pixel with full fill: `sin(π p ν) / (π p ν)`; negative where the contrast reverses. */
export function pixelMtf(cyclesPerPixel: number): number {
  const x = Math.PI * cyclesPerPixel;
  return Math.abs(x) < 1e-8 ? 1 : Math.sin(x) / x;
}

/** Diffraction times pixel, `frequency` on the sensor, `pitch` in the inverse of its unit. */
export const systemMtf = (frequency: number, cutoff: number, pitch: number): number =>
  diffractionMtf(frequency / cutoff) * pixelMtf(frequency * pitch);
