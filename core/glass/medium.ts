import { BOUNDS } from '../parts/quantity.ts';

/** What light passes through between two surfaces. */
export interface Medium {
  readonly name: string;
  /** The wavelengths that it is known for, nm. */
  readonly rangeNm: readonly [least: number, greatest: number];
  /**
   * Refractive index relative to air.
   * @throws WavelengthError outside `rangeNm`: dispersion is never extrapolated
   */
  indexAt(wavelengthNm: number): number;
}

/** A wavelength that a medium is not known for. */
export class WavelengthError extends Error {
  readonly medium: string;
  readonly rangeNm: Medium['rangeNm'];

  constructor(
    { name, rangeNm }: Pick<Medium, 'name' | 'rangeNm'>,
    readonly wavelengthNm: number,
  ) {
    super(`${name} is known from ${rangeNm[0]} to ${rangeNm[1]} nm, not at ${wavelengthNm} nm`);
    this.name = 'WavelengthError';
    this.medium = name;
    this.rangeNm = rangeNm;
  }
}

/** A medium whose index at a wavelength in nm is `index`, asked only inside `rangeNm`. */
export function medium(name: string, rangeNm: Medium['rangeNm'], index: (wavelengthNm: number) => number): Medium {
  return {
    name,
    rangeNm,
    indexAt(wavelengthNm) {
      // Said so that NaN is refused too.
      if (!(wavelengthNm >= rangeNm[0] && wavelengthNm <= rangeNm[1])) throw new WavelengthError({ name, rangeNm }, wavelengthNm);
      return index(wavelengthNm);
    },
  };
}

/** The wavelengths that a pairing may ask for. */
const EVERY: Medium['rangeNm'] = BOUNDS.wavelengthNm;

/** Index 1 by definition: catalogues state their indices relative to air. */
export const AIR: Medium = medium('air', EVERY, () => 1);

/** A medium without dispersion, named by its index `n`. */
export const plainIndex = (n: number): Medium => medium(String(n), EVERY, () => n);
