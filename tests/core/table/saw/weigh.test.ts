import { expect, test } from 'vitest';
import { along, axis, spansOf } from '../../../../core/table/saw/found.ts';
import { offsOf } from '../../../../core/table/saw/inconsistent.ts';
import { inverse } from '../../../../core/table/saw/matrix.ts';
import { restsOn } from '../../../../core/table/saw/rests-on.ts';
import {
  birgeRatio,
  chiSquare,
  chiSquare95,
  covarianceAt,
  gainOf,
  residualsAt,
  slopesAt,
  standings,
} from '../../../../core/table/saw/weigh.ts';
import { random } from '../../../support/random.ts';
import { madeBench, ROOT_3 } from './made-bench.ts';

test('the points of χ² hold 95 % of its density', () => {
  const gamma = (half: number): number => (half === 1 ? 1 : half === 0.5 ? Math.sqrt(Math.PI) : (half - 1) * gamma(half - 1));
  for (let k = 1; k <= 11; k++) {
    // ∫ of x^(k/2-1) e^(-x/2), with x = v² so that it has no peak at 0; by Simpson.
    const f = (v: number): number => 2 * v ** (k - 1) * Math.exp((-v * v) / 2);
    const [n, to] = [2000, Math.sqrt(chiSquare95(k))];
    let sum = f(0) + f(to);
    for (let i = 1; i < n; i++) sum += (i % 2 ? 4 : 2) * f((i * to) / n);
    expect((sum * to) / (3 * n) / (2 ** (k / 2) * gamma(k / 2))).toBeCloseTo(0.95, 4);
  }
});

test('matrices of any scale are inverted', () => {
  const draw = random(9);
  for (let run = 0; run < 50; run++) {
    const n = draw.integer(1, 6);
    const half = Array.from({ length: n }, () => Array.from({ length: n }, () => draw.between(-1, 1)));
    const scale = half.map(() => 10 ** draw.between(-8, 8));
    const a = half.map((r, i) =>
      half.map(
        (s, j) =>
          (r.reduce((sum, x, k) => sum + x * (s[k] as number), 0) + (i === j ? 0.5 : 0)) * (scale[i] as number) * (scale[j] as number),
      ),
    );
    const back = inverse(a) as number[][];
    a.forEach((row, i) => {
      row.forEach((_, j) => {
        const x = row.reduce((sum, v, k) => sum + v * (back[k]?.[j] as number), 0) * ((scale[j] as number) / (scale[i] as number));
        expect(x).toBeCloseTo(i === j ? 1 : 0, 8);
      });
    });
  }
  expect(
    inverse([
      [1, 1],
      [1, 1],
    ]),
  ).toBeUndefined();
});

test('a matrix whose diagonal is not positive has no inverse', () => {
  for (const diagonal of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
    for (const at of [0, 1]) expect(inverse([0, 1].map((i) => [0, 1].map((j) => (i !== j ? 0 : i === at ? diagonal : 1))))).toBeUndefined();
});

test('readings that agree within chance are not widened, nor is what has nothing to spare', () => {
  expect([birgeRatio(3.84, 1), birgeRatio(3.85, 1)]).toEqual([1, Math.sqrt(3.85)]);
  expect([birgeRatio(5.98, 2), birgeRatio(6, 2)]).toEqual([1, Math.sqrt(3)]);
  expect(birgeRatio(100, 0)).toBe(1);
});

test('where one reading is foretold nothing, or something endless, χ² is endless', () => {
  const weights = [
    [1, 0],
    [0, 1],
  ];
  expect(chiSquare([3, 4], weights)).toBe(25);
  for (const none of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])
    for (const both of [
      [3, none],
      [none, 4],
      [none, none],
    ])
      expect(chiSquare(both, weights)).toBe(Number.POSITIVE_INFINITY);
});

test('variances add: of a reading its own, of two what they share', () => {
  const doubts = () => ({ own: [2, 4], shared: [1, -2] });
  const bench = madeBench(
    [
      { value: 1, plusMinus: 3, of: (x) => x as number, doubts },
      { value: 1, plusMinus: 3, of: (x) => x as number },
    ],
    1,
    { shared: ['/a', '/b'] },
  );
  const { rows, inverse: back } = covarianceAt(bench, [1]);
  // 9 + 4 + 16 + 1 + 4 thirds; the other reading shares nothing.
  expect(rows[0]?.[0]).toBeCloseTo(34 / 3, 6);
  expect([rows[0]?.[1], rows[1]?.[1]]).toEqual([0, expect.closeTo(3, 12)]);
  expect(back[0]?.[0]).toBeCloseTo(3 / 34, 7);
  const alike = madeBench(
    [1, 2].map((value) => ({ value, plusMinus: 3, of: (x: number) => x, doubts })),
    1,
    { shared: ['/a', '/b'] },
  );
  expect(covarianceAt(alike, [1]).rows[0]?.[1]).toBeCloseTo(5 / 3, 12);
});

test('two readings with next to no ± of their own that share all are still told apart', () => {
  const made = [1, 2].map((value) => ({ value, plusMinus: 1e-9, of: (x: number) => x, doubts: () => ({ own: [], shared: [1] }) }));
  expect(covarianceAt(madeBench(made, 1, { shared: ['/a'] }), [1]).inverse).toBeDefined();
});

