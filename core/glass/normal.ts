import { abbeNumber, LINES, partialDispersion } from './lines.ts';
import { type Medium, medium } from './medium.ts';

/** `P_gF` on the normal line at an Abbe number: the straight line through the glasses K7 and F2 that most others lie near. */
export const normalPartialDispersion = (abbe: number): number => 0.6438 - 0.001682 * abbe;

/**
 * How far a glass's blue dispersion `P_gF` lies above the normal line. A pair of glasses that differ in it is
 * what it takes to bring three colours together.
 */
export const offNormalLine = (glass: Medium): number =>
  partialDispersion(glass, 'g', 'F') - normalPartialDispersion(abbeNumber(glass, 'd'));

/** Inverse square of a wavelength, µm⁻²: the variable of Cauchy's formula. */
const inverseSquare = (wavelengthNm: number): number => (1000 / wavelengthNm) ** 2;

/**
 * A glass of which no more is known than `n_d` and Abbe's number: Cauchy's `n = a + b/λ² + c/λ⁴` with this index,
 * this dispersion between F and C, and blue dispersion on the normal line.
 *
 * For glasses within 0.003 of the normal line the index is good to 2e-4 from 430 to 680 nm and to 4e-4 over the
 * whole range; for the heaviest flints, 0.018 off it, to 8e-4 and 2.5e-3. So found over our own table.
 */
export function normalGlass(name: string, nd: number, abbe: number): Medium {
  const [g, F, d, C] = [inverseSquare(LINES.g), inverseSquare(LINES.F), inverseSquare(LINES.d), inverseSquare(LINES.C)];
  const dispersion = (nd - 1) / abbe;
  // Newton's divided differences over C, F, g.
  const steepness = dispersion / (F - C);
  const bend = ((dispersion * normalPartialDispersion(abbe)) / (g - F) - steepness) / (g - C);
  const rise = (u: number): number => u * steepness + bend * (u - F) * (u - C);
  return medium(name, [400, 750], (wavelengthNm) => nd + rise(inverseSquare(wavelengthNm)) - rise(d));
}

/**
 * The glass of a six-digit code, `n_d - 1` in thousandths and Abbe's number in tenths: 517642 for 1.517 and 64.2.
 * Undefined where the digits are no code, or one of no optical glass.
 */
export function glassOfCode(code: string): Medium | undefined {
  if (!/^\d{6}$/.test(code)) return undefined;
  const [nd, abbe] = [1 + Number(code.slice(0, 3)) / 1000, Number(code.slice(3)) / 10];
  return nd >= 1.4 && abbe >= 15 ? normalGlass(code, nd, abbe) : undefined;
}
