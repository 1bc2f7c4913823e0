import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Figure, figure, type Leaf, leaf } from '../../../core/figure.ts';
import { graph } from '../../../core/graph.ts';
import { LeafValues } from '../../../core/leaf-values.ts';
import type { Input } from '../../../core/pairing/input.ts';
import { movedRows } from '../../../core/pairing/moved-rows.ts';
import { spreadOf } from '../../../core/pairing/spread.ts';
import { input } from './small.ts';

/** A small world: two figures of three leaves, and a leaf that belongs to no figure. */
const [a, b, c, elsewhere] = ['a', 'b', 'c', 'elsewhere'].map((id) => leaf(id, id, 'mm', id)) as [
  Leaf<number>,
  Leaf<number>,
  Leaf<number>,
  Leaf<number>,
];
const told = (id: string, needs: readonly Leaf<number>[], of: (...x: number[]) => number): Figure =>
  figure({ id, unit: 'mm', symbol: id, words: id, source: '', needs, of, as: () => '', bounds: [-1e9, 1e9] }) as unknown as Figure;
const itself = told('itself', [a], (x) => x);
const both = told('both', [a, b, c], (x, y, z) => x + 10 * y + 100 * z + x * y);
const FIGURES = [itself, both];
const GRAPH = graph(FIGURES);
const VALUES = new Map<Leaf<number>, number>([
  [a, 3],
  [b, 5],
  [c, 7],
  [elsewhere, 11],
]);
const SHEET = GRAPH.fill([a, b, c].reduce((values, one) => values.set(one, VALUES.get(one)), new LeafValues()));

const doubtful = (of: Leaf<number>, down: number, up: number, apart?: Input['apart']): Input => {
  const value = VALUES.get(of) as number;
  return input(of, value, [value - down, value + up], { apart });
};
/** What each figure is at each sample of one input. */
function looked(one: Input) {
  const { alone, batch, leafAt } = movedRows(GRAPH, [...FIGURES], [one]);
  const cells = batch.workOut(SHEET, (k, place) => leafAt([one], k, SHEET[place]));
  const { reached, cells: at } = alone[0] as (typeof alone)[number];
  const each = reached.length === 0 ? 0 : at.length / reached.length;
  return { reached, values: reached.map((_, n) => at.slice(each * n, each * (n + 1)).map((cell) => cells[cell])) };
}

describe('an input moved alone', () => {
  it('is looked at in its ends, its value and half-way to each', () => {
    expect(looked(doubtful(a, 2, 1))).toEqual({
      reached: [0, 1],
      values: [[1, 2, 3, 3.5, 4], [1, 2, 3, 3.5, 4].map((x) => x + 50 + 700 + 5 * x)],
    });
    expect(looked(doubtful(a, 2, 1, 'both ways')).values[0]).toEqual([1, 2, 3, 3.5, 4]);
  });
  it('is looked at in its ends alone where it moves each figure one way', () => {
    expect(looked(doubtful(a, 2, 1, 'one way')).values[0]).toEqual([1, 4]);
  });
  it('keeps to figures that it reaches, and is let be where it reaches none', () => {
    expect(looked(doubtful(b, 1, 1)).reached).toEqual([1]);
    expect(looked(doubtful(elsewhere, 1, 1))).toEqual({ reached: [], values: [] });
  });
  it('may end at its value', () => {
    expect(looked(doubtful(a, 0, 1)).values[0]).toEqual([3, 3, 3, 3.5, 4]);
    expect(looked(doubtful(a, 2, 0, 'one way')).values[0]).toEqual([1, 3]);
  });
});

