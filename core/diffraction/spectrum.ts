import { fallingRoot, type ValueAndRate } from '../numeric.ts';

/** Light as a sum over wavelengths. The weights sum to 1. */
export type Spectrum = readonly { readonly wavelengthNm: number; readonly weight: number }[];

export const oneWavelength = (wavelengthNm: number): Spectrum => [{ wavelengthNm, weight: 1 }];

/** The eye's photopic luminous efficiency V(λ), CIE 1924, every 10 nm from 380 to 780. */
export const LUMINOUS_EFFICIENCY: ReadonlyMap<number, number> = new Map(
  // biome-ignore format: ten to a line
  [
    0.000039, 0.00012, 0.000396, 0.00121, 0.004, 0.0116, 0.023, 0.038, 0.06, 0.09098,
    0.13902, 0.20802, 0.323, 0.503, 0.71, 0.862, 0.954, 0.9949501, 0.995, 0.952,
    0.87, 0.757, 0.631, 0.503, 0.381, 0.265, 0.175, 0.107, 0.061, 0.032,
    0.017, 0.00821, 0.004102, 0.002091, 0.001047, 0.00052, 0.0002492, 0.00012, 0.00006, 0.00003,
    0.00001499,
  ].map((v, i) => [380 + 10 * i, v]),
);

const MOST = 12;

/**
 * White light (equal energy) as the eye weighs it, in as few wavelengths as will do: Gauss's rule for the
 * weight V(λ). For anything that is a polynomial in the wavelength of degree below `2 count` the sum is
 * exactly the one over the whole table, and the table's own is as good as an integral, V being smooth and
 * next to nothing at its ends.
 *
 * Stieltjes's procedure: the polynomials orthonormal under V by their three-term recurrence; the nodes are
 * the zeros of the one of degree `count`, the weights Christoffel's numbers `1 / Σ p_k²` (W. Gautschi,
 * Orthogonal Polynomials, 2004, from memory).
 *
 * @param count 1 to 12
 */
export function photopic(count = 5): Spectrum {
  if (!Number.isInteger(count) || count < 1 || count > MOST)
    throw new RangeError(`${count} is not a number of wavelengths from 1 to ${MOST}`);
  const recurrence = recurrenceUnder(LUMINOUS_EFFICIENCY, count);
  return zeros(recurrence, count).map((wavelengthNm) => ({ wavelengthNm, weight: 1 / valuesAt(recurrence, wavelengthNm, count).squares }));
}

/** `sides[k+1] p_{k+1} = (x - centres[k]) p_k - sides[k] p_{k-1}`, with `p_0 = 1`. */
interface Recurrence {
  readonly centres: readonly number[];
  readonly sides: readonly number[];
}

/** The recurrence of the polynomials that are orthonormal under a table of weights, up to degree `count`. */
function recurrenceUnder(table: ReadonlyMap<number, number>, count: number): Recurrence {
  const total = [...table.values()].reduce((sum, v) => sum + v, 0);
  const points = [...table].map(([x, v]) => ({ x, weight: v / total, before: 0, here: 1 }));
  const centres: number[] = [];
  const sides = [0];
  for (let k = 0; k < count; k++) {
    const centre = points.reduce((sum, { x, weight, here }) => sum + weight * x * here * here, 0);
    for (const p of points) [p.before, p.here] = [p.here, (p.x - centre) * p.here - (sides[k] as number) * p.before];
    const side = Math.sqrt(points.reduce((sum, { weight, here }) => sum + weight * here * here, 0));
    for (const p of points) p.here /= side;
    centres.push(centre);
    sides.push(side);
  }
  return { centres, sides };
}

/** The polynomial of a degree at `x`, its rate, and the sum of the squares of those of lower degree. */
function valuesAt({ centres, sides }: Recurrence, x: number, degree: number): { value: number; rate: number; squares: number } {
  let [before, rateBefore] = [0, 0];
  let [value, rate, squares] = [1, 0, 0];
  for (let k = 0; k < degree; k++) {
    const [centre, side, next] = [centres[k] as number, sides[k] as number, sides[k + 1] as number];
    squares += value * value;
    const above = ((x - centre) * value - side * before) / next;
    const rateAbove = (value + (x - centre) * rate - side * rateBefore) / next;
    [before, rateBefore, value, rate] = [value, rate, above, rateAbove];
  }
  return { value, rate, squares };
}

/** In rising order: each zero of a degree lies between neighbours of the degree below, or between one and an end. */
function zeros(recurrence: Recurrence, count: number): number[] {
  const wavelengths = [...LUMINOUS_EFFICIENCY.keys()];
  const [least, greatest] = [Math.min(...wavelengths), Math.max(...wavelengths)];
  let found: number[] = [];
  for (let degree = 1; degree <= count; degree++) {
    const borders = [least, ...found, greatest];
    found = Array.from({ length: degree }, (_, i) => {
      const sign = (degree - i) % 2 === 0 ? 1 : -1;
      const falling = (x: number, into: ValueAndRate): void => {
        const { value, rate } = valuesAt(recurrence, x, degree);
        into.value = sign * value;
        into.rate = sign * rate;
      };
      return fallingRoot(falling, borders[i] as number, borders[i + 1] as number);
    });
  }
  return found;
}
