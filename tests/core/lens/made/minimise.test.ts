import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Interval, least } from '../../../../core/lens/made/minimise.ts';
import { between, seeded } from '../../support/arbitrary-train.ts';

type Place = readonly number[];

/** What `least` makes of a function, and every place that it asked for, in order. */
function watched(of: (at: Place, turn: number) => number, box: readonly Interval[], looks: number) {
  const places: Place[] = [];
  const found = least(
    (at) => {
      places.push(at);
      return of(at, places.length - 1);
    },
    box,
    looks,
  );
  return { found, places };
}

const HIGH = 99;
/** A function that is told place by place, and high everywhere else. */
const told = (values: readonly (readonly [at: Place, value: number])[]) => {
  const map = new Map(values.map(([at, value]) => [at.join(), value]));
  return (at: Place): number => map.get(at.join()) ?? HIGH;
};

describe('the grid of a search', () => {
  it('reaches from side to side, the first dimension fastest', () => {
    const { places } = watched(
      () => 1,
      [
        [0, 4],
        [-1, 8],
      ],
      3,
    );
    expect(places.slice(0, 9)).toEqual([0, 2, 4].flatMap((_, j) => [0, 2, 4].map((x) => [x, -1 + 4.5 * j])));
  });

  it('sends a simplex from each place that has no lower one beside it along a line, half a step wide', () => {
    // 1 and 5 end rows, 2 and 4 begin the next ones: in a row with each other by number, not beside each other.
    const rows = [
      [3, 9, 9, 1],
      [2, 9, 9.5, 9],
      [6, 9, 9, 5],
      [4, 8, 9, 9],
    ];
    const grid = rows.flatMap((row, j) => row.map((value, i) => [[i, j], value] as const));
    const { found, places } = watched(
      told(grid),
      [
        [0, 3],
        [0, 3],
      ],
      4,
    );
    const onGrid = new Set(grid.map(([at]) => at.join()));
    const later = places.slice(16);
    // A simplex never asks for its best corner again, and half steps are beside the grid.
    expect(later.filter((at) => onGrid.has(at.join()))).toEqual([
      [3, 0],
      [0, 1],
      [3, 2],
      [0, 3],
      [3, 0],
    ]);
    expect(later.slice(0, 3)).toEqual([
      [3, 0],
      [3.5, 0],
      [3, 0.5],
    ]);
    expect(found).toEqual({ at: [3, 0], value: 1 });
  });

  it('sends none from a place where the function cannot be had', () => {
    const { found, places } = watched(([x = 0]) => (x > 0.4 && x < 0.6 ? 1 : Number.POSITIVE_INFINITY), [[0, 3]], 4);
    expect(found).toBeUndefined();
    expect(places).toHaveLength(4);
  });

  it('looks at places that are as low as their neighbours, and keeps the first of equals', () => {
    const { found, places } = watched(told([[[1], 5]]), [[0, 3]], 4);
    expect(places.filter(([x]) => x === 3)).toHaveLength(2);
    expect(found?.at).toEqual([1]);
    expect(least(told([0, 1, 2, 3, 4].map((x) => [[x], x % 2])), [[0, 4]], 5)?.at).toEqual([0]);
  });

  it('asks at a tenth of a step to either side whether the function ends there', () => {
    const { places } = watched(
      ([x = 0, y = 0]) => (x === 4 && y === 40 ? 5 : HIGH + Math.abs(x - 4) + Math.abs(y - 40)),
      [
        [0, 8],
        [0, 80],
      ],
      3,
    );
    const again = places.findLastIndex((at) => at.join() === '4,40');
    expect(places.slice(again - 4, again)).toEqual([
      [4 - 0.4, 40],
      [4 + 0.4, 40],
      [4, 40 - 4],
      [4, 40 + 4],
    ]);
  });

  it('takes no place beside which it ends, but one that is a little farther from there', () => {
    const ending =
      (ends: (x: number) => boolean) =>
      ([x = 0]: Place): number =>
        ends(x) ? Number.POSITIVE_INFINITY : x === 2 ? 5 : HIGH;
    const found = (ends: (x: number) => boolean) => least(ending(ends), [[0, 4]], 5)?.value;
    expect(found((x) => x >= 2.1)).toBeGreaterThan(5);
    expect(found((x) => x >= 2.1004)).toBe(5);
    expect(found((x) => x <= 1.9)).toBeGreaterThan(5);
    expect(found((x) => x <= 1.8996)).toBe(5);
  });

  it('is left for a shallower minimum where the deeper one only ends', () => {
    const walled =
      (at: number) =>
      ([x = 0]: Place) =>
        x > at + 0.05 ? Number.POSITIVE_INFINITY : x === 1 ? 7 : x === at ? 3 : HIGH;
    expect(least(walled(3), [[0, 4]], 5)).toEqual({ at: [1], value: 7 });
  });
});

