/**
 * Paraxial ray matrices in air: `[height, slope]` behind = matrix × `[height, slope]` before.
 * `a` is a number, `b` mm, `c` 1/mm, `d` a number; the determinant is 1. Any optics text
 * (Gerrard & Burch 1975).
 */
export interface Matrix {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

export const gap = (length: number): Matrix => ({ a: 1, b: length, c: 0, d: 1 });

export const thinLens = (focalLength: number): Matrix => ({ a: 1, b: 0, c: -1 / focalLength, d: 1 });

/** The matrices of elements in the order in which light meets them. */
export function train(...elements: readonly Matrix[]): Matrix {
  return elements.reduce((before, next) => ({
    a: next.a * before.a + next.b * before.c,
    b: next.a * before.b + next.b * before.d,
    c: next.c * before.a + next.d * before.c,
    d: next.c * before.b + next.d * before.d,
  }));
}
