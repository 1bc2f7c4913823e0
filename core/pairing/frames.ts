/**
 * Steps and frames of a stack, all lengths in one unit. A frame is sharp over a whole `depth`; `overlap` is the
 * share of it that a frame has in common with the next, `error` how far either may stand from where it should.
 */

/** The overlap of a usual stack (common practice, without source). */
export const USUAL_OVERLAP = 0.2;

/**
 * From one frame to the next: `depth (1 - overlap)`, and no more than `depth - 2 error`, so that two neighbours
 * that both err, away from each other, still touch. Not above 0 where the error is half the depth or more.
 */
export const stepOf = (depth: number, overlap: number, error: number): number => Math.min(depth * (1 - overlap), depth - 2 * error);

/** As many whole `increment`s as `step` holds; a quotient that rounding leaves a hair below a whole number counts as it. */
export const incrementsIn = (step: number, increment: number): number => Math.floor((step / increment) * (1 + 1e-14));

/**
 * The least number of frames whose steps reach from the front of `subject` to its back, the first one standing for
 * a whole depth: `1 + max(0, ceil((subject - depth) / step))`. Where rounding makes the quotient a hair more or
 * less than whole, what the frames cover decides. `step > 0`; Infinity where they are beyond counting.
 */
export function framesOf(subject: number, depth: number, step: number): number {
  const whole = Math.max(0, Math.floor((subject - depth) / step));
  return depth + whole * step < subject ? whole + 2 : whole + 1;
}
