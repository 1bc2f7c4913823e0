import { gap, type thinLens, train } from '../index.ts';

type Matrix = ReturnType<typeof thinLens>;

/**
 * The image that a train forms of the plane where it begins: how far behind its end the heights no
 * longer depend on the slope, and the magnification there, read off core's ray matrix.
 */
export function image(matrix: Matrix): { distance: number; magnification: number } {
  const distance = -matrix.b / matrix.d;
  return { distance, magnification: train(matrix, gap(distance)).a };
}
