import type { Bench } from './bench.ts';
import type { Axis } from './found.ts';
import { dot, inverse, times } from './matrix.ts';
import { type Covariance, chiSquare } from './weigh.ts';

/** χ² below this is met. */
const NEAR_ENOUGH = 1e-12;

/** What is solved, and the axes along which. */
export interface Job {
  readonly bench: Bench;
  readonly lines: readonly Axis[];
  at(u: readonly number[]): number[];
}
/** A place where χ² is least. */
export interface Bottom {
  readonly u: readonly number[];
  readonly chi: number;
}

/** Levenberg and Marquardt from `start`, kept inside the range. */
export function bottom(
  { bench, lines, at }: Job,
  readings: readonly number[],
  weights: Covariance['inverse'],
  start: readonly number[],
): Bottom {
  const missed = (u: readonly number[]): number[] => readings.map((y, i) => y - bench.foretold(i, at(u)));
  let u = start;
  let r = missed(u);
  let chi = chiSquare(r, weights);
  let damping = 1e-3;
  for (let round = 0; round < 60 && chi > NEAR_ENOUGH; round++) {
    const columns = lines.map(({ from, to }, k) => {
      const step = 1e-6 * (to - from);
      const up = missed(u.with(k, Math.min(to, (u[k] as number) + step)));
      const down = missed(u.with(k, Math.max(from, (u[k] as number) - step)));
      const apart = Math.min(to, (u[k] as number) + step) - Math.max(from, (u[k] as number) - step);
      return down.map((d, i) => ((x) => (Number.isFinite(x) ? x : 0))((d - (up[i] as number)) / apart));
    });
    const weighed = columns.map((column) => times(weights, column));
    const normal = columns.map((column) => weighed.map((w) => dot(w, column)));
    const pull = weighed.map((w) => dot(w, r));
    const scale = Math.max(...normal.map((row, k) => row[k] as number));
    let moved = 0;
    for (; damping < 1e12; damping *= 10) {
      const damped = normal.map((row, k) => row.map((x, j) => (j === k ? x + damping * Math.max(x, 1e-6 * scale) : x)));
      const move = inverse(damped);
      if (!move) continue;
      const by = times(move, pull);
      const next = u.map((x, k) => Math.min((lines[k] as Axis).to, Math.max((lines[k] as Axis).from, x + (by[k] as number))));
      const nextMissed = missed(next);
      const nextChi = chiSquare(nextMissed, weights);
      if (nextChi >= chi) continue;
      moved = chi - nextChi;
      [u, r, chi] = [next, nextMissed, nextChi];
      damping = Math.max(1e-9, damping / 30);
      break;
    }
    if (moved <= 1e-12 * chi) break;
  }
  return { u, chi };
}
