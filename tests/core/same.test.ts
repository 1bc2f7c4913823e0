import { describe, expect, it } from 'vitest';
import { sameJson } from '../../core/same.ts';

describe('two JSON values', () => {
  it.each([
    [1, 1],
    ['a', 'a'],
    [null, null],
    [
      [1, [2, { a: 3 }]],
      [1, [2, { a: 3 }]],
    ],
    [
      { a: 1, b: { c: [] } },
      { b: { c: [] }, a: 1 },
    ],
    [{}, {}],
    [[], []],
  ])('%j and %j are the same', (a, b) => {
    expect(sameJson(a, b)).toBe(true);
    expect(sameJson(b, a)).toBe(true);
  });
  it.each([
    [1, 2],
    [1, '1'],
    [0, -0],
    [null, 0],
    [null, {}],
    [null, []],
    [{}, 'a'],
    ['', {}],
    [{ 0: 1 }, [1]],
    [{}, []],
    [[1], [1, 2]],
    [{ a: 1 }, { a: 1, b: 2 }],
    [
      { a: 1, b: undefined },
      { a: 1, c: 2 },
    ],
    [{ a: undefined }, { b: undefined }],
    [{ a: { b: 1 } }, { a: { b: 2 } }],
    [[[1]], [[2]]],
  ])('%j and %j are not', (a, b) => {
    expect(sameJson(a, b)).toBe(false);
    expect(sameJson(b, a)).toBe(false);
  });
});
