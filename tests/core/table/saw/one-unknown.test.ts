import { describe, expect, test } from 'vitest';
import type { Found } from '../../../../core/table/saw/found.ts';
import { solveOne } from '../../../../core/table/saw/one.ts';
import { NINETY_FIVE_OF_EVEN } from './bare.ts';
import { madeBench, ROOT_3 } from './made-bench.ts';

const RANGE = [0, 96] as const;
const identity = (x: number): number => x;
const solved = (...args: Parameters<typeof solveOne>) => {
  const { solved } = solveOne(...args);
  if (!solved) throw new Error('nothing was met');
  return solved;
};
const waysOf = (...args: Parameters<typeof solveOne>): Found[] => solved(...args).ways.map(([way]) => way as Found);

describe('one reading of one unknown', () => {
  test.each([0.3, 0.7, 1, 50, 50.2, 95.3, 95.7])('is met to rounding, rising or falling: %d', (value) => {
    const [up] = waysOf(madeBench([{ value, plusMinus: 1e-3, of: identity }]), RANGE);
    const [down] = waysOf(madeBench([{ value: -value, plusMinus: 1e-3, of: (x) => -x }]), RANGE);
    for (const way of [up, down]) expect(Math.abs((way as Found).value / value - 1)).toBeLessThan(1e-11);
    for (const way of [up, down]) {
      expect((way as Found).high - value).toBeCloseTo(NINETY_FIVE_OF_EVEN * 1e-3, 7);
      expect(value - (way as Found).low).toBeCloseTo(NINETY_FIVE_OF_EVEN * 1e-3, 7);
      expect((way as Found).open).toEqual([false, false]);
    }
  });

  test('every valley of the net is found, at both ends too, though only one step lies between', () => {
    // Lows at the even places, a little higher the farther they are from one end; hills of 100 between.
    for (const slope of [0.005, -0.005]) {
      const waves = (x: number): number => 50 * (1 - Math.cos(Math.PI * x)) + slope * x;
      const ways = waysOf(madeBench([{ value: 0, plusMinus: 1, of: waves }]), RANGE);
      const places = ways.map(({ value }) => Math.round(value)).toSorted((a, b) => a - b);
      expect(places).toEqual(Array.from({ length: 49 }, (_, i) => 2 * i));
      for (const { value } of ways) expect(Math.abs(value - Math.round(value))).toBeLessThan(0.05);
    }
  });

  test('what lies within 1.96 standard uncertainties of it is met, what lies farther off is not', () => {
    // Foretold is at most 10; the standard uncertainty is 1/√3.
    const capped = (over: number) => solveOne(madeBench([{ value: 10 + over / ROOT_3, plusMinus: 1, of: (x) => Math.min(x, 10) }]), RANGE);
    expect(capped(1.95).solved?.chiSquare).toBeCloseTo(1.95 ** 2, 6);
    expect(capped(1.97).unmet?.spans).toEqual([{ place: 0, least: 0, greatest: 10 }]);
  });

  test('of a level stretch stands the middle, in even ratios where the unknown is told so, and it is open at both ends', () => {
    const level = madeBench([{ value: 5, plusMinus: 1, of: () => 5 }], 1, { ratio: true });
    const [way] = waysOf(level, [1, 10_000]);
    // The middle by ratio is 100, by steps 5000; one step of the net is a tenth of it.
    expect(Math.abs((way?.value ?? 0) - 100)).toBeLessThan(15);
    expect(way).toMatchObject({ low: expect.closeTo(1, 9), high: expect.closeTo(10_000, 6), open: [true, true] });
    const shelf = (x: number): number => (x < 20 || x > 40 ? 500 : 5);
    const [plain] = waysOf(madeBench([{ value: 5, plusMinus: 1, of: shelf }]), RANGE);
    expect(Math.abs((plain?.value ?? 0) - 30)).toBeLessThan(1.5);
  });

  test('nothing is met where nothing is foretold', () => {
    const none = solveOne(madeBench([{ value: 5, plusMinus: 1, of: () => Number.NaN }]), RANGE);
    expect(none.unmet?.spans).toEqual([{ place: 0, least: Number.POSITIVE_INFINITY, greatest: Number.NEGATIVE_INFINITY }]);
    // And where it is only foretold beyond what was seen, the border of that is no root.
    expect(solveOne(madeBench([{ value: 5, plusMinus: 1, of: (x) => (x > 40.5 ? Number.NaN : 20 + x) }]), RANGE).unmet?.spans).toEqual([
      { place: 0, least: 20, greatest: 60 },
    ]);
  });
});

