import { describe, expect, it } from 'vitest';
import type { Figure } from '../../../core/figure.ts';
import { leaf } from '../../../core/figure.ts';
import type { Input } from '../../../core/pairing/input.ts';
import { partsOf } from '../../../core/pairing/moved-rows.ts';
import { plain, spreadOf, withInputs } from '../../../core/pairing/spread.ts';
import { Gap, input, of3, open3, sheetOf, x, y, z } from './small.ts';

function lowHigh(figure: Figure, inputs: readonly Input[]): number[] {
  const { all, sheet } = sheetOf([figure], inputs);
  const before = sheet.slice();
  const { low, high } = spreadOf(all, sheet, inputs, [figure]);
  expect(sheet).toEqual(before);
  return [low[0] as number, high[0] as number];
}

describe('the low and the high of a figure', () => {
  it('are the root of the squares of what its inputs do alone', () => {
    // Falls of 3 and 4, rises of 5 and 12.
    const sum = of3((a, b) => a + b);
    expect(lowHigh(sum, [input(x, 100, [97, 105]), input(y, 100, [96, 112])])).toEqual([195, 213]);
  });

  it('stay within what is possible', () => {
    const wide = input(x, 0.5, [-1, 3]);
    expect(
      lowHigh(
        of3((a) => a, { bounds: [0, 1] }),
        [wide],
      ),
    ).toEqual([0, 1]);
  });

  it('count a figure that there is none of as it says, and one that is not known as unmoved', () => {
    const gone = (gap: Gap) => open3((a) => ((a as number) > 4 ? gap : (a as number)), { noneCountsAs: 9 });
    const moved = [input(x, 4, [3, 6])];
    expect(lowHigh(gone(Gap.none('no more')), moved)).toEqual([3, 9]);
    expect(lowHigh(gone(Gap.unknown('/x')), moved)).toEqual([3, 4]);
    expect(plain(gone(Gap.none('')), Gap.none(''))).toBe(9);
    expect(plain(gone(Gap.none('')), Gap.unknown('/x'))).toBeNaN();
    expect(plain(gone(Gap.none('')), 7)).toBe(7);
  });

  it('come down from without limit to the least that is met', () => {
    const unlimited = of3((a) => (a >= 4 ? Number.POSITIVE_INFINITY : a));
    expect(lowHigh(unlimited, [input(x, 4, [3, 6])])).toEqual([expect.closeTo(3, 12), Number.POSITIVE_INFINITY]);
  });

  it('take in a peak on the way, but for an input that moves everything one way', () => {
    const hump = of3((a) => 1 - (a - 0.3) ** 2);
    const [low, high] = lowHigh(hump, [input(x, 0, [-1, 1])]);
    expect(low).toBeCloseTo(-0.69, 12);
    expect(high).toBeCloseTo(1, 3);
    expect(lowHigh(hump, [input(x, 0, [-1, 1], { apart: 'both ways' })])[1]).toBeCloseTo(1, 3);
    expect(lowHigh(hump, [input(x, 0, [-1, 1], { apart: 'one way' })])).toEqual([expect.closeTo(-0.69, 12), expect.closeTo(0.91, 12)]);
  });

  it('take in what two inputs do together and none does alone', () => {
    // One goes to 6, the other 0.6 of the way to it; alone neither raises the lesser of the two.
    const lesser = of3((a, b) => Math.min(a, b));
    const both = [input(x, 4, [4, 6]), input(y, 4, [4, 6])];
    expect(lowHigh(lesser, both)).toEqual([4, expect.closeTo(5.2, 12)]);
    expect(lowHigh(lesser, [both[0] as Input, { ...(both[1] as Input), apart: 'both ways' }])).toEqual([4, 4]);
  });

  it('leave an input that is apart where it is while others are moved together, wherever it stands in the list', () => {
    const lesser = of3((a, b, c) => Math.min(a, b) + c);
    const apart = input(z, 0, [-0.5, 0.5], { apart: 'one way' });
    const [first, second] = [input(x, 4, [4, 6]), input(y, 4, [4, 6])];
    for (const inputs of [
      [apart, first, second],
      [first, apart, second],
      [first, second, apart],
    ])
      expect(lowHigh(lesser, inputs)).toEqual([3.5, expect.closeTo(5.2, 12)]);
  });

  it('pass over an input that the figures have no use for', () => {
    const strange = leaf('strange', 'q', '', '');
    const inputs = [input(x, 100, [97, 105]), input(strange, 1, [0, 5]), input(y, 100, [96, 112])];
    expect(
      lowHigh(
        of3((a, b) => a + b),
        inputs,
      ),
    ).toEqual([195, 213]);
  });
});

describe('inputs moved at once', () => {
  it('have no part of an interval where they are apart', () => {
    expect(partsOf([{}, { apart: 'one way' }, {}, { apart: 'both ways' }], [1, -0.6])).toEqual([1, 0, -0.6, 0]);
  });
  it('are worked through on a sheet of their own', () => {
    const sum = of3((a, b) => a + 10 * b);
    const inputs = [input(x, 1, [0, 2]), input(leaf('strange', 'q', '', ''), 1, [0, 5]), input(y, 2, [0, 5])];
    const { all, sheet } = sheetOf([sum], inputs);
    const at = (s: readonly unknown[]) => s[all.place.get(sum) as number];
    const moved = withInputs(all, sheet, inputs, [3, 7, 4]);
    expect([at(sheet), at(moved)]).toEqual([21, 43]);
    expect(moved).toHaveLength(sheet.length);
    expect(Object.keys(moved)).toEqual(Object.keys(sheet));
  });
});
