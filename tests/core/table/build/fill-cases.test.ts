import { describe, expect, it } from 'vitest';
import { filling } from '../../../../core/table/build/fill.ts';
import { type Tube, tubeOf } from '../../../../core/table/threads/adapter.ts';

/** Tubes told one by one, each choice with the reason for it. */

const own = (lengthMm: number, reachMm = 0): Tube => tubeOf({ thread: 'M42 x 1', lengthMm, reachMm });
const buy = (lengthMm: number, reachMm = 0): Tube => ({ ...own(lengthMm, reachMm), owned: false });
const exact = (value: number) => ({ value, low: value, high: value, within: 0 });
const lengths = (found: ReturnType<typeof filling>) => found?.tubes.map(({ lengthMm }) => lengthMm);

describe('what is owned', () => {
  it('is used once, bought ones as often as it takes', () => {
    expect(lengths(filling([own(10), buy(8)], exact(20)))).toEqual([8, 10]);
    expect(lengths(filling([buy(10)], exact(30)))).toEqual([10, 10, 10]);
    // Both as long: the bought one and the owned one, not the owned one twice.
    const [bought, owned] = [buy(10), own(10)];
    expect(new Set(filling([bought, owned], exact(20))?.tubes)).toEqual(new Set([bought, owned]));
  });

  it('is taken before what is bought where both are as many, and before fewer where that is asked for', () => {
    expect(filling([buy(10), own(10)], exact(10))).toMatchObject({ toBuy: 0 });
    const box = [own(5), own(5), buy(10)];
    expect(lengths(filling(box, exact(10)))).toEqual([10]);
    expect(lengths(filling(box, exact(10), true))).toEqual([5, 5]);
    expect(filling(box, exact(10), true)).toMatchObject({ toBuy: 0, lengthMm: 10, least: 10, most: 10 });
    // Fewer of the owned ones all the same.
    expect(lengths(filling([own(5), own(5), own(10)], exact(10), true))).toEqual([10]);
  });

  it('of two that are alike is the one told first', () => {
    const [first, second] = [own(10), own(10)];
    expect(filling([first, second], exact(10))?.tubes[0]).toBe(first);
  });
});

describe('how near it comes', () => {
  it('is within a millimetre where nothing else is said, the fewest first and then the nearest', () => {
    const wanted = { value: 10, low: 10, high: 10 };
    expect(lengths(filling([own(9.5), own(10.4)], wanted))).toEqual([10.4]);
    expect(lengths(filling([own(9.7), own(10.6)], wanted))).toEqual([9.7]);
    expect(lengths(filling([own(10), own(10.4)], wanted))).toEqual([10]);
    expect(lengths(filling([own(9), own(5), own(5)], wanted))).toEqual([9]);
    expect(lengths(filling([own(8.9), own(5), own(5)], wanted))).toEqual([5, 5]);
  });

  it('is counted in whole tenths, the nearest of them', () => {
    // 9.9 is 0.06 too short, a tenth; 10 is 0.04 too long, none.
    expect(lengths(filling([own(9.9), own(5), own(5)], exact(9.96)))).toEqual([5, 5]);
    expect(lengths(filling([own(9.5), own(5), own(5)], exact(10)))).toEqual([5, 5]);
    expect(lengths(filling([own(9.5), own(10)], exact(10)))).toEqual([10]);
    expect(lengths(filling([own(9), own(10)], exact(10)))).toEqual([10]);
    expect(lengths(filling([buy(0.1)], exact(0.1)))).toEqual([0.1]);
  });

  it('goes up to one tube beyond the value where the interval reaches far above it', () => {
    // 20 misses 30 by 10 less the millimetre, 10 by 20.
    expect(lengths(filling([buy(10)], { value: 10, low: 5, high: 30 }))).toEqual([10, 10]);
    expect(lengths(filling([buy(10.06)], { value: 10.05, low: 5, high: 30 }))).toEqual([10.06, 10.06]);
    expect(lengths(filling([buy(0.5)], { value: 0, low: 0, high: 30 }))).toEqual([0.5]);
  });

  it('is nothing at all of 1 mm too little room, and no filling beyond', () => {
    expect(filling([own(7)], exact(-1))).toMatchObject({ tubes: [], lengthMm: 0, least: 0, most: 0, toBuy: 0 });
    expect(filling([own(7)], exact(-1.01))).toBeUndefined();
    expect(filling([own(0)], exact(0))).toMatchObject({ tubes: [] });
  });
});

describe('a focusing tube', () => {
  it('is taken where the interval wants one, however little it turns', () => {
    const wanted = { value: 10, low: 9.6, high: 10.4, within: 0 };
    expect(filling([own(10), own(9.6, 0.8)], wanted)).toMatchObject({ least: 9.6, most: 10.4, lengthMm: 10 });
    expect(lengths(filling([own(10), own(9.6, 0.8)], wanted))).toEqual([9.6]);
    expect(lengths(filling([own(10), own(9.5, 1)], wanted))).toEqual([9.5]);
  });

  it('counts as a piece like others, after them where both do', () => {
    expect(lengths(filling([buy(10), buy(8, 4)], exact(10)))).toEqual([10]);
    expect(lengths(filling([buy(5), buy(3, 4)], exact(10)))).toEqual([5, 5]);
    expect(filling([buy(5), own(3, 4)], exact(10))).toMatchObject({ least: 8, most: 12, lengthMm: 10, toBuy: 1 });
  });
});
