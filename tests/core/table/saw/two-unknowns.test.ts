import { describe, expect, test } from 'vitest';
import type { Found, Solved } from '../../../../core/table/saw/found.ts';
import { solveTwo } from '../../../../core/table/saw/two.ts';
import { NINETY_FIVE_OF_EVEN } from './bare.ts';
import { type Made, madeBench, ROOT_3 } from './made-bench.ts';

/** The net has its places at the whole numbers of these. */
const RANGES = [
  [-9, 9],
  [0, 10],
] as const;
const solve = (made: readonly Made[], shared: string[] = []) => solveTwo(madeBench(made, 2, { shared }), RANGES);
const solved = (made: readonly Made[], shared: string[] = []): Solved => {
  const outcome = solve(made, shared);
  if (!outcome.solved) throw new Error('nothing was met');
  return outcome.solved;
};
const X = (value: number, plusMinus: number, more: Partial<Made> = {}): Made => ({ value, plusMinus, of: (x) => x as number, ...more });
const Y = (value: number, plusMinus: number, more: Partial<Made> = {}): Made => ({ value, plusMinus, of: (_, y) => y as number, ...more });
const halves = ({ value, low, high }: Found): number[] => [value - low, high - value];

describe('readings that agree', () => {
  test('two give two, each with its own ±', () => {
    const { ways, freedom, birge } = solved([X(2.3, 0.3), Y(4.4, 0.5)]);
    expect([freedom, birge, ways.length]).toEqual([0, 1, 1]);
    const [x, y] = ways[0] as [Found, Found];
    expect([x.value, y.value]).toEqual([expect.closeTo(2.3, 6), expect.closeTo(4.4, 6)]);
    for (const half of halves(x)) expect(half).toBeCloseTo(NINETY_FIVE_OF_EVEN * 0.3, 6);
    for (const half of halves(y)) expect(half).toBeCloseTo(NINETY_FIVE_OF_EVEN * 0.5, 6);
    expect([x.open, y.open]).toEqual([
      [false, false],
      [false, false],
    ]);
  });

  test('what each reading has of its own adds by squares, what they share moves both at once', () => {
    // x is the first, y the first less the second: what is shared by both alike leaves y.
    const difference: Made = {
      value: 1,
      plusMinus: 0.1,
      of: (x, y) => (x as number) - (y as number),
      doubts: () => ({ own: [0.2, 0.2], shared: [0.4] }),
    };
    const { ways } = solved([X(4, 0.3, { doubts: () => ({ shared: [0.4] }) }), difference], ['/sensor/widthMm']);
    const [x, y] = ways[0] as [Found, Found];
    for (const half of halves(x)) expect(half).toBeCloseTo(NINETY_FIVE_OF_EVEN * 0.5, 5);
    for (const half of halves(y)) expect(half).toBeCloseTo(NINETY_FIVE_OF_EVEN * Math.hypot(0.3, 0.1, 0.2, 0.2), 5);
  });

  test.each([1, -1])('the interval is as uneven as the reading: x² with sign %d', (sign) => {
    for (const scale of [0.001, 1, 1000]) {
      const made: Made = { value: sign * 4 * scale, plusMinus: 2 * scale, of: (x) => sign * scale * Math.max(0, x as number) ** 2 };
      const [x, y] = solved([made, Y(5, 0.01)]).ways[0] as [Found, Found];
      const [below, above] = halves(x);
      expect(below).toBeCloseTo(NINETY_FIVE_OF_EVEN * (2 - Math.SQRT2), 4);
      expect(above).toBeCloseTo(NINETY_FIVE_OF_EVEN * (Math.sqrt(6) - 2), 4);
      for (const half of halves(y)) expect(half).toBeCloseTo(NINETY_FIVE_OF_EVEN * 0.01, 6);
    }
  });

  test('a large unknown has an uneven interval as well', () => {
    const made: Made = { value: 16, plusMinus: 12, of: (x) => (x as number) ** 2 };
    const bench = madeBench(
      [made, { value: 500, plusMinus: 0.1, of: (_: number, y: number) => y }].map(
        (one) => ({ ...one, of: (x: number, y: number) => one.of(x / 100, y) }) as Made,
      ),
      2,
    );
    const { ways } = solveTwo(bench, [
      [0, 1800],
      [0, 1000],
    ]).solved as Solved;
    const [below, above] = halves((ways[0] as Found[])[0] as Found);
    expect((below as number) / (NINETY_FIVE_OF_EVEN * 200)).toBeCloseTo(1, 4);
    expect((above as number) / (NINETY_FIVE_OF_EVEN * 100 * (Math.sqrt(28) - 4))).toBeCloseTo(1, 4);
  });

  test('an interval ends with the range, and is open there', () => {
    const [x, y] = solved([X(-8.9, 0.5), Y(9.9, 0.5)]).ways[0] as [Found, Found];
    expect([x.low, x.open, y.high, y.open]).toEqual([-9, [true, false], 10, [false, true]]);
  });
});

describe('doubts are taken', () => {
  test('first where the readings by themselves lead', () => {
    // Plain (1/1 + 6/4) / (1 + 1/4) = 2; anywhere else the first would be worth nothing, and 6 were found.
    const first = X(1, 1, { doubts: (x) => ({ own: [Math.abs((x as number) - 2) < 0.3 ? 0 : 1000] }) });
    const { ways } = solved([first, X(6, 2), Y(5, 1)]);
    expect(ways[0]?.[0]?.value).toBeCloseTo(2, 4);
  });

  test('then where they lead with their doubts: what is known of y hangs on where x comes to', () => {
    // Plain x = 2; with ± 17.3 more on the first both weigh alike, and x = 3.5.
    const y = Y(5, 1, { doubts: (x) => ({ own: [(x as number) < 2.75 ? 0 : 2] }) });
    const { ways } = solved([X(1, 10, { doubts: () => ({ own: [10 * ROOT_3] }) }), X(6, 20), y]);
    const [foundX, foundY] = ways[0] as [Found, Found];
    expect(foundX.value).toBeCloseTo(3.5, 4);
    for (const half of halves(foundY)) expect(half).toBeCloseTo(NINETY_FIVE_OF_EVEN * Math.sqrt(5), 4);
  });
});

