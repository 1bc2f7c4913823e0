/**
 * A parabola over the planes behind a lens, `least + rate (z - at)²`, z in mm from the last vertex. The
 * mean square of a bundle's rays about their centroid is one, exactly: rays are straight.
 */
export interface Parabola {
  readonly at: number;
  /** Never negative. */
  readonly least: number;
  /** Never negative. */
  readonly rate: number;
}

/** Angles from their mean, squared: rays as parallel as this (a millionth of a second of arc) are told apart by rounding alone. */
const PARALLEL = 1e-23;

/** The parabola `a + 2 b (z - near) + c (z - near)²`; where it is flat, its vertex is taken to be near. */
export function parabola(a: number, b: number, c: number, near: number): Parabola {
  if (!(c > PARALLEL)) return { at: near, least: a, rate: 0 };
  return { at: near - b / c, least: Math.max(0, a - (b * b) / c), rate: c };
}

export const valueAt = ({ at, least, rate }: Parabola, z: number): number => least + rate * (z - at) ** 2;

/** The plane at which the larger of two is least: a vertex, or where one rises past the falling other. */
function leastOfTwo(a: Parabola, b: Parabola): number {
  if (valueAt(b, a.at) <= a.least) return a.at;
  if (valueAt(a, b.at) <= b.least) return b.at;
  // They cross once between the vertices: A u² + 2 B u + C = 0, u from the vertex of a, C negative.
  const apart = b.at - a.at;
  const A = a.rate - b.rate;
  const B = b.rate * apart;
  const C = a.least - b.least - B * apart;
  return a.at - C / (B + Math.sign(apart) * Math.sqrt(Math.max(0, B * B - A * C)));
}

/**
 * The one plane at which the largest of several is least, exactly; undefined for none. Where each is
 * below a level is an interval, and intervals that meet two by two all meet (Helly's theorem on a line):
 * so one of the pairs decides alone. It is the one whose own plane is good for all: which holds the level
 * highest rounding may hide, where one is all but flat. One that is flat is as good anywhere, and leaves it to the others.
 */
export function oneFrame(squares: readonly Parabola[]): number | undefined {
  const bent = squares.filter(({ rate }) => rate > 0);
  let plane = squares[0]?.at;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, a] of bent.entries()) {
    for (const b of bent.slice(0, i + 1)) {
      const z = leastOfTwo(a, b);
      const level = Math.max(...bent.map((one) => valueAt(one, z)));
      if (level < least) [plane, least] = [z, level];
    }
  }
  return plane;
}