describe('the interval around it', () => {
  const square = (x: number): number => x * x;
  const half = NINETY_FIVE_OF_EVEN;

  test('ends at a hill, though the far end of the range would do as well', () => {
    const ways = waysOf(madeBench([{ value: 4, plusMinus: 1, of: square }]), [-2, 2]).toSorted((a, b) => a.value - b.value);
    expect(ways).toEqual([
      { value: expect.closeTo(-2, 8), low: -2, high: expect.closeTo(-Math.sqrt(4 - half), 6), open: [true, false] },
      { value: expect.closeTo(2, 8), low: expect.closeTo(Math.sqrt(4 - half), 6), high: 2, open: [false, true] },
    ]);
  });

  test.each([-1, 1])('the likelier of two places comes first, on whichever side it is: %d', (side) => {
    const ways = waysOf(madeBench([{ value: 4, plusMinus: 1, of: (x) => (side * x > 0 ? Math.max(4.1, x * x) : x * x) }]), [-10, 10]);
    expect(ways.map(({ value }) => Math.sign(value))).toEqual([-side, side]);
    expect(ways[0]?.value).toBeCloseTo(-2 * side, 9);
  });

  test('two lows with no hill between that counts are one', () => {
    const ripple = (x: number): number => 0.1 * Math.cos(x / 3);
    expect(waysOf(madeBench([{ value: 0, plusMinus: 1, of: ripple }]), RANGE)).toHaveLength(1);
  });

  test('is open where the range ends first, below and above, and not where it only just ends behind', () => {
    const at = (value: number, range: readonly [number, number]): Found =>
      waysOf(madeBench([{ value, plusMinus: 1, of: identity }]), range)[0] as Found;
    expect(at(10, [9.5, 60])).toEqual({ value: expect.closeTo(10, 9), low: 9.5, high: expect.closeTo(10 + half, 6), open: [true, false] });
    expect(at(10, [-60, 10.5])).toEqual({
      value: expect.closeTo(10, 9),
      low: expect.closeTo(10 - half, 6),
      high: 10.5,
      open: [false, true],
    });
    // 1.3 off is 2.25 standard uncertainties: less than one beyond the border.
    expect(at(10, [8.7, 60])).toMatchObject({ low: expect.closeTo(10 - half, 6), open: [false, false] });
    expect(at(10, [-60, 11.3])).toMatchObject({ high: expect.closeTo(10 + half, 6), open: [false, false] });
    // Met only at the very end: χ² may rise by 1.96² from what is left there.
    const more = Math.hypot(0.2, half);
    expect(at(9, [9.2, 60])).toMatchObject({
      value: expect.closeTo(9.2, 6),
      low: 9.2,
      high: expect.closeTo(9 + more, 6),
      open: [true, false],
    });
    expect(at(11, [-60, 10.8])).toMatchObject({
      value: expect.closeTo(10.8, 6),
      high: 10.8,
      low: expect.closeTo(11 - more, 6),
      open: [false, true],
    });
  });

  test('follows doubts as they are where one stands', () => {
    // A half-width of x/10 at x: met from x + k x/10 = 10 to x - k x/10 = 10, k = 1.96/√3.
    const [way] = waysOf(madeBench([{ value: 10, plusMinus: 1e-9, of: identity, doubts: (x) => ({ own: [x / 10] }) }]), [1, 60]);
    expect(way?.low).toBeCloseTo(10 / (1 + half / 10), 6);
    expect(way?.high).toBeCloseTo(10 / (1 - half / 10), 6);
  });
});

describe('several readings of one unknown', () => {
  test('weigh by the squares of their ±, the doubts of the first look taken where the readings themselves lead', () => {
    // Plain: (10/1 + 20/4) / (1/1 + 1/4) = 12. Anywhere else the first would be worth nothing, and the second stood alone.
    const bench = madeBench([
      { value: 10, plusMinus: 1, of: identity, doubts: (x) => ({ own: [Math.abs(x - 12) < 0.4 ? 0 : 1000] }) },
      { value: 20, plusMinus: 2, of: identity },
    ]);
    expect(waysOf(bench, [0, 24])[0]?.value).toBeCloseTo(12, 5);
  });

  test('that do not agree widen the ± by the ratio of Birge, and each stands to the rest', () => {
    // 10, 10, 16, each ± √3: mean 12, χ² = 4 + 4 + 16 = 24, √(24/2).
    const bench = madeBench([10, 10, 16].map((value) => ({ value, plusMinus: ROOT_3, of: identity })));
    const { chiSquare, freedom, birge, standings, ways } = solved(bench, RANGE);
    expect(chiSquare).toBeCloseTo(24, 6);
    expect([freedom, birge]).toEqual([2, expect.closeTo(Math.sqrt(12), 6)]);
    const way = ways[0]?.[0] as Found;
    expect(way.high - way.value).toBeCloseTo((1.959964 / ROOT_3) * Math.sqrt(12), 4);
    // 16 against the mean of two: 6 over √1.5; 10 against 13: 3 over √1.5.
    expect(standings.map(({ off }) => off)).toEqual([-3, -3, 6].map((d) => expect.closeTo(d / Math.sqrt(1.5), 5)));
    expect(standings.map(({ expected }) => expected)).toEqual([13, 13, 10].map((x) => expect.closeTo(x, 5)));
  });

  test('stand to each other by their slopes there: x and x³ at 2', () => {
    // V = 1: J = (1, 12). Leaving one out, the other alone foretells; distances by the slopes of the tangent.
    const bench = madeBench([
      { value: 2.3, plusMinus: ROOT_3, of: identity },
      { value: 8, plusMinus: ROOT_3, of: (x) => x ** 3 },
    ]);
    const { standings } = solved(bench, RANGE);
    // By the cube alone x is 2 with an uncertainty of 1/12: off = 0.3 / √(1 + 1/144).
    expect(standings[0]?.off).toBeCloseTo(0.3 / Math.sqrt(1 + 1 / 144), 2);
    expect(standings[0]?.expected).toBeCloseTo(2, 2);
    expect(standings[1]?.off).toBeCloseTo(-0.3 / Math.sqrt(1 + 1 / 144), 2);
  });
});
