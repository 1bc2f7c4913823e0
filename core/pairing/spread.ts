import type { Figure, Gap } from '../figure.ts';
import type { Graph, Sheet } from '../graph.ts';
import { combined, type Excursions, ends, excursions, type Row } from './excursions.ts';
import type { Input } from './input.ts';
import { movedBy, movedTogether } from './together.ts';

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
  const places = figures.map((f) => graph.place.get(f) as number);
  const read = (s: Sheet): number[] => {
    const row = new Array<number>(places.length);
    for (let j = 0; j < row.length; j++) row[j] = plain(figures[j] as Figure, s[places[j] as number]);
    return row;
  };
  const base = read(sheet);
  const doubtful = inputs.filter((input) => input.greatest > input.least);
  const moves = doubtful.map((input) => {
    const at = graph.place.has(input.leaf) ? moved(graph, sheet, input) : () => sheet;
    const figures = (x: number): number[] => read(at(x));
    return {
      input,
      ...(input.apart === 'one way'
        ? ends(figures, input.least, input.greatest, base)
        : excursions(figures, input.least, input.value, input.greatest, base)),
    };
  });
  const [rise, fall] = combined(moves, together(graph, sheet, doubtful, read), base);
  return {
    figures,
    moves,
    low: base.map((b, j) => Math.max((figures[j] as Figure).bounds[0], less(b, fall[j] as number))),
    high: base.map((b, j) => Math.min((figures[j] as Figure).bounds[1], b + (rise[j] as number))),
  };
}

/** Falls from an unlimited value are counted in the reciprocal (`excursions.ts`). */
const less = (b: number, d: number): number => (b === Number.POSITIVE_INFINITY ? 1 / d : b - d);

/**
 * Rows of figures with all inputs moved together. Which figures are asked for does not change the rows, so
 * a figure's ± is the same alone and in a report.
 */
function together(graph: Graph, sheet: Sheet, inputs: readonly Input[], read: (s: Sheet) => number[]): Row[] {
  const along = inputs.filter((input) => !input.apart);
  return movedTogether(along.length).map((row) => ({
    parts: partsOf(inputs, row),
    figures: read(
      withInputs(
        graph,
        sheet,
        along,
        along.map((input, i) => movedBy(input, row[i] as number)),
      ),
    ),
  }));
}

/** A row of a design as parts of the intervals of all inputs: those apart stay where they are. */
export function partsOf(inputs: readonly Pick<Input, 'apart'>[], row: readonly number[]): number[] {
  let next = 0;
  return inputs.map((input) => (input.apart ? 0 : (row[next++] as number)));
}

/** A sheet with several inputs moved at once; those that the graph has no use for are passed over. */
export function withInputs(graph: Graph, sheet: Sheet, inputs: readonly Input[], values: readonly number[]): Sheet {
  const scratch = sheet.slice();
  inputs.forEach((input, i) => {
    const place = graph.place.get(input.leaf);
    if (place !== undefined) scratch[place] = input.put(scratch[place], values[i] as number);
  });
  graph.recompute(scratch);
  return scratch;
}

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
