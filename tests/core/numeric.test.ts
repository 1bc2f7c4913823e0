import { describe, expect, it } from 'vitest';
import { crossing, fallingRoot, narrowing } from '../../core/numeric.ts';

/** Where a search asks, in order, and what it comes to. */
function fallingAsks(at: (x: number) => readonly [number, number], low: number, high: number) {
  const asked: number[] = [];
  const root = fallingRoot(
    (x, into) => {
      asked.push(x);
      [into.value, into.rate] = at(x);
    },
    low,
    high,
  );
  return { asked, root };
}

describe('the root of a falling function', () => {
  const three = (rate: number) => (x: number) => [3 - x, rate] as const;

  it("of a straight line is where Newton's first step ends, and there it stops", () => {
    expect(fallingAsks(three(-1), 0, 10)).toEqual({ asked: [5, 3], root: 3 });
  });

  it('is looked for by halves where the rate leads out of the bracket, on either side', () => {
    // From 5 to 5 - (-2)/1 = 7 and from 2.5 to 2.5 - 0.5/1 = 2: neither is within [2.5, 5].
    expect(fallingAsks(three(1), 0, 10).asked.slice(0, 4)).toEqual([5, 2.5, 3.75, 3.125]);
  });

  it('is not looked for at the ends again', () => {
    // Steps of 5 down from 5 and of 5 up from 5.
    expect(fallingAsks((x) => (x === 5 ? [-5, -1] : three(0)(x)), 0, 10).asked.slice(0, 2)).toEqual([5, 2.5]);
    expect(fallingAsks((x) => (x === 5 ? [5, -1] : [7 - x, 0]), 0, 10).asked.slice(0, 2)).toEqual([5, 7.5]);
  });

  it('is good to 1e-13 of the larger end, whatever its sign', () => {
    // Halves alone (rate 0): after k places the next step is 1001 / 2^(k+1) long, which is 1e-10 at k = 43.
    const { asked, root } = fallingAsks((x) => [0.7 - x, 0], -1000, 1);
    expect(asked).toHaveLength(43);
    expect(Math.abs(root - 0.7)).toBeLessThan(2e-10);
    expect(fallingAsks((x) => [-0.7 - x, 0], -1, 1000).asked).toHaveLength(43);
  });

  it('is taken as found by a step of just that length', () => {
    expect(fallingAsks((x) => [1e-13 - x, -1], -1, 1)).toEqual({ asked: [0], root: 1e-13 });
  });

  it('is given up after 80 places, with a rate far too steep', () => {
    const { asked, root } = fallingAsks(three(-1e6), 0, 10);
    expect(asked).toHaveLength(80);
    expect(root).toBeCloseTo(5 - 80 * 2e-6, 7);
  });

  it('needs no asking where there is no bracket', () => {
    expect(fallingAsks(three(-1), 5, 5)).toEqual({ asked: [], root: 5 });
    expect(fallingAsks(three(-1), 0, 0)).toEqual({ asked: [], root: 0 });
  });
});

/** The places that a search for a margin's crossing asks for. */
function asksOf(margin: (x: number) => number, low: number, high: number, atLow = margin(low), atHigh = margin(high)) {
  const asked: number[] = [];
  const found = crossing(
    (x) => {
      asked.push(x);
      return margin(x);
    },
    low,
    high,
    atLow,
    atHigh,
  );
  return { asked, found };
}

describe('where a margin stops being negative', () => {
  it('is asked for by false position, the stale end halved, each third place in the middle', () => {
    const { asked, found } = asksOf((x) => x * x - 2, 0, 2);
    // Worked by hand: 2 - 2·2/4; from [1, 2] with -1 and 2/2; the middle; from [5/4, 3/2] with -7/16 and (1/4)/2;
    // from [5/4, 13/9] with -(7/16)/2 and 7/81.
    const fifth = 13 / 9 - ((7 / 36) * 32) / 113;
    const first = [1, 1.5, 1.25, 13 / 9, fifth, (fifth + 13 / 9) / 2];
    first.forEach((x, i) => {
      expect(asked[i]).toBeCloseTo(x, 12);
    });
    expect(found).toBeCloseTo(Math.SQRT2, 11);
    expect(found * found).toBeGreaterThanOrEqual(2);
  });

  it('is met at once on a straight line, and then closed in by halves to a relative 1e-12', () => {
    // 3 / 2^40 is the first to be no more than 3e-12; and from the other side 7 / 2^42.
    const up = asksOf((x) => x - 3, 0, 10);
    expect(up.asked.slice(0, 3)).toEqual([3, 1.5, 2.25]);
    expect(up.asked).toHaveLength(41);
    expect(up.found).toBe(3);
    const below = asksOf((x) => x + 3, -10, 0);
    expect(below.asked.slice(0, 2)).toEqual([-3, -6.5]);
    expect(below.asked).toHaveLength(43);
    expect(below.found).toBe(-3);
  });

  it('is found in a bracket that runs downward as well', () => {
    const { asked, found } = asksOf((x) => 2 - x * x, 2, 0);
    expect(asked.slice(0, 2)).toEqual([1, 1.5].map((x) => expect.closeTo(x, 12)));
    expect(found).toBeCloseTo(Math.SQRT2, 11);
    expect(found * found).toBeLessThanOrEqual(2);
  });

  it('is not asked for at an end again, where rounding puts the guess', () => {
    expect(asksOf((x) => x - 3, 0, 10, -1e-300, 1).asked[0]).toBe(5);
  });

  it('is given up after a hundred places, where no relative nearness comes', () => {
    expect(asksOf((x) => (x > 0 ? 1 : -1), 0, 10).asked).toHaveLength(100);
  });

  it('needs no asking where there is no bracket', () => {
    expect(narrowing(0, 0, -1, 1).next()).toEqual({ done: true, value: 0 });
  });
});
