import type { Figure, Gap, Graph, Sheet } from '../figure.ts';
import type { Input } from './inputs.ts';
import { runsFor, signs } from './together.ts';

/**
 * How far each figure can be from its value, for inputs that are each somewhere in their interval.
 *
 * One input at a time is moved over its interval; the greatest rise and the greatest fall of each
 * figure are kept, extremes inside the interval included, and the rises of all inputs, and likewise
 * the falls, are combined by root of squares. Inputs are taken as independent.
 *
 * Where several stops limit alike no single one of them can open the beam, and what one input does may
 * hang on where another stands: so all are also moved together, the one that moves a figure most to
 * its ends and the rest part of the way, and low and high take in what is seen there.
 */
export interface Spread {
  /** For each figure, in the order given. */
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** `moves[i]`: what input i alone does to each figure. */
  readonly moves: readonly { readonly input: Input; readonly up: readonly number[]; readonly down: readonly number[] }[];
}

/** A figure as a number to compare: NaN where unknown, a figure's own stand-in where there is none. */
export function plain(figure: Figure, value: unknown): number {
  if (typeof value === 'number') return value;
  return (value as Gap).state === 'none' ? figure.noneCountsAs : Number.NaN;
}

/** All figures with one input at `x`. */
type At = (x: number) => number[];

const RISE = 1;
const FALL = -1;

/** Extremes of many functions over `[least, greatest]` at once, as excursions from those at `middle`. */
export function excursions(
  at: At,
  least: number,
  middle: number,
  greatest: number,
  base: readonly number[],
): { up: number[]; down: number[] } {
  const xs = [least, (least + middle) / 2, middle, (middle + greatest) / 2, greatest];
  const rows = xs.map((x) => (x === middle ? (base as number[]) : at(x)));
  const extreme = (j: number, sign: number): number => {
    let best = 0;
    let where = 2;
    rows.forEach((row, k) => {
      const gain = sign * difference(row[j] as number, base[j] as number);
      if (gain > best) [best, where] = [gain, k];
    });
    if (where > 0 && where < 4 && best > 0) return Math.max(best, inner(j, sign, where));
    // A peak at the middle itself may lie a little to one side of it.
    const flanks = [1, 3].map((k) => sign * difference((rows[k] as number[])[j] as number, base[j] as number));
    return where === 2 && flanks.every((g) => g < 0) ? Math.max(0, inner(j, sign, 2)) : best;
  };
  const inner = (j: number, sign: number, k: number): number =>
    peak((x) => sign * difference(at(x)[j] as number, base[j] as number), xs[k - 1] as number, xs[k + 1] as number);
  const each = (sign: number): number[] => base.map((b, j) => (Number.isNaN(b) ? 0 : extreme(j, sign)));
  return { up: each(RISE), down: each(FALL) };
}

/**
 * How far `a` is from `b`. From Infinity distance is counted in the reciprocal, so that falls from an
 * unlimited value combine too. A figure unknown at one point counts as unmoved there.
 */
function difference(a: number, b: number): number {
  if (a === b) return 0;
  const d = b === Number.POSITIVE_INFINITY ? -1 / a : a - b;
  return Number.isNaN(d) ? 0 : d;
}

/** The greatest value that eight golden-section steps find between two samples. */
function peak(f: (x: number) => number, low: number, high: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let a = low;
  let b = high;
  let x1 = b - golden * (b - a);
  let x2 = a + golden * (b - a);
  let y1 = f(x1);
  let y2 = f(x2);
  for (let i = 0; i < 8; i++) {
    if (y1 > y2) {
      [b, x2, y2] = [x2, x1, y1];
      x1 = b - golden * (b - a);
      y1 = f(x1);
    } else {
      [a, x1, y1] = [x1, x2, y2];
      x2 = a + golden * (b - a);
      y2 = f(x2);
    }
  }
  return Math.max(y1, y2);
}

/** The spread of `figures` about their values on `sheet`; the sheet is left as it was. */
export function spreadOf(graph: Graph, sheet: Sheet, inputs: readonly Input[], figures: readonly Figure[]): Spread {
  const places = figures.map((f) => graph.place.get(f) as number);
  const read = (s: Sheet): number[] => places.map((place, j) => plain(figures[j] as Figure, s[place]));
  const base = read(sheet);
  const moves = inputs.flatMap((input) => {
    if (!(input.greatest > input.least)) return [];
    const at = moved(graph, sheet, input);
    return [{ input, ...excursions((x) => read(at(x)), input.least, input.value, input.greatest, base) }];
  });
  const joint = together(graph, sheet, moves, read);
  const combined = (side: 'up' | 'down', j: number): number => {
    const sign = side === 'up' ? RISE : FALL;
    const alone = Math.sqrt(moves.reduce((sum, move) => sum + (move[side][j] as number) ** 2, 0));
    return joint.reduce((most, row) => Math.max(most, sign * difference(row[j] as number, base[j] as number)), alone);
  };
  return {
    moves,
    low: base.map((b, j) => Math.max((figures[j] as Figure).bounds[0], less(b, combined('down', j)))),
    high: base.map((b, j) => Math.min((figures[j] as Figure).bounds[1], b + combined('up', j))),
  };
}

/**
 * How far along its interval an input goes beside one that goes to the end of its own. Chosen so that
 * low to high holds nine draws of ten in a Monte Carlo run without growing past twice its width.
 */
const BESIDE = 0.6;
/** How often the design is gone through, each time with other leaders. */
const TURNS = 2;

/**
 * Rows of figures with all inputs moved together in a two-level design; the inputs that lead some figure
 * take turns in going to the ends of their intervals, the rest go part of the way.
 */
function together(graph: Graph, sheet: Sheet, moves: Spread['moves'], read: (s: Sheet) => number[]): number[][] {
  const leaders = leadersOf(moves);
  if (moves.length < 2 || leaders.length === 0) return [];
  const runs = runsFor(moves.length);
  return Array.from({ length: TURNS * runs }, (_, run) => {
    const leading = leaders[(run + Math.floor(run / runs)) % leaders.length];
    const scratch = sheet.slice();
    moves.forEach(({ input }, i) => {
      const place = graph.place.get(input.leaf) as number;
      const end = signs(run % runs, i) > 0 ? input.greatest : input.least;
      scratch[place] = input.put(scratch[place], input.value + (i === leading ? 1 : BESIDE) * (end - input.value));
    });
    graph.recompute(scratch);
    return read(scratch);
  });
}

/** The inputs that move some figure the most. */
function leadersOf(moves: Spread['moves']): number[] {
  const figures = moves[0]?.up.length ?? 0;
  const leaders = new Set<number>();
  for (let j = 0; j < figures; j++) {
    let most = 0;
    let leading = -1;
    moves.forEach(({ up, down }, i) => {
      const pull = Math.max(up[j] as number, down[j] as number);
      if (pull > most) [most, leading] = [pull, i];
    });
    if (leading >= 0) leaders.add(leading);
  }
  return [...leaders];
}

const less = (b: number, d: number): number => (b === Number.POSITIVE_INFINITY ? 1 / d : b - d);

/** Sheets with one input moved; each call writes over the last. */
export function moved(graph: Graph, sheet: Sheet, input: Input): (x: number) => Sheet {
  const place = graph.place.get(input.leaf) as number;
  const scratch = sheet.slice();
  return (x) => {
    scratch[place] = input.put(sheet[place], x);
    graph.follow(scratch, place);
    return scratch;
  };
}
