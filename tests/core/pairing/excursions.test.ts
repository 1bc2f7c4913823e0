import { describe, expect, it } from 'vitest';
import { combined, type Excursions, ends, excursions, samplesOver } from '../../../core/pairing/excursions.ts';

type At = (x: number) => readonly number[];
const all = (row: readonly number[]): number[] => row.map((_, j) => j);

/** All figures over an interval, the samples and what is looked for between them by one function. */
function searched(at: At, least: number, middle: number, greatest: number, base: readonly number[]): Excursions {
  const xs = samplesOver(least, middle, greatest);
  const rows = xs.map((x) => (x === middle ? base : at(x)));
  return excursions(
    xs,
    (n, k) => rows[k]?.[n] as number,
    base,
    all(base),
    (j) => (x) => at(x)[j] as number,
  );
}

/** One figure over [-1, 1] about 0, and how often it was asked for. */
function over(f: (x: number) => number) {
  let asked = 0;
  const found = searched(
    (x) => {
      asked++;
      return [f(x)];
    },
    -1,
    0,
    1,
    [f(0)],
  );
  return { up: found.up[0] as number, down: found.down[0] as number, ends: [found.atLeast[0], found.atGreatest[0]], asked };
}

/** Four samples beside the middle, whose values are known. */
const SAMPLED = 4;
/** Two places to begin with, and one in each of eight golden-section steps. */
const LOOKED_FOR = 10;

describe('how far figures rise and fall while one input moves', () => {
  it('is told for each of them, with signs at the ends', () => {
    const at = (x: number) => [x, -2 * x, 5];
    expect(searched(at, -1, 0, 2, at(0))).toEqual({
      up: [2, 2, 0],
      down: [1, 4, 0],
      atLeast: [-1, 2, 0],
      atGreatest: [2, -4, 0],
    });
  });

  it('finds a peak on either side of the middle, between the samples', () => {
    // 1 - (x - 0.3)² is 0.91 in the middle and 0.96 at the sample 0.5; 1 - (x + 0.7)² is 0.51 and 0.96 at -0.5.
    const right = over((x) => 1 - (x - 0.3) ** 2);
    expect(right).toMatchObject({ down: expect.closeTo(1.6, 12), asked: SAMPLED + LOOKED_FOR });
    expect(Math.abs(right.up - 0.09)).toBeLessThan(2e-4);
    const left = over((x) => 1 - (x + 0.7) ** 2);
    expect(left).toMatchObject({ down: expect.closeTo(2.4, 12), asked: SAMPLED + LOOKED_FOR });
    expect(Math.abs(left.up - 0.49)).toBeLessThan(2e-4);
  });

  it('looks half-way to either end, and between its samples whatever their distance', () => {
    const asked: number[] = [];
    const f = (x: number): number => 1 - (x - 10.9) ** 2;
    const { up } = searched(
      (x) => {
        asked.push(x);
        return [f(x)];
      },
      7,
      10,
      14,
      [f(10)],
    );
    expect(asked.slice(0, SAMPLED)).toEqual([7, 8.5, 12, 14]);
    // Between 8.5 and 12, to the golden section's eighth step: 3.5 × 0.618⁹ = 0.046.
    expect(Math.abs((up[0] as number) - 0.81)).toBeLessThan(0.046 ** 2);
  });

  it('finds a trough likewise', () => {
    const { up, down, asked } = over((x) => (x - 0.3) ** 2);
    expect(up).toBeCloseTo(1.6, 12);
    expect(Math.abs(down - 0.09)).toBeLessThan(2e-4);
    expect(asked).toBe(SAMPLED + LOOKED_FOR);
  });

  it('finds a peak a little beside the middle, which itself is the best sample', () => {
    for (const at of [0.1, -0.1]) {
      const { up, asked } = over((x) => 1 - (x - at) ** 2);
      expect(Math.abs(up - 0.01)).toBeLessThan(2e-4);
      expect(asked).toBe(SAMPLED + LOOKED_FOR);
    }
  });

  it('does not look between the samples where an end is as good, or nothing falls off on both sides', () => {
    expect(over((x) => (x >= 0.4 ? 1 : 0))).toEqual({ up: 1, down: 0, ends: [0, 1], asked: SAMPLED });
    expect(over((x) => (x <= -0.4 ? 1 : 0))).toEqual({ up: 1, down: 0, ends: [1, 0], asked: SAMPLED });
    expect(over((x) => Math.min(x, 0))).toEqual({ up: 0, down: 1, ends: [-1, 0], asked: SAMPLED });
    expect(over((x) => Math.min(-x, 0))).toEqual({ up: 0, down: 1, ends: [0, -1], asked: SAMPLED });
  });

  it('is nothing where the figure is not known, there or here', () => {
    expect(over((x) => (x < 0 ? Number.NaN : x))).toEqual({ up: 1, down: 0, ends: [0, 1], asked: SAMPLED });
    expect(over((x) => (x === 0 ? Number.NaN : x))).toEqual({ up: 0, down: 0, ends: [0, 0], asked: SAMPLED });
  });

  it('is counted in the reciprocal from a value without limit', () => {
    expect(over((x) => (x === -1 ? 4 : Number.POSITIVE_INFINITY))).toEqual({ up: 0, down: 0.25, ends: [-0.25, 0], asked: SAMPLED });
  });

  it('is at the ends where the input moves each figure one way only', () => {
    const at = (x: number) => [x, -x, x * x, -x * x, 7];
    expect(ends((n, k) => at(k === 0 ? -1 : 2)[n] as number, at(0), all(at(0)))).toEqual({
      up: [2, 1, 4, 0, 0],
      down: [1, 2, 0, 4, 0],
      atLeast: [-1, 1, 1, -1, 0],
      atGreatest: [2, -2, 4, -4, 0],
    });
  });
});

