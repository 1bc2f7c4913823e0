import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Best } from '../../../core/choose/best.ts';

const quarters = fc.integer({ min: 0, max: 99 }).map((n) => n / 4);
const upward = (a: number, b: number): number => a - b;
const filled = (most: number, numbers: readonly number[]): Best<number> => {
  const best = new Best<number>(most, upward);
  for (const n of numbers) best.add(n);
  return best;
};

describe('the best of many', () => {
  it('are the first of all of them sorted, whatever order they come in', () => {
    fc.assert(
      fc.property(fc.uniqueArray(quarters, { maxLength: 30 }), fc.integer({ min: 0, max: 12 }), (numbers, most) => {
        expect(filled(most, numbers).kept).toEqual(numbers.toSorted(upward).slice(0, most));
      }),
      { numRuns: 60, seed: 4 },
    );
  });

  it('want one more while there is room, and then only what comes before their last', () => {
    expect(filled(3, [5, 1]).wants(9)).toBe(true);
    const full = filled(3, [5, 1, 7]);
    expect([6, 8].map((n) => full.wants(n))).toEqual([true, false]);
    expect(full.kept).toEqual([1, 5, 7]);
    expect([6.9, 7.1].map((n) => full.wants(n))).toEqual([true, false]);
  });

  it('are none where none are asked for: nothing is held against nobody', () => {
    const none = new Best<{ n: number }>(0, (a, b) => a.n - b.n);
    expect(none.wants({ n: 1 })).toBe(false);
    none.add({ n: 1 });
    expect(none.kept).toEqual([]);
  });
});
