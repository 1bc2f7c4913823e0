import { type Batch, batch } from '../batch.ts';
import type { Figure } from '../figure.ts';
import type { Graph } from '../graph.ts';
import { samplesOver } from './excursions.ts';
import type { Input } from './input.ts';
import { movedBy, movedTogether } from './together.ts';

/** The rows on which doubtful inputs are moved, one alone and all together, and where each figure stands on them. */
export interface MovedRows {
  /** Where each figure stands on a sheet. */
  readonly places: readonly number[];
  readonly batch: Batch;
  /** For each input where it is looked at alone; nothing where it reaches none of the figures. */
  readonly alone: readonly Alone[];
  /** The rows of inputs moved together: for each figure in turn its cell on each row. */
  readonly together: Together;
  /** What the leaf of the batch's k-th leaf cell is there, for inputs of this kind. */
  leafAt(inputs: readonly Input[], k: number, current: unknown): unknown;
}

export interface Alone {
  /** The figures that it can move. */
  readonly reached: readonly number[];
  /** For each of those in turn its cell at each sample. */
  readonly cells: readonly number[];
}

export interface Together {
  /** For each row by what part of its interval each input is moved. */
  readonly parts: readonly (readonly number[])[];
  readonly cells: readonly number[];
}

/** Where an input moved alone is looked at. */
export const samplesOf = ({ apart, least, value, greatest }: Input): readonly number[] =>
  apart === 'one way' ? [least, greatest] : samplesOver(least, value, greatest);

/** The k-th of them; never its value, where the sheet stands as it is. */
function sampleAt({ apart, least, value, greatest }: Input, k: number): number {
  if (apart === 'one way') return k === 0 ? least : greatest;
  return k === 0 ? least : k === 1 ? (least + value) / 2 : k === 3 ? (value + greatest) / 2 : greatest;
}

/** Who writes a leaf on a row: an input, at one of its samples or, where there is none, moved by a part of its interval. */
interface Writer {
  readonly input: number;
  readonly sample: number | undefined;
  readonly part: number;
}

/** What rows inputs ask for hangs on this much of them; inputs like those of another pairing share their rows. */
function kindOf(inputs: readonly Input[], graph: Graph): string {
  let kind = '';
  for (let i = 0; i < inputs.length; i++) {
    const { leaf, apart, least, value, greatest } = inputs[i] as Input;
    const way = (apart === undefined ? 0 : apart === 'one way' ? 1 : 2) + (least === value ? 3 : 0) + (greatest === value ? 6 : 0);
    kind += String.fromCharCode((graph.place.get(leaf) ?? -1) + 1, way);
  }
  return kind;
}

/** So many kinds are remembered for a list of figures; then the oldest makes room, so that what is held stays the same. */
const MOST_KINDS = 64;
const KNOWN = new WeakMap<readonly Figure[], { graph: Graph; kinds: Map<string, MovedRows> }>();

/** @param inputs those that have an interval */
export function movedRows(graph: Graph, figures: readonly Figure[], inputs: readonly Input[]): MovedRows {
  let known = KNOWN.get(figures);
  if (known?.graph !== graph) {
    known = { graph, kinds: new Map() };
    KNOWN.set(figures, known);
  }
  const kind = kindOf(inputs, graph);
  let rows = known.kinds.get(kind);
  if (!rows) {
    rows = newRows(graph, figures, inputs);
    const [oldest] = known.kinds.keys();
    if (oldest !== undefined && known.kinds.size >= MOST_KINDS) known.kinds.delete(oldest);
    known.kinds.set(kind, rows);
  }
  return rows;
}

function newRows(graph: Graph, figures: readonly Figure[], inputs: readonly Input[]): MovedRows {
  const places = figures.map((figure) => graph.place.get(figure) as number);
  const rows: { marks: Map<number, string>; writers: Map<number, Writer[]> }[] = [];
  const add = (writers: readonly Writer[]): number => {
    const marks = new Map<number, string>();
    const by = new Map<number, Writer[]>();
    for (const writer of writers) {
      const place = graph.place.get((inputs[writer.input] as Input).leaf);
      if (place === undefined) continue;
      const mark = writer.sample === undefined ? `${writer.input} by ${writer.part}` : `${writer.input} at ${writer.sample}`;
      marks.set(place, `${marks.get(place) ?? ''};${mark}`);
      by.set(place, [...(by.get(place) ?? []), writer]);
    }
    return rows.push({ marks, writers: by }) - 1;
  };
  const looks = inputs.map((input, i) => {
    const place = graph.place.get(input.leaf);
    const followers = new Set(place === undefined ? [] : graph.followers(place));
    const reached = places.flatMap((at, j) => (followers.has(at) ? [j] : []));
    const at =
      reached.length === 0 ? [] : samplesOf(input).map((x, sample) => (x === input.value ? -1 : add([{ input: i, sample, part: 0 }])));
    return { reached, at };
  });
  const along = inputs.flatMap((input, i) => (input.apart ? [] : [i]));
  const design = movedTogether(along.length);
  const designed = design.map((parts) => add(parts.map((part, n) => ({ input: along[n] as number, sample: undefined, part }))));
  const all = batch(
    graph,
    rows.map(({ marks }) => marks),
    places,
  );
  const written = all.leafCells.map(({ row, place }) => rows[row]?.writers.get(place) ?? []);
  return {
    places,
    batch: all,
    alone: looks.map(({ reached, at }) => ({
      reached,
      cells: reached.flatMap((j) => at.map((row) => all.cell(places[j] as number, row))),
    })),
    together: {
      parts: design.map((row) => partsOf(inputs, row)),
      cells: places.flatMap((place) => designed.map((row) => all.cell(place, row))),
    },
    leafAt(own, k, current) {
      let value = current;
      for (const { input, sample, part } of written[k] as readonly Writer[]) {
        const by = own[input] as Input;
        value = by.put(value, sample === undefined ? movedBy(by, part) : sampleAt(by, sample));
      }
      return value;
    },
  };
}

/** A row of a design as parts of the intervals of all inputs: those apart stay where they are. */
export function partsOf(inputs: readonly Pick<Input, 'apart'>[], row: readonly number[]): number[] {
  let next = 0;
  return inputs.map((input) => (input.apart ? 0 : (row[next++] as number)));
}
