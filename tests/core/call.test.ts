import { describe, expect, it } from 'vitest';
import { alike, type Call, called } from '../../core/call.ts';
import { Gap } from '../../core/figure.ts';

const call = (same?: Call['same']): Call => ({ of: (...xs) => xs, count: 1, open: false, same });
const gap = Gap.unknown('/a');

describe('what follows cannot tell apart', () => {
  it('numbers that are equal, but for the signs of nought, which a quotient tells', () => {
    expect(alike(call(), 2, 2)).toBe(true);
    expect(alike(call(), 0, 0)).toBe(true);
    expect(alike(call(), -0, -0)).toBe(true);
    expect(alike(call(), 2, 3)).toBe(false);
    expect(alike(call(), 0, -0)).toBe(false);
    expect(alike(call(), -0, 0)).toBe(false);
    expect(alike(call(), 1, gap)).toBe(false);
  });
  it('one object from itself, and another only where the step says so', () => {
    const [a, b] = [{ r: 1 }, { r: 1 }];
    expect(alike(call(), a, a)).toBe(true);
    expect(alike(call(), a, b)).toBe(false);
    expect(
      alike(
        call(() => true),
        a,
        b,
      ),
    ).toBe(true);
    expect(
      alike(
        call(() => false),
        a,
        b,
      ),
    ).toBe(false);
    expect(
      alike(
        call(() => false),
        a,
        a,
      ),
    ).toBe(true);
  });
  it('a gap from itself alone: no step is asked about one', () => {
    const never = call(() => {
      throw new Error('asked about a gap');
    });
    expect(alike(never, gap, gap)).toBe(true);
    expect(alike(never, gap, { r: 1 })).toBe(false);
    expect(alike(never, { r: 1 }, gap)).toBe(false);
    expect(alike(never, gap, Gap.unknown('/a'))).toBe(false);
  });
});

describe('a call', () => {
  const cells = [10, 11, 12, 13, 14, 15, 16, 17, 18, 19, gap, Gap.none('it is virtual')];
  const list = (...xs: unknown[]): unknown => xs;
  const places = (...all: number[]): Int32Array => Int32Array.from([99, ...all]);
  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])('of %d needs gets their values in their order', (count) => {
    const own = Array.from({ length: count }, (_, i) => (3 * i + 2) % 10);
    for (const open of [true, false]) expect(called(list, count, open, places(...own), 1, cells)).toEqual(own.map((place) => 10 + place));
  });
  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])('of %d needs passes a gap on wherever it stands, unless it is open', (count) => {
    for (let at = 0; at < count; at++) {
      const own = Array.from({ length: count }, (_, i) => (i === at ? 10 : i % 10));
      expect(called(list, count, false, places(...own), 1, cells), `at ${at}`).toBe(gap);
      expect((called(list, count, true, places(...own), 1, cells) as unknown[])[at]).toBe(gap);
    }
  });
  it('tells of several gaps what they come to', () => {
    expect(called(list, 2, false, places(10, 11), 1, cells)).toBe(cells[11]);
    expect(called(list, 3, false, places(11, 0, 10), 1, cells)).toBe(cells[11]);
    expect(called(list, 5, false, places(0, 10, 1, 2, 11), 1, cells)).toBe(cells[11]);
  });
});
