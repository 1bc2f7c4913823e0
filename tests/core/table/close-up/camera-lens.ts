import { gap, thinLens, train } from '../../../../core/index.ts';
import type { Random } from '../../../support/random.ts';

/**
 * A camera lens as ray matrices: a thick group of two thin lenses before, one behind that is moved for focusing while
 * the sensor stays, or, focused as a whole, both moved together. Nothing here is core's but the matrices.
 */
type Matrix = ReturnType<typeof thinLens>;

/** Two thin lenses `apart` that make a lens of power 1/f; lengths in mm. */
interface Group {
  readonly matrix: Matrix;
}

const group = (f1: number, apart: number, f2: number): Group => ({ matrix: train(thinLens(f1), gap(apart), thinLens(f2)) });
const focal = ({ c }: Matrix): number => -1 / c;
/** From the last surface to where collimated light meets. */
const backFocus = ({ a, c }: Matrix): number => -a / c;

export interface CameraLens {
  /** From the rim to the last surface, with the moving group moved by `move` toward the sensor. */
  at(move: number): Matrix;
  /** From the last surface to the sensor there. */
  behind(move: number): number;
  readonly focalLengthMm: number;
  /** From the rim to the sensor with the lens at infinity; the sensor of one that moves as a whole moves off instead. */
  readonly lengthMm: number;
  readonly focusesInside: boolean;
}

/** A lens that focuses by a group inside: a positive group before, a weaker one of either sign behind. */
export function insideFocusing(r: Random): CameraLens {
  const front = group(r.between(90, 140), r.between(4, 12), r.between(200, 500));
  const rear = group(r.oneOf([-1, 1]) * r.between(90, 200), r.between(2, 8), r.between(900, 3000));
  const apart = r.between(15, 30);
  const whole = train(front.matrix, gap(apart), rear.matrix);
  const stays = apart + backFocus(whole);
  return {
    at: (move) => train(front.matrix, gap(apart + move), rear.matrix),
    behind: (move) => stays - apart - move,
    focalLengthMm: focal(whole),
    lengthMm: stays,
    focusesInside: true,
  };
}

/** A lens that moves as a whole: `move` is how far the sensor stands beyond its focus. */
export function movedWhole(r: Random): CameraLens {
  const whole = train(
    group(r.between(90, 140), r.between(4, 12), r.between(200, 500)).matrix,
    gap(r.between(5, 30)),
    group(r.oneOf([-1, 1]) * r.between(150, 300), r.between(2, 8), r.between(900, 3000)).matrix,
  );
  return {
    at: () => whole,
    behind: (move) => backFocus(whole) + move,
    focalLengthMm: focal(whole),
    lengthMm: Number.NaN,
    focusesInside: false,
  };
}

/**
 * The subject that is sharp on a sensor `behind` what stands before it: how far before the first surface, and how
 * large it is shown. A ray from height h, slope u meets the sensor at (a + ...) free of u.
 */
export function sharpThrough(before: Matrix, behind: number): { distance: number; magnification: number } {
  const { a, b } = train(before, gap(behind));
  // gap(X) first: b becomes a X + b, which must vanish; then the height is a times the subject's.
  return { distance: -b / a, magnification: Math.abs(a) };
}
