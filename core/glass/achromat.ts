import { abbeNumber, partialDispersion } from './lines.ts';
import type { Medium } from './medium.ts';

/**
 * Powers of two thin lenses in contact that together have `power` and one focus for the two outer lines of
 * their Abbe numbers: `φ₁ = φ V₁ / (V₁ - V₂)`, `φ₂ = -φ V₂ / (V₁ - V₂)`, in the unit of `power`. From
 * `φ₁ + φ₂ = φ` and `φ₁/V₁ + φ₂/V₂ = 0`.
 * @throws RangeError where the Abbe numbers are equal: no powers would do
 */
export function achromatPowers(power: number, firstAbbe: number, secondAbbe: number): readonly [first: number, second: number] {
  if (firstAbbe === secondAbbe) throw new RangeError('two lenses of one Abbe number make no achromat');
  const share = power / (firstAbbe - secondAbbe);
  return [share * firstAbbe, -share * secondAbbe];
}

/**
 * How far behind the focus for d a thin achromat brings F and C together, over its focal length: the sum of
 * `-φ P_Fd / V_d` over its lenses, `(P₂ - P₁) / (V₁ - V₂)`. Some 1/2000 for ordinary pairs.
 * @throws RangeError for two glasses of one Abbe number
 */
export function secondarySpectrum(first: Medium, second: Medium): number {
  const [one, other] = achromatPowers(1, abbeNumber(first, 'd'), abbeNumber(second, 'd'));
  return -blueExcess(first, one) - blueExcess(second, other);
}

/** By how much a thin lens of `power` for d is stronger for F. */
const blueExcess = (glass: Medium, power: number): number => (power * partialDispersion(glass, 'F', 'd')) / abbeNumber(glass, 'd');
