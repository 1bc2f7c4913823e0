import type { Circle } from '../../core/index.ts';

/** How things are told apart in ink: dashes and gaps in px. The same thing has the same line wherever it is drawn. */

/** The circles on the sensor, and what they become in a curve. */
export const CIRCLE_DASH: Record<Circle, readonly number[]> = { corrected: [12, 5], lit: [2, 3.5], sharp: [12, 4, 2, 4] };

export const DASH = {
  /** Light, from the middle to the corner or at a place. */
  light: [],
  /** How much of the picture is covered. */
  covered: [7, 3],
  /** Contrast of lines that point to the middle of the picture, and of lines at right angles to those. */
  sagittal: [],
  tangential: [7, 3],
  /** What no fault takes from: diffraction alone. */
  perfect: [],
  /** What the pixels take part in. */
  pixels: [1.5, 3],
  /** A lens that stands the better way round, and the other way. */
  better: [],
  turned: [6, 3],
  /** Where the pairing is, or where the picture ends. */
  here: [2, 3],
} as const satisfies Record<string, readonly number[]>;

/** Of pairings abreast: each has its own, and its letter at its end. */
export const ABREAST_DASH: readonly (readonly number[])[] = [
  [],
  [7, 3],
  [1.5, 3],
  [12, 4, 2, 4],
  [3, 3],
  [14, 4],
  [12, 3, 2, 3, 2, 3],
  [5, 2, 1.5, 2],
  [1.5, 6],
  [20, 5, 5, 5],
  [9, 7],
  [4, 2, 4, 6],
];

/** As an SVG attribute. */
export const dashes = (dash: readonly number[]): string | undefined => (dash.length > 0 ? dash.join(' ') : undefined);
