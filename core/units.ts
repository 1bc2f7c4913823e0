/**
 * Units. Inside core lengths are millimetres unless a name says otherwise (`Um`, `Nm`), slopes are
 * tangents, magnifications magnitudes. The factors below are the only ones used to cross over.
 */

export const MM_PER_UM = 1e-3;
export const MM_PER_NM = 1e-6;
export const UM_PER_MM = 1e3;
export const MM_PER_M = 1e3;
/** The international inch. */
export const MM_PER_INCH = 25.4;
export const DEG_PER_RAD = 180 / Math.PI;

/** The units that a figure may carry, in the API's spelling. */
export type Unit = '1' | 'mm' | 'µm' | 'lp/mm' | 'MP' | 'EV' | '°' | '1/mm' | 'D' | 's' | 'µm/s' | 'λ' | 'm';

/**
 * The power of length in each unit: what a figure is multiplied by when every length of a rig,
 * wavelength and pixels included, is multiplied by `k` is `k ** DIMENSION[unit]`.
 */
export const DIMENSION: Record<Unit, number> = {
  '1': 0,
  mm: 1,
  µm: 1,
  'lp/mm': -1,
  MP: 0,
  EV: 0,
  '°': 0,
  '1/mm': -1,
  D: -1,
  s: 0,
  'µm/s': 1,
  λ: 0,
  m: 1,
};
