import type { Figure, Gap, Node } from '../figure.ts';
import type { Graph, Sheet } from '../graph.ts';
import { combined, type Excursions, ends, excursions, type Row, samplesOver, unmoved } from './excursions.ts';
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
  const read = readerOf(graph, figures);
  const base = read.all(sheet);
  const doubtful = inputs.filter((input) => input.greatest > input.least);
  const copies = copiesOf(graph, sheet);
  const alone = doubtful.map((input) => movedAlone(graph, sheet, input, read, copies));
  const designed = movedAtOnce(doubtful, copies);
  copies.workOut();
  const moves = doubtful.map((input, i) => ({ input, ...(alone[i]?.(base) ?? unmoved(base.length)) }));
  const rows = designed.map(({ parts, at }): Row => ({ parts, figures: read.all(at) }));
  const [rise, fall] = combined(moves, rows, base);
  return {
    figures,
    moves,
    low: base.map((b, j) => Math.max((figures[j] as Figure).bounds[0], less(b, fall[j] as number))),
    high: base.map((b, j) => Math.min((figures[j] as Figure).bounds[1], b + (rise[j] as number))),
  };
}

/** Falls from an unlimited value are counted in the reciprocal (`excursions.ts`). */
const less = (b: number, d: number): number => (b === Number.POSITIVE_INFINITY ? 1 / d : b - d);

/** Figures as numbers, read off sheets. */
interface Reader {
  all(sheet: Sheet): number[];
  one(sheet: Sheet, j: number): number;
  /** Where each figure stands. */
  readonly places: readonly number[];
  /** Those that follow from a leaf, by their number. */
  reachedFrom(leaf: Node): readonly number[];
}

/** Readers are asked for again and again with the same plan. */
const READERS = new WeakMap<readonly Figure[], { graph: Graph; reader: Reader }>();

function readerOf(graph: Graph, figures: readonly Figure[]): Reader {
  const known = READERS.get(figures);
  if (known?.graph === graph) return known.reader;
  const reader = newReader(graph, figures);
  READERS.set(figures, { graph, reader });
  return reader;
}

function newReader(graph: Graph, figures: readonly Figure[]): Reader {
  const places = figures.map((f) => graph.place.get(f) as number);
  const one = (sheet: Sheet, j: number): number => {
    const value = sheet[places[j] as number];
    return typeof value === 'number' ? value : plain(figures[j] as Figure, value);
  };
  const all = (sheet: Sheet): number[] => {
    const row = new Array<number>(places.length);
    for (let j = 0; j < row.length; j++) row[j] = one(sheet, j);
    return row;
  };
  const reached = new Map<Node, readonly number[]>();
  return {
    all,
    one,
    places,
    reachedFrom(leaf) {
      let found = reached.get(leaf);
      if (!found) {
        const place = graph.place.get(leaf);
        const followers = new Set(place === undefined ? [] : graph.followers(place));
        found = places.flatMap((at, j) => (followers.has(at) ? [j] : []));
        reached.set(leaf, found);
      }
      return found;
    },
  };
}

/** Copies of a sheet with inputs moved, which are worked out all together. */
interface Copies {
  /** A copy more, with these inputs at these values; it stands when all are worked out. */
  with(inputs: readonly Input[], values: readonly number[]): Sheet;
  workOut(): void;
}

function copiesOf(graph: Graph, sheet: Sheet): Copies {
  const copies: Sheet[] = [];
  const written: number[][] = [];
  return {
    with(inputs, values) {
      const copy = sheet.slice();
      written.push(write(graph, copy, inputs, values));
      copies.push(copy);
      return copy;
    },
    workOut: () => graph.followAll(sheet, copies, written),
  };
}

/** Puts several inputs at once; those that the graph has no use for are passed over. The places that were written. */
function write(graph: Graph, sheet: Sheet, inputs: readonly Input[], values: readonly number[]): number[] {
  const places: number[] = [];
  for (let i = 0; i < inputs.length; i++) {
    const { leaf, put } = inputs[i] as Input;
    const place = graph.place.get(leaf);
    if (place === undefined) continue;
    sheet[place] = put(sheet[place], values[i] as number);
    places.push(place);
  }
  return places;
}

/** What one input alone does, once the copies stand; undefined where it reaches none of the figures. */
function movedAlone(
  graph: Graph,
  sheet: Sheet,
  input: Input,
  read: Reader,
  copies: Copies,
): ((base: readonly number[]) => Excursions) | undefined {
  const reached = read.reachedFrom(input.leaf);
  if (reached.length === 0) return undefined;
  const xs = input.apart === 'one way' ? [input.least, input.greatest] : samplesOver(input.least, input.value, input.greatest);
  const at = xs.map((x) => (x === input.value ? sheet : copies.with([input], [x])));
  const alone = (j: number) => {
    const there = moved(graph, sheet, input, read.places[j]);
    return (x: number): number => read.one(there(x), j);
  };
  return (base) => {
    const rows = at.map((copy) => (copy === sheet ? base : read.all(copy)));
    return input.apart === 'one way' ? ends(rows, base, reached) : excursions(xs, rows, base, reached, alone);
  };
}

/**
 * Copies with all inputs moved together. Which figures are asked for does not change them, so
 * a figure's ± is the same alone and in a report.
 */
function movedAtOnce(inputs: readonly Input[], copies: Copies): { parts: readonly number[]; at: Sheet }[] {
  const along = inputs.filter((input) => !input.apart);
  return movedTogether(along.length).map((row) => ({
    parts: partsOf(inputs, row),
    at: copies.with(
      along,
      along.map((input, i) => movedBy(input, row[i] as number)),
    ),
  }));
}

/** A row of a design as parts of the intervals of all inputs: those apart stay where they are. */
export function partsOf(inputs: readonly Pick<Input, 'apart'>[], row: readonly number[]): number[] {
  let next = 0;
  return inputs.map((input) => (input.apart ? 0 : (row[next++] as number)));
}

/** A sheet with several inputs moved at once. */
export function withInputs(graph: Graph, sheet: Sheet, inputs: readonly Input[], values: readonly number[]): Sheet {
  const copy = sheet.slice();
  write(graph, copy, inputs, values);
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