describe('a simplex', () => {
  it('goes where its paper sends it, worked by hand', () => {
    // From (2, 2), a step being 2: what is asked for, and what is answered.
    const worked: readonly (readonly [x: number, y: number, value: number])[] = [
      [2, 2, 5],
      [3, 2, 4],
      [2, 3, 7],
      // (2, 3) through the middle of the others, (2.5, 2): better than the second worst, taken.
      [3, 1, 4.5],
      // (2, 2) through (3, 1.5): the best, so farther; that is worse again.
      [4, 1, 3],
      [5, 0.5, 3.5],
      // (3, 1) through (3.5, 1.5): the best, and farther better yet.
      [4, 2, 2],
      [4.5, 2.5, 1],
      // (3, 2) through (4.25, 1.75): as bad as the second worst, so half as far; taken.
      [5.5, 1.5, 3],
      [4.875, 1.625, 2.5],
      // (4, 1) through (4.6875, 2.0625): as bad as itself, so half-way this side of the middle; as bad: all move to the best.
      [5.375, 3.125, 3],
      [4.34375, 1.53125, 3],
      [4.6875, 2.0625, 2],
      [4.25, 1.75, 0.5],
      // (4.6875, 2.0625) through (4.375, 2.125): half as far is no better than it, so all move again.
      [4.0625, 2.1875, 1],
      [4.21875, 2.15625, 1],
      [4.375, 2.125, 1],
      [4.46875, 1.90625, 3],
      // Through (4.3125, 1.9375): as good as the best, taken, no farther.
      [4.15625, 1.96875, 0.5],
      // (4.375, 2.125) through (4.203125, 1.859375): farther is no better, so this.
      [4.03125, 1.59375, 0.4],
      [3.859375, 1.328125, 0.4],
      // (4.15625, 1.96875) through (4.140625, 1.671875), and nothing better from here on.
      [4.125, 1.375, HIGH],
    ];
    const { found, places } = watched(
      (_, turn) => [8, 7, 8, 7, 5, 7, 8, 7, 8][turn] ?? worked[turn - 9]?.[2] ?? HIGH,
      [
        [0, 4],
        [0, 4],
      ],
      3,
    );
    expect(places.slice(9, 9 + worked.length)).toEqual(worked.map(([x, y]) => [x, y]));
    expect(found?.at).toEqual([4.03125, 1.59375]);
    // Other corners are 0.375 off at most: halved three times that is below 3 % of a step, each turn asking four times.
    const rough = 9 + worked.length - 1 + 3 * 4;
    // After four looks beside it a simplex of 3 % of a step, halved nine times to a ten-thousandth.
    expect(places.slice(rough + 4, rough + 7)).toEqual([
      [4.03125, 1.59375],
      [4.03125 + 0.06, 1.59375],
      [4.03125, 1.59375 + 0.06],
    ]);
    expect(places).toHaveLength(rough + 4 + 3 + 9 * 4);
  });

  it('in one dimension, too', () => {
    // (x - 3.1)² from 4: 5 is worse, 3 better, 2 not; then halves of what is left.
    const { places, found } = watched(([x = 0]) => (x - 3.1) ** 2, [[0, 8]], 5);
    expect(places.slice(5, 17).map(([x]) => x)).toEqual([4, 5, 3, 2, 2, 3.5, 2.5, 3.25, 2.75, 3.125, 3.25, 3.0625]);
    expect(found?.at[0]).toBeCloseTo(3.1, 3);
  });

  it('gives up after 160 turns where the function falls for ever', () => {
    // Two corners, then two looks a turn; two beside it; and a finer simplex has no room between numbers so large.
    const { places, found } = watched(([x = 0]) => -x, [[0, 2]], 3);
    expect(places).toHaveLength(3 + (2 + 160 * 2) + 2 + 2);
    expect(found?.value).toBeLessThan(-1e40);
  });

  it('finds the bottom of any bowl to a thousandth of a step', () => {
    fc.assert(
      fc.property(between(-2, 2), between(-2, 2), between(0.1, 3), between(-0.9, 0.9), (a, b, wide, skew) => {
        const found = least(
          ([x = 0, y = 0]) => (x - a) ** 2 + wide * (y - b) ** 2 + skew * Math.sqrt(wide) * (x - a) * (y - b) + 7,
          [
            [-3, 3],
            [-3, 3],
          ],
          7,
        );
        expect(found?.at[0]).toBeCloseTo(a, 3);
        expect(found?.at[1]).toBeCloseTo(b, 3);
        expect(found?.value).toBeCloseTo(7, 6);
      }),
      seeded(191, 30),
    );
  });
});
