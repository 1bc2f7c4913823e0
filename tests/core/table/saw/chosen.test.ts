import { describe, expect, test } from 'vitest';
import { choose, meets } from '../../../../core/table/saw/chosen.ts';
import type { Found } from '../../../../core/table/saw/found.ts';

const found = (low: number, value: number, high: number, open: readonly [boolean, boolean] = [false, false]): Found => ({
  value,
  low,
  high,
  open,
});
const known = (least: number, greatest: number, measured = false) => ({ least, greatest, measured });

test('an interval meets what is known down to a single common point', () => {
  expect(meets(found(0, 1, 2), known(2, 5))).toBe(true);
  expect(meets(found(5, 6, 7), known(2, 5))).toBe(true);
  expect(meets(found(0, 1, 1.99), known(2, 5))).toBe(false);
  expect(meets(found(5.01, 6, 7), known(2, 5))).toBe(false);
  expect(meets(found(5.01, 6, 7), undefined)).toBe(true);
});

describe('what is chosen', () => {
  test('a single way stands as it is, its own value in an uneven interval', () => {
    expect(choose([found(3, 5, 6)], known(0, 100))).toEqual({ value: 5, low: 3, high: 6, cut: false, beyond: false });
    expect(choose([found(3, 5, 6)], undefined)).toEqual({ value: 5, low: 3, high: 6, cut: false, beyond: false });
  });

  test('several ways are one interval and its middle; one of them outside what is known makes it lie beyond', () => {
    const two = [found(3, 5, 6), found(10, 12, 13)];
    expect(choose(two, known(0, 100))).toEqual({ value: 8, low: 3, high: 13, cut: false, beyond: false });
    expect(choose(two, known(0, 9))).toEqual({ value: 8, low: 3, high: 13, cut: false, beyond: true });
    expect(choose(two.toReversed(), known(0, 9))?.beyond).toBe(true);
  });

  test('an open end is where what is known ends; an end that the readings put stays', () => {
    expect(choose([found(-50, 5, 6, [true, false])], known(-10, 90))).toEqual({ value: -2, low: -10, high: 6, cut: true, beyond: false });
    expect(choose([found(5, 6, 500, [false, true])], known(-100, 20))).toEqual({ value: 12.5, low: 5, high: 20, cut: true, beyond: false });
    // Ends that are not open are not moved, though what is known ends inside.
    expect(choose([found(-50, 5, 6)], known(-10, 90))).toMatchObject({ low: -50, high: 6, value: 5 });
    expect(choose([found(5, 6, 60)], known(-100, 20))).toMatchObject({ low: 5, high: 60, value: 6 });
    // Nor is an open end that lies farther in than what is known.
    expect(choose([found(2, 5, 6, [true, false])], known(-10, 90))).toMatchObject({ low: 2, high: 6, value: 4 });
    expect(choose([found(5, 6, 12, [false, true])], known(-100, 20))).toMatchObject({ low: 5, high: 12, value: 8.5 });
  });

  test('an open end of what lies beyond is left where it is', () => {
    expect(choose([found(-50, -45, -40, [true, false])], known(-10, 90))).toEqual({
      value: -45,
      low: -50,
      high: -40,
      cut: true,
      beyond: true,
    });
    expect(choose([found(95, 96, 99, [false, true])], known(-10, 90))).toEqual({ value: 97, low: 95, high: 99, cut: true, beyond: true });
  });

  test('open on both sides, or on one with nothing known, nothing is learnt', () => {
    expect(choose([found(1, 2, 3, [true, true])], known(0, 100))).toBeUndefined();
    expect(choose([found(1, 2, 3, [true, true]), found(5, 6, 7)], known(0, 100))).toBeUndefined();
    expect(choose([found(1, 2, 3, [true, false])], undefined)).toBeUndefined();
    expect(choose([found(1, 2, 3, [false, true])], undefined)).toBeUndefined();
    expect(choose([found(1, 2, 3, [false, true]), found(5, 6, 7)], undefined)).toBeUndefined();
    // Two ways, each open on another side, are no single interval without ends.
    expect(choose([found(1, 2, 3, [true, false]), found(5, 6, 7, [false, true])], known(0, 100))).toMatchObject({
      low: 1,
      high: 7,
      cut: true,
    });
  });

  test('a tenth of what was known has to go, unless it had been measured or lies elsewhere', () => {
    expect(choose([found(0, 45, 90)], known(0, 100))).toBeUndefined();
    expect(choose([found(0, 45, 90.5)], known(0, 100))).toBeUndefined();
    expect(choose([found(0, 45, 89.5)], known(0, 100))).toMatchObject({ low: 0, high: 89.5 });
    expect(choose([found(0, 45, 90)], known(0, 100, true))).toMatchObject({ low: 0, high: 90 });
    expect(choose([found(101, 150, 300)], known(0, 100))).toMatchObject({ low: 101, high: 300, beyond: true });
  });
});
