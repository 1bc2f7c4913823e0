import { type Medium, medium } from './medium.ts';

/** What catalogues state of a glass. */
export interface Dispersion {
  readonly name: string;
  /** Strengths of the resonances, and the squares of their wavelengths in µm². */
  readonly B: readonly number[];
  readonly C: readonly number[];
  /** The wavelengths, µm, that the numbers were fitted to. */
  readonly rangeUm: readonly [least: number, greatest: number];
}

/** Sellmeier's dispersion (1871), `n² - 1 = Σ B λ² / (λ² - C)` with λ in µm. */
export const sellmeier = ({ name, B, C, rangeUm: [least, greatest] }: Dispersion): Medium =>
  medium(name, [1000 * least, 1000 * greatest], (wavelengthNm) => {
    const square = (wavelengthNm / 1000) ** 2;
    return Math.sqrt(B.reduce((sum, b, i) => sum + (b * square) / (square - (C[i] as number)), 1));
  });
