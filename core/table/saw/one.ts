import { crossing } from '../../numeric.ts';
import type { Bench } from './bench.ts';
import { type Axis, along, axis, type Found, type Outcome, spansOf } from './found.ts';
import type { Unknown } from './unknowns.ts';
import {
  birgeRatio,
  type Covariance,
  chiSquare,
  chiSquare95,
  covarianceAt,
  NINETY_FIVE,
  residualsAt,
  slopesAt,
  standings,
} from './weigh.ts';

/** How many values are looked through first. */
const LOOKED_AT = 97;
/** A golden-section search over two of those steps ends at 1e-9 of them. */
const GOLDEN_STEPS = 44;

/**
 * One unknown from any number of readings: least χ² over its whole range, and around each least the values that the
 * readings allow at 95 %, `χ² <= least + 3.84`. So a reading that two values explain gives two, one that hardly
 * changes gives an open or a wide interval, and one that no value explains is told with what could have been seen.
 */
export function solveOne(bench: Bench, range: readonly [number, number]): Outcome {
  const line = axis((bench.unknowns[0] as Unknown).ratio, range);
  const places = along(line, LOOKED_AT);
  const rows = places.map((x) => bench.readings.map((_, i) => bench.foretold(i, [line.at(x)])));
  const residuals = rows.map((row) => bench.readings.map(({ value }, i) => value - (row[i] as number)));

  // Doubts hang on where one stands, weakly: the best place by the readings' own ± is near enough to begin with.
  const plain = bench.readings.map(({ plusMinus }, i) => bench.readings.map((_, j) => (i === j ? 1 / plusMinus ** 2 : 0)));
  const nearPlain = residuals.map((r) => chiSquare(r, plain));
  const start = nearPlain.indexOf(Math.min(...nearPlain));
  const about = covarianceAt(bench, [line.at(places[start] as number)]).inverse;
  const missed = bench.readings.length > 1 ? undefined : (x: number): number => residualsAt(bench, [line.at(x)])[0] as number;
  const at = (x: number): number => chiSquare(residualsAt(bench, [line.at(x)]), about);
  const minima = valleys(residuals.map((r) => chiSquare(r, about))).map((g) => refined(at, missed, places, g));

  /** Doubts as they are at x itself: where a reading hardly changes they hardly count. */
  const off = (x: number): number => {
    const xs = [line.at(x)];
    return Math.sqrt(chiSquare(residualsAt(bench, xs), covarianceAt(bench, xs).inverse));
  };
  const nearest = minima.map((x) => ({ x, by: off(x) })).toSorted((a, b) => a.by - b.by);
  const best = nearest[0] as { x: number; by: number };
  const freedom = bench.readings.length - 1;
  if (freedom === 0 && best.by ** 2 > chiSquare95(1)) return { unmet: { spans: spansOf(bench, rows) } };
  const birge = birgeRatio(best.by ** 2, freedom);
  const most = Math.sqrt(best.by ** 2 + (NINETY_FIVE * birge) ** 2);
  const ways: Found[] = [];
  for (const { x, by } of nearest) {
    if (by > most || ways.some(({ low, high }) => line.at(x) >= low && line.at(x) <= high)) continue;
    ways.push(around((y) => off(y) - most, by - most, line, x));
  }
  const xs = [line.at(best.x)];
  const covariance = covarianceAt(bench, xs);
  return {
    solved: {
      ways: ways.map((way) => [way]),
      chiSquare: best.by ** 2,
      freedom,
      birge,
      standings: standingsAt(bench, xs, ways[0] as Found, covariance),
      covariance,
    },
  };
}

/** Where a curve is no higher than beside it; of a level stretch its middle. */
function valleys(curve: readonly number[]): number[] {
  const found: number[] = [];
  for (let i = 0; i < curve.length; i++) {
    let end = i;
    while (curve[end + 1] === curve[i]) end++;
    const [before, here, after] = [curve[i - 1] ?? Infinity, curve[i] as number, curve[end + 1] ?? Infinity];
    if (Number.isFinite(here) && here <= before && here <= after) found.push(Math.floor((i + end) / 2));
    i = end;
  }
  return found.length > 0 ? found : [0];
}

/**
 * The least χ² beside place `g`: of a single reading the root itself, where it is met between the neighbours.
 * @param missed a single reading less what is foretold
 */
function refined(at: (x: number) => number, missed: ((x: number) => number) | undefined, places: readonly number[], g: number): number {
  const a = places[Math.max(0, g - 1)] as number;
  const b = places[Math.min(places.length - 1, g + 1)] as number;
  const middle = places[g] as number;
  for (const [from, to] of missed
    ? ([
        [a, middle],
        [middle, b],
      ] as const)
    : []) {
    const [first, last] = [missed?.(from) as number, missed?.(to) as number];
    if (first < 0 && last >= 0) return crossing(missed as (x: number) => number, from, to, first, last);
    if (last < 0 && first >= 0) return crossing(missed as (x: number) => number, to, from, last, first);
  }
  return golden(at, a, b);
}

/** The least of a curve with one valley between `low` and `high`. */
function golden(f: (x: number) => number, low: number, high: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  let x1 = b - share * (b - a);
  let x2 = a + share * (b - a);
  let [y1, y2] = [f(x1), f(x2)];
  for (let i = 0; i < GOLDEN_STEPS; i++) {
    if (y1 < y2) {
      [b, x2, y2] = [x2, x1, y1];
      x1 = b - share * (b - a);
      y1 = f(x1);
    } else {
      [a, x1, y1] = [x1, x2, y2];
      x2 = a + share * (b - a);
      y2 = f(x2);
    }
  }
  return (a + b) / 2;
}

/** The stretch around `x`, where `margin` is `here`, in which it is not positive: steps that double, then the border by bracketing. */
function around(margin: (x: number) => number, here: number, line: Axis, x: number): Found {
  const edge = (end: number): readonly [value: number, open: boolean] => {
    let inside = x;
    let atInside = here;
    for (let step = 1e-4 * (end - x); ; step *= 2) {
      const next = x + step;
      if (Math.abs(step) >= Math.abs(end - x)) {
        const atEnd = margin(end);
        return atEnd <= 0 ? [line.at(end), true] : [line.at(crossing(margin, inside, end, atInside, atEnd)), false];
      }
      const value = margin(next);
      if (value > 0) return [line.at(crossing(margin, inside, next, atInside, value)), false];
      [inside, atInside] = [next, value];
    }
  };
  const [low, below] = edge(line.from);
  const [high, above] = edge(line.to);
  return { value: line.at(x), low, high, open: [below, above] };
}

function standingsAt(bench: Bench, xs: readonly number[], { low, high }: Found, covariance: Covariance) {
  const slopes = slopesAt(bench, xs, [(high - low) / 20]);
  return standings(bench, residualsAt(bench, xs), covariance, slopes);
}
