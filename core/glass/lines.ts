import type { Medium } from './medium.ts';

/**
 * Spectral lines that glass catalogues state indices at, nm in air; from memory. e, d, F', C', F and C are
 * ISO 7944's reference wavelengths for main dispersions, the others mercury, hydrogen, caesium and helium lines.
 */
export const LINES = {
  i: 365.0146,
  h: 404.6561,
  g: 435.8343,
  "F'": 479.9914,
  F: 486.1327,
  e: 546.074,
  d: 587.5618,
  "C'": 643.8469,
  C: 656.2725,
  r: 706.5188,
  s: 852.11,
  t: 1013.98,
} as const;

export type Line = keyof typeof LINES;

/** @throws WavelengthError where the line lies outside the medium's range, as all below do */
export const indexAtLine = (medium: Medium, line: Line): number => medium.indexAt(LINES[line]);

/** `n_blue - n_red`. @throws RangeError where there is none to divide by: air, a plain index */
function dispersion(medium: Medium, blue: Line, red: Line): number {
  const difference = indexAtLine(medium, blue) - indexAtLine(medium, red);
  if (difference === 0) throw new RangeError(`${medium.name} has no dispersion`);
  return difference;
}

const SPAN = { d: ['F', 'C'], e: ["F'", "C'"] } as const;

/** Abbe's number: `V_d = (n_d - 1) / (n_F - n_C)`, `V_e = (n_e - 1) / (n_F' - n_C')` (ISO 7944). */
export function abbeNumber(medium: Medium, middle: 'd' | 'e'): number {
  const [blue, red] = SPAN[middle];
  return (indexAtLine(medium, middle) - 1) / dispersion(medium, blue, red);
}

/** The share of the main dispersion that lies between two lines, `P_xy = (n_x - n_y) / (n_F - n_C)`. */
export const partialDispersion = (medium: Medium, x: Line, y: Line): number =>
  (indexAtLine(medium, x) - indexAtLine(medium, y)) / dispersion(medium, 'F', 'C');
