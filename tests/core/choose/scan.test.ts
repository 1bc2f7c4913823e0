import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { metWithin, places } from '../../../core/choose/scan.ts';
import type { Span } from '../../../core/choose/spans.ts';

describe('where a quantity is tried', () => {
  it('is in equal parts of the value, none longer than a fortieth of it and no more than are needed', () => {
    const tried = places([50, 600], 'ratio');
    // ln 12 / ln 1.025 is 100.6.
    expect(tried).toHaveLength(102);
    for (const [i, x] of tried.slice(1).entries()) expect(x / (tried[i] as number)).toBeCloseTo(12 ** (1 / 101), 12);
    expect(places([100, 101], 'ratio')).toHaveLength(17);
    const small = places([0.5, 5], 'ratio');
    // ln 10 / ln 1.025 is 93.2.
    expect(small).toHaveLength(95);
    expect(small[1]).toBeCloseTo(0.5 * 10 ** (1 / 94), 12);
  });
  it('is in equal lengths of a length, and of what begins with nothing', () => {
    for (const tried of [places([20, 100], 'length'), places([0, 80], 'ratio').map((x) => x + 20)]) {
      expect(tried).toHaveLength(81);
      for (const [i, x] of tried.entries()) expect(x).toBeCloseTo(20 + i, 12);
    }
  });
  it('has both ends among its places to the last digit, and a point once', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 100, noNaN: true }),
        fc.double({ min: 0.1, max: 500, noNaN: true }),
        fc.constantFrom('ratio', 'length'),
        (low, more, steps) => {
          const tried = places([low, low + more], steps as 'ratio' | 'length');
          expect([tried[0], tried.at(-1)]).toEqual([low, low + more]);
        },
      ),
      { numRuns: 40, seed: 8 },
    );
    for (const steps of ['ratio', 'length'] as const) expect(places([5, 5], steps)).toEqual([5]);
  });
});

describe('where a margin is met', () => {
  /** Tried at each whole number up to `last`; the spans, and how often the margin was asked for besides. */
  const met = (margin: (x: number) => number, last = 5): { spans: Span[]; asked: number } => {
    let asked = 0;
    const tried = Array.from({ length: last + 1 }, (_, at) => ({ at, margin: margin(at) }));
    const spans = metWithin((x) => {
      asked++;
      return margin(x);
    }, tried);
    return { spans, asked };
  };
  const near = (...spans: Span[]) => spans.map((span) => span.map((x) => expect.closeTo(x, 9)));

  it('is right at the limit too', () => {
    expect(met((x) => -Math.abs(x - 1)).spans).toEqual(near([1, 1]));
    expect(met((x) => Math.min(0, 2 - x)).spans).toEqual(near([0, 2]));
    expect(met((x) => Math.min(0, x - 3)).spans).toEqual(near([3, 5]));
  });

  it('opens and closes where the margin changes its sign, several times if it does', () => {
    expect(met((x) => (x - 1.25) * (4.5 - x)).spans).toEqual(near([1.25, 4.5]));
    expect(met((x) => (x - 1.25) * (x - 3.5)).spans).toEqual(near([0, 1.25], [3.5, 5]));
    // Right at the limit where it is tried, and below it close by.
    expect(met((x) => (x - 2) * (x - 2.1)).spans).toEqual(near([0, 2], [2.1, 5]));
    expect(met(() => 1).spans).toEqual([[0, 5]]);
    expect(met(() => -1).spans).toEqual([]);
  });

  it('is found though it opens and closes between two places, wherever that is', () => {
    // From half-way between the first two places to half-way between the last two.
    for (let i = 1; i < 50; i++) {
      const peak = 0.5 + i / 12.51;
      const half = 2e-6;
      expect(met((x) => half ** 2 - (x - peak) ** 2).spans, `${peak}`).toEqual(near([peak - half, peak + half]));
      expect(met((x) => (x - peak) ** 2 - half ** 2).spans, `${peak}`).toEqual(near([0, peak - half], [peak + half, 5]));
    }
  });

  it('is found at a peak half-way between the first two places, or the last two, though a third lies far below', () => {
    expect(met((x) => 0.2 - (x - 0.5) ** 2, 2).spans).toEqual(near([0.5 - Math.sqrt(0.2), 0.5 + Math.sqrt(0.2)]));
    expect(met((x) => 0.2 - (x - 1.5) ** 2, 2).spans).toEqual(near([1.5 - Math.sqrt(0.2), 1.5 + Math.sqrt(0.2)]));
  });

  it('is found where it is met without anything over', () => {
    expect(met((x) => -Math.max(0, Math.abs(x - 2.3) - 0.2)).spans).toEqual(near([2.1, 2.5]));
  });

  it('is not looked for where nothing tells of a peak', () => {
    const flat = [() => 0, () => -1, () => 2];
    const sloping = [
      (x: number) => -0.1 - 0.1 * x,
      (x: number) => -0.7 + 0.1 * x,
      (x: number) => 0.1 + 0.1 * x,
      (x: number) => 0.7 - 0.1 * x,
    ];
    for (const margin of [...flat, ...sloping]) expect(met(margin).asked).toBe(0);
    // A hollow is no peak, below the limit as above it.
    expect(met((x) => -1 - Math.abs(x - 2)).asked + met((x) => (x - 2) ** 2 - 40).asked).toBe(34);
  });

  it('is looked for at a peak as long as it may rise twice as high as it stands over its neighbours', () => {
    const peaked = (top: number) => met((x) => top - Math.abs(x - 2));
    expect(peaked(-2).asked).toBe(34);
    expect(peaked(-2.001).asked).toBe(0);
    expect(peaked(-2.5).asked).toBe(0);
    expect(met((x) => 2 * (-2.001 - Math.abs(x - 2))).asked).toBe(0);
    expect(met((x) => 2 * (-1.999 - Math.abs(x - 2))).asked).toBe(34);
    // Its lower neighbour counts.
    expect(met((x) => (x < 2 ? -1 - 0.1 * (2 - x) : -1 - (x - 2))).asked).toBe(34);
    expect(met((x) => (x > 2 ? -1 - 0.1 * (x - 2) : -1 - (2 - x))).asked).toBe(34);
  });

  it('stops closing in at the first place that shows it', () => {
    // The golden section of [1, 3] begins at 1.764 and at 2.236; what is asked next is where a straight line meets 0.
    for (const [peak, border] of [
      [1.7639, 1.7629],
      [2.2361, 2.2351],
    ] as const) {
      const asked: number[] = [];
      const margin = (x: number): number => 1e-3 - Math.abs(x - peak);
      metWithin(
        (x) => {
          asked.push(x);
          return margin(x);
        },
        [1, 2, 3].map((at) => ({ at, margin: margin(at) })),
      );
      expect(asked.slice(0, 3)).toEqual([expect.closeTo(1.764, 3), expect.closeTo(2.236, 3), expect.closeTo(border, 3)]);
    }
  });
});
