/**
 * The Airy pattern's scale. `k` is the first zero of the Bessel function J1, 3.8317059702…, over π
 * (handbooks print 1.220).
 */
export const AIRY_ZERO = 1.2196698912665045;

/** Rayleigh's distance at the subject, `(k/2) λ / NA`, in the unit of `wavelength`. */
export const rayleigh = (wavelength: number, na: number): number => ((AIRY_ZERO / 2) * wavelength) / na;

/** Diameter of the Airy disc on the sensor, `2 k λ N`, in the unit of `wavelength`. */
export const airyDiameter = (wavelength: number, fNumber: number): number => 2 * AIRY_ZERO * wavelength * fNumber;