describe('inputs moved together', () => {
  it('are each moved by their part, several on one leaf one after the other, those apart and those elsewhere not at all', () => {
    const more: Input = {
      ...doubtful(a, 1, 1),
      path: '/more',
      value: 0,
      least: -0.5,
      greatest: 0.25,
      put: (now, x) => (now as number) + x,
    };
    const inputs = [doubtful(a, 2, 1), doubtful(c, 1, 1, 'one way'), doubtful(elsewhere, 1, 1), more, doubtful(b, 1, 3)];
    const { together, batch, leafAt } = movedRows(GRAPH, [...FIGURES], inputs);
    const cells = batch.workOut(SHEET, (k, place) => leafAt(inputs, k, SHEET[place]));
    expect(together.parts.length).toBeGreaterThanOrEqual(4);
    together.parts.forEach(([ofA, ofC, , ofMore, ofB], row) => {
      expect(ofC).toBe(0);
      const to = (part: number | undefined, down: number, up: number): number => ((part as number) > 0 ? up : down) * (part as number);
      const x = 3 + to(ofA, 2, 1) + to(ofMore, 0.5, 0.25);
      const y = 5 + to(ofB, 1, 3);
      expect(cells[together.cells[row] as number]).toBeCloseTo(x, 12);
      expect(cells[together.cells[together.parts.length + row] as number]).toBeCloseTo(x + 10 * y + 700 + x * y, 10);
    });
  });
});

describe('rows that are kept', () => {
  const drawn = fc.record({
    of: fc.constantFrom(a, b, c, elsewhere),
    down: fc.constantFrom(0, 0.5, 2),
    up: fc.constantFrom(0, 0.25, 1),
    apart: fc.constantFrom(undefined, 'one way' as const, 'both ways' as const),
  });
  const inputs = fc
    .array(drawn, { maxLength: 4 })
    .map((all) => all.filter(({ down, up }) => down + up > 0).map((i) => doubtful(i.of, i.down, i.up, i.apart)));

  it('serve only inputs for which they would be made alike', () => {
    fc.assert(
      fc.property(fc.array(inputs, { minLength: 2, maxLength: 40 }), (lists) => {
        const figures = [...FIGURES];
        for (const asked of lists) {
          const { low, high, moves } = spreadOf(GRAPH, SHEET, asked, figures);
          const anew = spreadOf(GRAPH, SHEET, asked, [...FIGURES]);
          expect({ low, high, moves }).toEqual({ low: anew.low, high: anew.high, moves: anew.moves });
        }
      }),
      { numRuns: 15 },
    );
  });

  it.each([undefined, 'one way', 'both ways'] as const)(
    'tell an input that ends at its value from one that goes on beyond it (%s)',
    (apart) => {
      for (const [ending, going] of [
        [
          [0, 1],
          [2, 1],
        ],
        [
          [2, 0],
          [2, 1],
        ],
      ] as const) {
        const figures = [...FIGURES];
        spreadOf(GRAPH, SHEET, [doubtful(a, ending[0], ending[1], apart)], figures);
        const { low, high } = spreadOf(GRAPH, SHEET, [doubtful(a, going[0], going[1], apart)], figures);
        // The first figure is the leaf itself, 3 mm.
        expect([low[0], high[0]]).toEqual([1, 4]);
      }
    },
  );

  it('serve inputs of their kind, as many kinds as fit; then the oldest makes room', () => {
    const figures = [...FIGURES];
    // A kind for each number written with four figures of three: 81 of them.
    const kinds = Array.from({ length: 66 }, (_, n) =>
      [0, 1, 2, 3].map((digit) => doubtful(a, 1, 1, ([undefined, 'one way', 'both ways'] as const)[Math.floor(n / 3 ** digit) % 3])),
    );
    const rows = kinds.slice(0, 64).map((kind) => movedRows(GRAPH, figures, kind));
    expect(new Set(rows).size).toBe(64);
    // Other numbers of the same kind, and all kinds so far, are at hand.
    expect(
      movedRows(
        GRAPH,
        figures,
        [0, 1, 2, 3].map(() => doubtful(a, 0.5, 2)),
      ),
    ).toBe(rows[0]);
    for (const [i, kind] of kinds.slice(0, 64).entries()) expect(movedRows(GRAPH, figures, kind)).toBe(rows[i]);
    const next = movedRows(GRAPH, figures, kinds[64] as Input[]);
    expect(rows).not.toContain(next);
    expect(movedRows(GRAPH, figures, kinds[1] as Input[])).toBe(rows[1]);
    expect(movedRows(GRAPH, figures, kinds[64] as Input[])).toBe(next);
    expect(movedRows(GRAPH, figures, kinds[0] as Input[])).not.toBe(rows[0]);
    // The same list of figures in another graph is another matter.
    expect(movedRows(graph(FIGURES), figures, kinds[5] as Input[])).not.toBe(rows[5]);
  });
});
