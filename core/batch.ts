import { alike, type Call, called } from './call.ts';
import type { Graph, Sheet } from './graph.ts';

/**
 * Many sheets, its *rows*, that differ from one in a few leaves, worked out together. Where rows agree in all that a
 * node rests on, it is worked out once for them: each node has a cell for its value on the sheet that they all differ
 * from, and one for each value besides that it can take. What stands where is found once for rows of a kind.
 */
export interface Batch {
  /** The cell in which a wanted node's value on a row stands; `row` -1 is the sheet itself. */
  cell(place: number, row: number): number;
  /** The cells of leaves that are written, each with one of the rows on which the leaf at its place is the same. */
  readonly leafCells: readonly { readonly row: number; readonly place: number }[];
  /** All cells, worked out; `leafAt` is asked for what each of the `leafCells` is, in turn. */
  workOut(base: Sheet, leafAt: (k: number, place: number) => unknown): unknown[];
}

/** Rows by what a node is on them: 0 is the sheet that they differ from, and others by number. */
interface Grouping {
  readonly of: readonly number[];
  /** For each group but 0 its first row. */
  readonly first: readonly number[];
}

/**
 * @param rows for each row the places of the leaves that are written on it, each with a mark: on rows that bear the
 * same mark at a leaf it is the same
 * @param wanted the places to be read; no more is worked out than they need
 */
export function batch(
  { calls, needs }: Pick<Graph, 'calls' | 'needs'>,
  rows: readonly ReadonlyMap<number, string>[],
  wanted: Iterable<number>,
): Batch {
  const needed = new Set(wanted);
  for (let i = needs.length - 1; i >= 0; i--) if (needed.has(i)) for (const n of needs[i] as readonly number[]) needed.add(n);
  const places = [...needed].sort((a, b) => a - b);

  const { grouped, together } = groupings(rows.length);
  const groups = new Map<number, Grouping>();
  const start = new Map<number, number>();
  let cells = 0;
  for (const i of places) {
    const group = calls[i]
      ? together((needs[i] as readonly number[]).map((n) => groups.get(n) as Grouping))
      : grouped(rows.map((row) => row.get(i)));
    groups.set(i, group);
    start.set(i, cells);
    cells += 1 + group.first.length;
  }
  const cell = (place: number, row: number): number =>
    (start.get(place) as number) + (row < 0 ? 0 : ((groups.get(place) as Grouping).of[row] as number));

  const starts = places.map((i) => start.get(i) as number);
  const moved = places.filter((i) => (groups.get(i) as Grouping).first.length > 0);
  const leafCells = moved
    .filter((i) => !calls[i])
    .flatMap((place) => (groups.get(place) as Grouping).first.map((row, g) => ({ row, place, at: (start.get(place) as number) + 1 + g })));
  const steps = moved
    .filter((i) => calls[i])
    .map((i) => ({
      call: calls[i] as Call,
      at: start.get(i) as number,
      rows: (groups.get(i) as Grouping).first,
      own: needs[i] as number[],
    }));
  const from = Int32Array.from(steps.flatMap(({ rows, own }) => rows.flatMap((row) => own.map((n) => cell(n, row)))));
  const blank: unknown[] = new Array(cells).fill(undefined);
  // Whether a cell's value is another than that on the sheet; of the sheet's own it never is.
  const other = new Uint8Array(cells);

  return {
    cell,
    leafCells,
    workOut(base, leafAt) {
      const values = blank.slice();
      for (let k = 0; k < places.length; k++) values[starts[k] as number] = base[places[k] as number];
      for (let k = 0; k < leafCells.length; k++) {
        const { at, place } = leafCells[k] as (typeof leafCells)[number];
        values[at] = leafAt(k, place);
        other[at] = 1;
      }
      for (let k = 0, pos = 0; k < steps.length; k++) {
        const { call, at, rows } = steps[k] as (typeof steps)[number];
        const { of, count, open } = call;
        const here = values[at];
        for (let to = at + 1; to <= at + rows.length; to++, pos += count) {
          let touched = other[from[pos] as number] as number;
          for (let n = 1; n < count; n++) touched |= other[from[pos + n] as number] as number;
          const value = touched === 1 ? called(of, count, open, from, pos, values) : here;
          const same = touched === 0 || alike(call, value, here);
          values[to] = same ? here : value;
          other[to] = same ? 0 : 1;
        }
      }
      return values;
    },
  };
}

/** Groupings of so many rows; those that part the rows alike are one and the same. */
function groupings(count: number) {
  const known = new Map<string, Grouping>();
  const kept = (of: number[], first: number[]): Grouping => {
    const key = of.join();
    const found = known.get(key) ?? { of, first };
    known.set(key, found);
    return found;
  };
  /** Rows with equal marks together, those without one in group 0. */
  const grouped = (marks: readonly (string | number | undefined)[]): Grouping => {
    const numbers = new Map<string | number, number>();
    const first: number[] = [];
    const of = marks.map((mark, row) => {
      if (mark === undefined) return 0;
      const number = numbers.get(mark) ?? first.push(row);
      numbers.set(mark, number);
      return number;
    });
    return kept(of, first);
  };
  const none = kept(new Array(count).fill(0), []);
  /** Rows together that are so in each of some groupings. */
  const together = (all: readonly Grouping[]): Grouping =>
    [...new Set(all)].reduce(
      (a, b) =>
        a === none
          ? b
          : b === none
            ? a
            : grouped(a.of.map((g, row) => (g === 0 && b.of[row] === 0 ? undefined : g * (b.first.length + 1) + (b.of[row] as number)))),
      none,
    );
  return { grouped, together };
}
