import type { Figure, Gap } from '../figure.ts';
import type { Graph, Sheet } from '../graph.ts';
import { combined, type Excursions, ends, excursions, unmoved } from './excursions.ts';
import type { Input } from './input.ts';
import { type Alone, movedRows, samplesOf } from './moved-rows.ts';

/**
 * How far each figure can be from its value, for inputs that are each somewhere in their interval.
 *
 * One input at a time is moved over its interval; the greatest rise and the greatest fall of each
 * figure are kept, extremes inside the interval included, and the rises of all inputs, and likewise
 * the falls, are combined by root of squares. Inputs are taken as independent.
 *
 * Where several stops limit alike no single one of them can open the beam, and what one input does may
 * hang on where another stands: so all are also moved together (`together.ts`), and low and high take in
 * what is seen there and is not the sum of what each does alone.
 */
export interface Spread {
  readonly figures: readonly Figure[];
  /** For each figure, in the order given. */
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** `moves[i]`: what input i alone does to each figure. */
  readonly moves: readonly (Excursions & { readonly input: Input })[];
}

/** A figure as a number to compare: NaN where unknown, a figure's own stand-in where there is none. */
export function plain(figure: Figure, value: unknown): number {
  if (typeof value === 'number') return value;
  return (value as Gap).state === 'none' ? figure.noneCountsAs : Number.NaN;
}

/** The spread of `figures` about their values on `sheet`; the sheet is left as it was. */
export function spreadOf(graph: Graph, sheet: Sheet, inputs: readonly Input[], figures: readonly Figure[]): Spread {
  const doubtful = inputs.filter((input) => input.greatest > input.least);
  const { places, batch, alone, together, leafAt } = movedRows(graph, figures, doubtful);
  const cells = batch.workOut(sheet, (k, place) => leafAt(doubtful, k, sheet[place]));
  const told = (cell: number, j: number): number => {
    const value = cells[cell];
    return typeof value === 'number' ? value : plain(figures[j] as Figure, value);
  };
  const base = places.map((place, j) => {
    const value = sheet[place];
    return typeof value === 'number' ? value : plain(figures[j] as Figure, value);
  });
  const moves = doubtful.map((input, i) => {
    const { reached, cells: at } = alone[i] as Alone;
    if (reached.length === 0) return { input, ...unmoved(base.length) };
    if (input.apart === 'one way') return { input, ...ends((n, k) => told(at[2 * n + k] as number, reached[n] as number), base, reached) };
    const one = (j: number) => {
      const place = places[j] as number;
      const there = moved(graph, sheet, input, place);
      return (x: number): number => {
        const value = there(x)[place];
        return typeof value === 'number' ? value : plain(figures[j] as Figure, value);
      };
    };
    const at5 = (n: number, k: number): number => told(at[5 * n + k] as number, reached[n] as number);
    return { input, ...excursions(samplesOf(input), at5, base, reached, one) };
  });
  const rows = together.parts.length;
  const [rise, fall] = combined(moves, together.parts, (r, j) => told(together.cells[rows * j + r] as number, j), base);
  return {
    figures,
    moves,
    low: base.map((b, j) => Math.max((figures[j] as Figure).bounds[0], less(b, fall[j] as number))),
    high: base.map((b, j) => Math.min((figures[j] as Figure).bounds[1], b + (rise[j] as number))),
  };
}

/** Falls from an unlimited value are counted in the reciprocal (`excursions.ts`). */
const less = (b: number, d: number): number => (b === Number.POSITIVE_INFINITY ? 1 / d : b - d);

/** A sheet with several inputs moved at once; those that the graph has no use for are passed over. */
export function withInputs(graph: Graph, sheet: Sheet, inputs: readonly Input[], values: readonly number[]): Sheet {
  const copy = sheet.slice();
  for (let i = 0; i < inputs.length; i++) {
    const { leaf, put } = inputs[i] as Input;
    const place = graph.place.get(leaf);
    if (place !== undefined) copy[place] = put(copy[place], values[i] as number);
  }
  graph.recompute(copy);
  return copy;
}

/** Sheets with one input moved, brought up to date as far as the node at `toward` needs it; each call writes over the last. */
export function moved(graph: Graph, sheet: Sheet, input: Input, toward?: number): (x: number) => Sheet {
  const place = graph.place.get(input.leaf) as number;
  const scratch = sheet.slice();
  return (x) => {
    scratch[place] = input.put(sheet[place], x);
    graph.follow(scratch, place, toward);
    return scratch;
  };
}
