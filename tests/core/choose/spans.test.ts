import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conflictOf } from '../../../core/choose/ends.ts';
import type { LimitWindow } from '../../../core/choose/limit-windows.ts';
import { common, nearest, type Span } from '../../../core/choose/spans.ts';

/** Spans in order that do not touch, from rising whole numbers. */
const spans = fc
  .uniqueArray(fc.integer({ min: 0, max: 40 }), { maxLength: 8 })
  .map((ends) => ends.toSorted((a, b) => a - b))
  .map((ends) => Array.from({ length: Math.floor(ends.length / 2) }, (_, i): Span => [ends[2 * i] as number, ends[2 * i + 1] as number]));
const within = (list: readonly Span[], x: number): boolean => list.some(([low, high]) => low <= x && x <= high);

describe('what two lists of spans have in common', () => {
  it('holds a place exactly where both do', () => {
    fc.assert(
      fc.property(spans, spans, (a, b) => {
        const both = common(a, b);
        for (let x = 0; x <= 40; x += 0.5) expect(within(both, x), `${x}`).toBe(within(a, x) && within(b, x));
      }),
      { numRuns: 40, seed: 6 },
    );
  });
  it('is one place where they touch', () => {
    expect(common([[1, 2]], [[2, 3]])).toEqual([[2, 2]]);
    expect(common([[1, 2]], [[2.1, 3]])).toEqual([]);
  });
});

describe('how far apart two lists of spans are', () => {
  it('is told by the two ends that come nearest, the lower first, of the lowest where several do', () => {
    expect(nearest([[1, 2]], [[5, 6]])).toEqual([2, 5]);
    expect(nearest([[5, 6]], [[1, 2]])).toEqual([2, 5]);
    expect(
      nearest(
        [
          [1, 2],
          [10, 11],
        ],
        [[7, 8]],
      ),
    ).toEqual([8, 10]);
    expect(
      nearest(
        [
          [1, 2],
          [20, 21],
        ],
        [
          [5, 6],
          [17, 18.5],
        ],
      ),
    ).toEqual([18.5, 20]);
    expect(
      nearest(
        [
          [1, 2],
          [10, 11],
        ],
        [[6, 6]],
      ),
    ).toEqual([2, 6]);
    expect(nearest([], [[1, 2]])).toBeUndefined();
  });
});

describe('two limits that no value meets both', () => {
  const windowOf = (name: LimitWindow['name'], ...intervals: Span[]): LimitWindow => ({
    name,
    figure: 'systemMagnification',
    sense: 'least',
    limit: 1,
    intervals,
    how: 'roots',
  });
  it('are the two farthest from each other, the one below first', () => {
    const low = windowOf('subjectFits', [0, 10]);
    const between = windowOf('length', [14, 15]);
    const high = windowOf('finestDetail', [19, 20]);
    const told = { limits: ['subjectFits', 'finestDetail'], between: [10, 19] };
    for (const order of [
      [low, between, high],
      [high, between, low],
      [between, high, low],
      [low, high, between],
    ])
      expect(conflictOf(order)).toEqual(told);
    // 40 less 5 is less than 10 less 0 is not: the distance counts, not where it lies.
    const far = [windowOf('subjectFits', [0, 1]), windowOf('length', [21, 30]), windowOf('finestDetail', [35, 36])];
    expect(conflictOf(far)?.between).toEqual([1, 35]);
    const late = [windowOf('subjectFits', [0, 1], [91, 92]), windowOf('length', [11, 12]), windowOf('finestDetail', [95, 96])];
    expect(conflictOf(late)).toEqual({ limits: ['length', 'finestDetail'], between: [12, 95] });
  });
  it('of two as far apart are those first in the list', () => {
    const list = [windowOf('subjectFits', [0, 1]), windowOf('length', [5, 6]), windowOf('finestDetail', [0, 1])];
    expect(conflictOf(list)).toEqual({ limits: ['subjectFits', 'length'], between: [1, 5] });
  });
  it('are none where each two have a place in common, if only one', () => {
    expect(conflictOf([windowOf('subjectFits', [1, 2]), windowOf('length', [2, 3])])).toBeUndefined();
    expect(conflictOf([windowOf('length', [2, 3]), windowOf('subjectFits', [1, 2])])).toBeUndefined();
    expect(conflictOf([windowOf('length', [1, 3]), windowOf('subjectFits', [2, 4])])).toBeUndefined();
    expect(conflictOf([windowOf('length', [1, 3])])).toBeUndefined();
  });
  it('name the one below first though it has other spans as well', () => {
    const both = [windowOf('length', [3, 4], [20, 21]), windowOf('subjectFits', [6, 7])];
    expect(conflictOf(both)).toEqual({ limits: ['length', 'subjectFits'], between: [4, 6] });
    expect(conflictOf(both.toReversed())).toEqual({ limits: ['length', 'subjectFits'], between: [4, 6] });
  });
});