describe('readings that do not agree', () => {
  test('two of two unknowns: within the 95 % of χ² for two they are met', () => {
    const capped = (off: number) => solve([{ value: 3 + off, plusMinus: ROOT_3, of: (x) => Math.min(3, x as number) }, Y(5, ROOT_3)]);
    expect(capped(2.44).solved?.chiSquare).toBeCloseTo(2.44 ** 2, 6);
    expect(capped(2.46).unmet?.spans).toEqual([
      { place: 0, least: -9, greatest: 3 },
      { place: 1, least: 0, greatest: 10 },
    ]);
  });

  test('nothing is met where nothing is foretold', () => {
    expect(solve([X(3, 1, { of: () => Number.NaN }), Y(5, 1)]).unmet?.spans[1]).toEqual({ place: 1, least: 0, greatest: 10 });
  });

  test('three: the ± of all widens by the ratio of Birge, and each is held against the rest', () => {
    // y = 3 and 7, each with an uncertainty of 1: χ² = 8, freedom 1.
    const { chiSquare, freedom, birge, ways, standings } = solved([X(2, ROOT_3), Y(3, ROOT_3), Y(7, ROOT_3)]);
    expect([chiSquare, freedom, birge]).toEqual([expect.closeTo(8, 6), 1, expect.closeTo(Math.sqrt(8), 6)]);
    for (const half of halves(ways[0]?.[0] as Found)) expect(half).toBeCloseTo(1.959964 * Math.sqrt(8), 4);
    // Nobody else tells of x; of y each is told by the other, 4 over √2.
    expect(standings).toEqual([
      { place: 1, off: expect.closeTo(-4 / Math.SQRT2, 5), expected: expect.closeTo(7, 5) },
      { place: 2, off: expect.closeTo(4 / Math.SQRT2, 5), expected: expect.closeTo(3, 5) },
    ]);
  });

  test('and by the slopes where it stands: x³ at 2 beside x', () => {
    const { standings } = solved([X(2.3, ROOT_3), X(8, ROOT_3, { of: (x) => (x as number) ** 3 }), Y(5, 1)]);
    expect(standings[0]?.off).toBeCloseTo(0.3 / Math.sqrt(1 + 1 / 144), 2);
    expect(standings).toHaveLength(2);
  });
});

describe('two ways to meet the readings', () => {
  /** A wide low at -2 that misses by `missed`, on a place of the net; a steep one at 2.5, met, between its places. */
  const twoLows = (missed: number, side = 1): Made => ({
    value: 0,
    plusMinus: ROOT_3,
    of: (x) => {
      const at = side * (x as number);
      return at <= 0.5 ? missed + 0.1 * (at + 2) ** 2 : 3 * (at - 2.5);
    },
    doubts: (x) => ({ own: [side * (x as number) < 0 ? 0 : ROOT_3] }),
  });

  test.each([1, -1])('are both found, the likelier first, each with the doubts where it lies: side %d', (side) => {
    const { ways } = solved([twoLows(0.5, side), Y(5, 5)]);
    expect(ways.map(([x]) => x?.value)).toEqual([expect.closeTo(2.5 * side, 5), expect.closeTo(-2 * side, 1)]);
    // Of the first an uncertainty of √2 over a slope of 3.
    for (const half of halves(ways[0]?.[0] as Found)) expect(half).toBeCloseTo((1.959964 * Math.SQRT2) / 3, 2);
  });

  const far = (c: number, value = 4): Made => ({
    value,
    plusMinus: ROOT_3,
    of: (x) => ((x as number) < 0 ? Math.max(value + c, (x as number) ** 2) : (x as number) ** 2),
  });
  test('the second only where χ² allows it: 5.99 above the first', () => {
    expect(solved([far(2.4), Y(5, 1)]).ways).toHaveLength(2);
    expect(solved([far(2.5), Y(5, 1)]).ways).toHaveLength(1);
  });
  test('times the square of the ratio of Birge: 8 times 5.99 are 47.9', () => {
    const apart = [Y(3, ROOT_3), Y(7, ROOT_3)];
    expect(solved([far(6.8, 9), ...apart]).ways).toHaveLength(2);
    expect(solved([far(7, 9), ...apart]).ways).toHaveLength(1);
  });

  test('at the edges of the range too', () => {
    const ends: Made = { value: 0, plusMinus: ROOT_3, of: (x) => 9 - Math.abs(x as number) };
    for (const y of [0, 10]) {
      const { ways } = solved([ends, Y(y, 1)]);
      expect(ways.map(([x]) => Math.round(x?.value as number)).toSorted((a, b) => a - b)).toEqual([-9, 9]);
      for (const [, found] of ways) expect(found?.value).toBeCloseTo(y, 5);
    }
  });
});

test('an unknown that nothing tells of is open, and the other is found all the same', () => {
  const [x, y] = solved([X(2.3, 0.3), X(2.3, 0.3)]).ways[0] as [Found, Found];
  expect(x.value).toBeCloseTo(2.3, 5);
  expect([y.low >= 0, y.high <= 10]).toEqual([true, true]);
});