const move = (atLeast: number, atGreatest: number): Excursions => ({
  up: [Math.max(0, atLeast, atGreatest)],
  down: [Math.max(0, -atLeast, -atGreatest)],
  atLeast: [atLeast],
  atGreatest: [atGreatest],
});

interface Row {
  parts: readonly number[];
  figures: readonly number[];
}
const asOne = (moves: readonly Excursions[], rows: readonly Row[], base: readonly number[]) =>
  combined(
    moves,
    rows.map(({ parts }) => parts),
    (row, j) => rows[row]?.figures[j] as number,
    base,
  );

describe('many inputs as one', () => {
  const moves = [move(-5, 3), move(-12, 4)];
  const withRow = (d: number, parts: number[], of = moves) => asOne(of, [{ parts, figures: [100 + d] }], [100]);

  it('rise and fall by the root of the squares', () => {
    expect(asOne(moves, [], [100])).toEqual([[5], [13]]);
    expect(asOne([move(-5, 3), move(-12, 4)], [{ parts: [1, 1], figures: [104] }], [100])).toEqual([[5], [13]]);
  });

  it('rise or fall as far as a row shows, where it is not what they do one by one', () => {
    expect(withRow(9, [1, 0.6])).toEqual([[9], [13]]);
    expect(withRow(-20, [-1, -0.6])).toEqual([[5], [20]]);
    expect(withRow(0.5, [1, 0.6], [move(-0.1, 0.1), move(-0.1, 0.1)])).toEqual([[0.5], [expect.closeTo(Math.SQRT2 / 10, 12)]]);
  });

  it('do not where the row is the sum of what each does alone, by its part and to its side', () => {
    // 3 + 4; 0.6·3 + 4; -5 - 12; -0.5·12 beside 3.
    expect(withRow(7, [1, 1])).toEqual([[5], [13]]);
    expect(withRow(-17, [-1, -1])).toEqual([[5], [13]]);
    const half = [move(-8, 1), move(-1, 6)];
    expect(asOne([{ ...(half[0] as Excursions), down: [2] }, half[1] as Excursions], [{ parts: [-0.5, 0], figures: [96] }], [100])).toEqual(
      [[expect.closeTo(Math.sqrt(37), 12)], [expect.closeTo(Math.sqrt(5), 12)]],
    );
  });

  it('are taken as a sum to a tenth of the row', () => {
    const small = (atGreatest: number) => [{ ...move(0, atGreatest), up: [2] }];
    expect(withRow(10, [1], small(9))).toEqual([[2], [0]]);
    expect(withRow(10, [1], small(11))).toEqual([[2], [0]]);
    expect(withRow(10, [1], small(8.995))).toEqual([[10], [0]]);
    expect(withRow(10, [1], small(11.005))).toEqual([[10], [0]]);
  });

  it('add nothing of an input that stays where it is, even one that would end without limit', () => {
    const unlimited: Excursions = { up: [0], down: [0], atLeast: [-1], atGreatest: [Number.POSITIVE_INFINITY] };
    expect(withRow(-4, [0, 1], [unlimited, { ...move(0, -4), down: [3] }])).toEqual([[0], [3]]);
  });
});
