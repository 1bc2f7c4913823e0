import type { Bench, Doubts } from './bench.ts';
import { type Bottom, bottom, type Job } from './bottom.ts';
import { type Axis, along, axis, type Found, type Outcome, spansOf } from './found.ts';
import { times } from './matrix.ts';
import {
  birgeRatio,
  type Covariance,
  chiSquare,
  chiSquare95,
  covarianceAt,
  gainOf,
  NINETY_FIVE,
  residualsAt,
  STANDARD,
  slopesAt,
  standings,
} from './weigh.ts';

/** How many values of the two unknowns are looked through first. */
const LOOKED_AT = [19, 11] as const;
/** How many valleys are followed to their bottom. */
const FOLLOWED = 4;
/** A doubt that moves less than this share of the whole is taken by the slopes alone. */
const SMALL = 0.1;

/**
 * Two unknowns from two readings or more: least χ² by Levenberg and Marquardt from the best places of a net, then
 * solved anew with each doubt moved by its half-width either way, the moves of each direction combined by root of
 * squares.
 */
export function solveTwo(bench: Bench, ranges: readonly (readonly [number, number])[]): Outcome {
  const lines = bench.unknowns.map(({ ratio }, k) => axis(ratio, ranges[k] as readonly [number, number]));
  const [first, second] = lines as [Axis, Axis];
  const net = along(first, LOOKED_AT[0]).map((x) => along(second, LOOKED_AT[1]).map((y) => [x, y]));
  const at = (u: readonly number[]): number[] => u.map((x, k) => (lines[k] as Axis).at(x));
  const rows = net.map((line) => line.map((u) => bench.readings.map((_, i) => bench.foretold(i, at(u)))));
  const missed = rows.map((line) => line.map((row) => bench.readings.map(({ value }, i) => value - (row[i] as number))));

  const plain = bench.readings.map(({ plusMinus }, i) => bench.readings.map((_, j) => (i === j ? 1 / (STANDARD * plusMinus) ** 2 : 0)));
  const curve = missed.map((line) => line.map((r) => chiSquare(r, plain)));
  const starts = valleys(curve)
    .slice(0, FOLLOWED)
    .map(([a, b]) => (net[a as number] as number[][])[b as number] as number[]);
  const readings = bench.readings.map(({ value }) => value);
  const job = { bench, lines, at };
  let bottoms = starts.map((u) => bottom(job, readings, plain, u));
  let covariance = covarianceAt(bench, at(deepest(bottoms).u));
  bottoms = bottoms.map(({ u }) => bottom(job, readings, covariance.inverse, u));
  const best = deepest(bottoms);
  covariance = covarianceAt(bench, at(best.u));

  const freedom = bench.readings.length - 2;
  if (freedom === 0 && best.chi > chiSquare95(2)) return { unmet: { spans: spansOf(bench, rows.flat()) } };
  const birge = birgeRatio(best.chi, freedom);
  const most = best.chi + chiSquare95(2) * birge ** 2;
  const ways: Found[][] = [];
  for (const { u, chi } of bottoms.toSorted((a, b) => a.chi - b.chi)) {
    if (chi > most || ways.some((way) => way.every(({ low, high }, k) => within(at(u)[k] as number, low, high)))) continue;
    ways.push(spread(job, readings, covarianceAt(bench, at(u)), u, birge));
  }
  const xs = at(best.u);
  return {
    solved: {
      ways,
      chiSquare: best.chi,
      freedom,
      birge,
      standings: standings(bench, residualsAt(bench, xs), covariance, slopesAt(bench, xs, steps(lines, best.u))),
      covariance,
    },
  };
}

const within = (x: number, low: number, high: number): boolean => x >= low && x <= high;
const deepest = (bottoms: readonly Bottom[]): Bottom => bottoms.toSorted((a, b) => a.chi - b.chi)[0] as Bottom;

/** Small steps of the unknowns themselves at `u`. */
const steps = (lines: readonly Axis[], u: readonly number[]): number[] =>
  lines.map(({ from, to, at }, k) => at((u[k] as number) + 1e-6 * (to - from)) - at(u[k] as number));

/** Places of the net no higher than their neighbours, the lowest first. */
function valleys(curve: readonly (readonly number[])[]): (readonly [number, number])[] {
  const found: (readonly [number, number])[] = [];
  for (let a = 0; a < curve.length; a++)
    for (let b = 0; b < (curve[a] as readonly number[]).length; b++) if (isValley(curve, a, b)) found.push([a, b]);
  const height = ([a, b]: readonly [number, number]): number => (curve[a] as readonly number[])[b] as number;
  return found.toSorted((p, q) => height(p) - height(q));
}

function isValley(curve: readonly (readonly number[])[], a: number, b: number): boolean {
  const here = curve[a]?.[b] as number;
  for (const i of [-1, 0, 1]) for (const j of [-1, 0, 1]) if ((curve[a + i]?.[b + j] ?? Infinity) < here) return false;
  return true;
}

/** The unknowns at `u` with their 95 %: solved anew with every doubt moved either way. */
function spread(
  { bench, lines, at }: Job,
  readings: readonly number[],
  covariance: Covariance,
  u: readonly number[],
  birge: number,
): Found[] {
  const here = at(u);
  const { doubts, inverse: weights } = covariance;
  const moves = movesOf(bench, doubts);
  const slopes = slopesAt(bench, here, steps(lines, u));
  const gain = gainOf(weights, slopes);
  const straight = moves.map((move) => (gain ? times(gain, move) : here.map(() => Number.POSITIVE_INFINITY)));
  const whole = here.map((_, k) => Math.sqrt(straight.reduce((sum, by) => sum + (by[k] as number) ** 2, 0)));
  const up = here.map(() => 0);
  const down = here.map(() => 0);
  moves.forEach((move, m) => {
    const by = straight[m] as number[];
    const matters = by.some((x, k) => !(Math.abs(x) <= SMALL * (whole[k] as number)));
    for (const sign of [1, -1]) {
      const moved = matters
        ? at(
            bottom(
              { bench, lines, at },
              readings.map((y, i) => y + sign * (move[i] as number)),
              weights,
              u,
            ).u,
          )
        : here.map((x, k) => x + sign * (by[k] as number));
      moved.forEach((x, k) => {
        const d = x - (here[k] as number);
        if (d > 0) up[k] = (up[k] as number) + d * d;
        else down[k] = (down[k] as number) + d * d;
      });
    }
  });
  return here.map((value, k) => {
    const { from, to, at: valueAt } = lines[k] as Axis;
    const [least, greatest] = [valueAt(from), valueAt(to)];
    const half = (squares: number): number => NINETY_FIVE * STANDARD * birge * Math.sqrt(squares);
    const [low, high] = [value - half(down[k] as number), value + half(up[k] as number)];
    return { value, low: Math.max(least, low), high: Math.min(greatest, high), open: [low <= least, high >= greatest] };
  });
}

/** What each doubt does to all readings at once: each reading's own numbers apart, the shared inputs together. */
function movesOf(bench: Bench, doubts: Covariance['doubts']): number[][] {
  const only = (i: number, x: number): number[] => bench.readings.map((_, j) => (j === i ? x : 0));
  const own = bench.readings.flatMap(({ plusMinus }, i) => [plusMinus, ...(doubts[i] as Doubts).own].map((x) => only(i, x)));
  const shared = bench.shared.map((_, s) => bench.readings.map((_, i) => (doubts[i] as Doubts).shared[s] as number));
  return [...own, ...shared];
}
