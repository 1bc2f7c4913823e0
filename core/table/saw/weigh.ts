import type { Bench, Doubts } from './bench.ts';
import { dot, inverse, type Rows, times } from './matrix.ts';

/**
 * Least squares of readings that share doubts. A half-width `a` that surely holds the truth, evenly, has the standard
 * uncertainty `a/√3` (JCGM 100, 4.3.7); 95 % of what several such doubts come to together lie within 1.96 standard
 * uncertainties, and of a single one all. So a ± here is 1.96/√3 = 1.13 times the root of squares of the half-widths,
 * by which the ± of all other figures are combined.
 */
export const STANDARD = 1 / Math.sqrt(3);
export const NINETY_FIVE = 1.959963984540054;

/** 95 % points of χ² for 1 to 11 degrees of freedom, 1.9600² and on. */
const CHI_SQUARE_95 = [3.841, 5.991, 7.815, 9.488, 11.07, 12.592, 14.067, 15.507, 16.919, 18.307, 19.675];
export const chiSquare95 = (freedom: number): number => CHI_SQUARE_95[freedom - 1] ?? Number.POSITIVE_INFINITY;

/**
 * By how much readings that do not agree widen the ±: Birge's ratio √(χ²/freedom) where χ² is beyond its 95 %, else
 * 1, because what agrees within chance needs no widening. Without freedom there is nothing to agree.
 */
export const birgeRatio = (chi: number, freedom: number): number => (chi > chiSquare95(freedom) ? Math.sqrt(chi / freedom) : 1);

/** No reading's own doubt counts for less than this share of what it shares with others: double precision ends there. */
const ROUNDING = 1e-10;

/** The covariance of readings: each its own doubts, all the shared ones. */
export interface Covariance {
  readonly rows: Rows;
  readonly inverse: Rows;
  readonly doubts: readonly Doubts[];
}

export function covarianceAt(bench: Bench, xs: readonly number[]): Covariance {
  const doubts = bench.readings.map((_, i) => bench.doubts(i, xs));
  const rows = bench.readings.map(({ plusMinus }, i) =>
    bench.readings.map((_, j) => {
      const [a, b] = [doubts[i] as Doubts, doubts[j] as Doubts];
      const together = dot(a.shared, b.shared);
      const own = i === j ? plusMinus ** 2 + dot(a.own, a.own) + ROUNDING * together : 0;
      return (together + own) * STANDARD ** 2;
    }),
  );
  // Readings have a ± of their own that counts, so there is an inverse.
  return { rows, inverse: inverse(rows) as Rows, doubts };
}

export const residualsAt = (bench: Bench, xs: readonly number[]): number[] =>
  bench.readings.map(({ value }, i) => value - bench.foretold(i, xs));

/** χ² of residuals; Infinity where one is, or is none. */
export function chiSquare(residuals: readonly number[], weights: Rows): number {
  if (residuals.some((r) => !Number.isFinite(r))) return Number.POSITIVE_INFINITY;
  return dot(residuals, times(weights, residuals));
}

/** How a reading stands to the others. */
export interface Standing {
  readonly place: number;
  /** Its distance from what the others foretell, over the standard uncertainty of that distance. */
  readonly off: number;
  /** What the others foretell of it, as compared. */
  readonly expected: number;
}

/**
 * Each reading against the rest: with `M = V⁻¹ - V⁻¹J(JᵀV⁻¹J)⁻¹JᵀV⁻¹` and residuals r, leaving reading i out moves
 * its prediction to `y - (V⁻¹r)_i / M_ii`, and that distance has the variance `1 / M_ii` (Baarda's test).
 *
 * @param slopes J by rows: what a unit of each unknown does to each reading
 */
export function standings(bench: Bench, residuals: readonly number[], { inverse: W }: Covariance, slopes: Rows): Standing[] {
  const gain = gainOf(W, slopes);
  if (!gain) return [];
  const pulled = times(W, residuals);
  return bench.readings.flatMap(({ value, place }, i): Standing[] => {
    // (V⁻¹J)(JᵀV⁻¹J)⁻¹(JᵀV⁻¹) is V⁻¹ times J times the gain.
    const fitted = slopes.map((row) =>
      dot(
        row,
        gain.map((g) => g[i] as number),
      ),
    );
    const own = ((W[i] as readonly number[])[i] as number) - dot(W[i] as readonly number[], fitted);
    // Where the others say nothing of it there is nothing to be off from.
    if (!(own > 1e-9 * ((W[i] as readonly number[])[i] as number))) return [];
    const pull = pulled[i] as number;
    return [{ place, off: pull / Math.sqrt(own), expected: value - pull / own }];
  });
}

/** `(JᵀV⁻¹J)⁻¹JᵀV⁻¹`: what a unit of each reading does to each unknown; undefined where they do not separate. */
export function gainOf(weights: Rows, slopes: Rows): Rows | undefined {
  const columns = (slopes[0] as readonly number[]).map((_, k) => slopes.map((row) => row[k] as number));
  const weighed = columns.map((column) => times(weights, column));
  const normal = inverse(columns.map((column) => weighed.map((w) => dot(w, column))));
  if (!normal) return undefined;
  return normal.map((row) =>
    (weights as Rows).map((_, i) =>
      dot(
        row,
        weighed.map((w) => w[i] as number),
      ),
    ),
  );
}

/** What a unit of each unknown does to each reading, by the difference over a small step. */
export const slopesAt = (bench: Bench, xs: readonly number[], steps: readonly number[]): number[][] =>
  bench.readings.map((_, i) =>
    xs.map((x, k) => {
      const step = steps[k] as number;
      const rise = bench.foretold(i, xs.with(k, x + step)) - bench.foretold(i, xs.with(k, x - step));
      return Number.isFinite(rise) ? rise / (2 * step) : 0;
    }),
  );
