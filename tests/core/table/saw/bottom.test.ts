import { expect, test } from 'vitest';
import { bottom } from '../../../../core/table/saw/bottom.ts';
import { axis } from '../../../../core/table/saw/found.ts';
import { type Made, madeBench } from './made-bench.ts';

const read = (value: number, of: Made['of']): Made => ({ value, plusMinus: 1, of });
/** All readings weigh alike. */
const fall = (made: readonly Made[], start: readonly number[], ranges: readonly (readonly [number, number])[]) => {
  const lines = ranges.map((range) => axis(false, range));
  const job = { bench: madeBench(made, ranges.length), lines, at: (u: readonly number[]) => [...u] };
  const weights = made.map((_, i) => made.map((_, j) => (i === j ? 1 : 0)));
  return bottom(
    job,
    made.map(({ value }) => value),
    weights,
    start,
  );
};

test("Rosenbrock's valley is followed to its end at 1, 1", () => {
  const valley = [read(0, (x, y) => 10 * ((y as number) - (x as number) ** 2)), read(1, (x) => x as number)];
  const { u, chi } = fall(
    valley,
    [-1.2, 1],
    [
      [-5, 5],
      [-5, 5],
    ],
  );
  expect(u[0]).toBeCloseTo(1, 5);
  expect(u[1]).toBeCloseTo(1, 5);
  expect(chi).toBeLessThan(1e-10);
});

test('where the slopes alone would lead away, steps are taken back', () => {
  // Newton on atan diverges from beyond 1.39.
  expect(fall([read(0, (x) => Math.atan(x as number))], [3], [[-100, 100]]).u[0]).toBeCloseTo(0, 5);
  expect(fall([read(0, (x) => Math.atan(x as number))], [-60], [[-100, 100]]).u[0]).toBeCloseTo(0, 5);
});

test('of readings that do not agree the least sum of squares', () => {
  const { u, chi } = fall([read(1, (x) => x as number), read(4, (x) => x as number)], [9], [[-10, 10]]);
  expect(u[0]).toBeCloseTo(2.5, 7);
  expect(chi).toBeCloseTo(4.5, 9);
});

test('it is kept inside the range', () => {
  const inside = (value: number) => fall([read(value, (x) => x as number)], [3], [[2, 5]]);
  expect(inside(7).u[0]).toBe(5);
  expect(inside(7).chi).toBe(4);
  expect(inside(-7).u[0]).toBe(2);
  expect(inside(3.7).u[0]).toBeCloseTo(3.7, 6);
});

test('an unknown that nothing hangs on does not keep the other from being found; where nothing hangs on any, it stays', () => {
  const wide = [
    [-10, 10],
    [-10, 10],
  ] as const;
  const { u } = fall([read(4, (x) => x as number)], [1, 3], wide);
  expect(u[0]).toBeCloseTo(4, 5);
  expect(u[1]).toBeCloseTo(3, 5);
  expect(fall([read(4, () => 1)], [1, 3], wide)).toEqual({ u: [1, 3], chi: 9 });
});

test('at the border of where a reading is foretold, the others lead on', () => {
  const half = read(1, (x) => ((x as number) < 1 ? Number.NaN : (x as number)));
  const { u } = fall([half, read(4, (x) => x as number)], [1], [[-10, 10]]);
  expect(u[0]).toBeCloseTo(2.5, 6);
});