test('slopes by steps to either side; none where nothing is foretold', () => {
  const bench = madeBench([
    { value: 8, plusMinus: 1, of: (x) => (x as number) ** 3 },
    { value: 8, plusMinus: 1, of: (x) => ((x as number) > 2 ? Number.NaN : 1) },
  ]);
  // (2.1³ − 1.9³) / 0.2 = 12.01.
  expect(slopesAt(bench, [2], [0.1])).toEqual([[expect.closeTo(12.01, 9)], [0]]);
  expect(residualsAt(bench, [1])).toEqual([7, 7]);
});

test('who stands alone has nothing to be off from; what does not separate has no gain', () => {
  const bench = madeBench([{ value: 8, plusMinus: ROOT_3, of: (x) => x as number }]);
  expect(standings(bench, [3], covarianceAt(bench, [5]), [[1]])).toEqual([]);
  expect(standings(bench, [3], covarianceAt(bench, [5]), [[0]])).toEqual([]);
  expect(gainOf([[1]], [[0]])).toBeUndefined();
  expect(gainOf([[0.25]], [[2]])).toEqual([[0.5]]);
});

test('what a finding rests on, as shares of its variance, the greatest first, a thousandth at least', () => {
  // Variances of 1, 4, 25 and 0.02 beside 9 and 16 of its own.
  const doubts = () => ({ own: [4], shared: [1, -2, 5, 0.14] });
  const bench = madeBench([{ value: 1, plusMinus: 3, of: (x) => 2 * (x as number), doubts }], 1, { shared: ['/a', '/b', '/c', '/d'] });
  const way = [{ value: 1, low: 0.9, high: 1.1, open: [false, false] as const }];
  const solved = { ways: [way], covariance: covarianceAt(bench, [1]) } as never;
  const whole = 55 + 0.14 ** 2;
  expect(restsOn(bench, solved, [1], 0)).toEqual([
    { path: '/c', share: expect.closeTo(25 / whole, 6) },
    { path: '/b', share: expect.closeTo(4 / whole, 6) },
    { path: '/a', share: expect.closeTo(1 / whole, 6) },
  ]);
  const flat = madeBench([{ value: 1, plusMinus: 3, of: () => 2, doubts }], 1, { shared: ['/a', '/b', '/c', '/d'] });
  expect(restsOn(flat, { ways: [way], covariance: covarianceAt(flat, [1]) } as never, [1], 0)).toEqual([]);
});

test('who is off: the worst always, others beyond 1.96, what the pairing says of itself never', () => {
  const readings = [0, 1, 2, -1].map((place) => ({ place, value: 10 + place, shown: (x: number) => 2 * x })) as never;
  const offs = (all: readonly (readonly [place: number, off: number, expected?: number])[], over: object = {}) =>
    offsOf(
      {
        solved: { freedom: 2, chiSquare: 6, standings: all.map(([place, off, expected = 7]) => ({ place, off, expected })), ...over },
      } as never,
      readings,
    );
  expect(
    offs([
      [0, 1.5],
      [1, -1.9],
      [2, 1],
    ]),
  ).toEqual([{ sighting: 1, reads: 22, expected: 14, off: 1.9 }]);
  expect(
    offs([
      [0, 1.97],
      [1, -3],
      [2, 1.95],
    ]).map(({ sighting, off }) => [sighting, off]),
  ).toEqual([
    [1, 3],
    [0, 1.97],
  ]);
  expect(
    offs([
      [0, -2.5],
      [1, 3],
    ]).map(({ sighting }) => sighting),
  ).toEqual([1, 0]);
  expect(
    offs([
      [-1, 4],
      [1, 3],
    ]).map(({ sighting }) => sighting),
  ).toEqual([1]);
  for (const none of [0, -1, Number.POSITIVE_INFINITY, Number.NaN])
    expect(offs([[0, 4, none]])).toEqual([{ sighting: 0, reads: 20, off: 4 }]);
  expect(offs([[0, 4, 0.25]])[0]?.expected).toBe(0.5);
  // 5.991 is the 95 % point for two; without one to spare nothing is off.
  expect(offs([[0, 4]], { chiSquare: 5.98 })).toEqual([]);
  expect(offs([[0, 4]], { freedom: 0 })).toEqual([]);
  expect(offsOf({} as never, readings)).toEqual([]);
});

test('places are even in the unknown or in its logarithm, both ends among them', () => {
  expect(along(axis(false, [2, 10]), 5)).toEqual([2, 4, 6, 8, 10]);
  const ratio = axis(true, [1, 10_000]);
  expect(along(ratio, 5).map((x) => ratio.at(x))).toEqual([1, 10, 100, 1000, 10_000].map((x) => expect.closeTo(x, 6)));
  expect(ratio.at(ratio.of(7))).toBeCloseTo(7, 12);
  const bench = madeBench([{ value: 1, plusMinus: 1, of: () => 1 }]);
  expect(spansOf(bench, [[3], [Number.NaN], [-2], [5]])).toEqual([{ place: 0, least: -2, greatest: 5 }]);
});
