import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Frontier } from '../../../core/choose/frontier.ts';

const frontierOf = (rows: readonly (readonly number[])[]): (readonly number[])[] => {
  const frontier = new Frontier<{ row: readonly number[] }>();
  for (const row of rows) frontier.add({ row });
  return frontier.members.map(({ row }) => row);
};
const inOrder = (rows: readonly (readonly number[])[]): (readonly number[])[] => rows.toSorted((a, b) => (`${a}` < `${b}` ? -1 : 1));

describe('a frontier that grows', () => {
  it('holds those that no other equals or beats in all and beats in one, of whole numbers', () => {
    const row = fc.tuple(fc.integer({ min: -4, max: 4 }), fc.integer({ min: -4, max: 4 }), fc.integer({ min: -1, max: 1 }));
    fc.assert(
      fc.property(fc.array(row, { maxLength: 25 }), (rows) => {
        const beaten = (own: readonly number[]): boolean =>
          rows.some((other) => own.every((x, i) => (other[i] as number) >= x) && own.some((x, i) => (other[i] as number) > x));
        expect(inOrder(frontierOf(rows))).toEqual(inOrder(rows.filter((own) => !beaten(own))));
      }),
      { numRuns: 80, seed: 5 },
    );
  });

  it('takes for equal what rounding sets apart, and for different what is a millionth apart', () => {
    const near = [-2 * (1 + 1e-12), 1];
    expect(frontierOf([[-2, 1], near])).toEqual([[-2, 1], near]);
    expect(frontierOf([near, [-2, 1]])).toEqual([near, [-2, 1]]);
    expect(
      frontierOf([
        [200, 1],
        [200 * (1 + 1e-12), 1],
      ]),
    ).toHaveLength(2);
    // Ahead in one by rounding alone it is not ahead, and so falls behind what is ahead in the other.
    expect(
      frontierOf([
        [-2, 3],
        [-2 * (1 - 1e-12), 1],
      ]),
    ).toEqual([[-2, 3]]);
    expect(
      frontierOf([
        [-2, 1],
        [-2 * (1 - 1e-6), 1],
      ]),
    ).toEqual([[-2 * (1 - 1e-6), 1]]);
    expect(
      frontierOf([
        [200, 1],
        [200 * (1 - 1e-6), 1],
      ]),
    ).toEqual([[200, 1]]);
  });

  it('has what is without limit ahead of every number, and level with itself', () => {
    const endless = Number.POSITIVE_INFINITY;
    expect(
      frontierOf([
        [endless, 1],
        [40, 1],
      ]),
    ).toEqual([[endless, 1]]);
    expect(
      frontierOf([
        [40, 1],
        [endless, 1],
      ]),
    ).toEqual([[endless, 1]]);
    expect(
      frontierOf([
        [endless, 1],
        [endless, 2],
      ]),
    ).toEqual([[endless, 2]]);
    expect(
      frontierOf([
        [endless, 1],
        [endless, 1],
      ]),
    ).toHaveLength(2);
    expect(
      frontierOf([
        [endless, 1],
        [40, 2],
      ]),
    ).toHaveLength(2);
  });

  it('asks first whoever turned the last one away', () => {
    const rows = [
      [3, 0],
      [0, 3],
      [2, 2],
      [1, 1],
    ];
    expect(frontierOf(rows)).toEqual([
      [2, 2],
      [0, 3],
      [3, 0],
    ]);
  });
});
