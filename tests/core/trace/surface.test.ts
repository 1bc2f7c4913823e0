import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heightBetween, sag } from '../../../core/trace/surface.ts';
import { between } from '../support/arbitrary-train.ts';
import { part } from './bundles.ts';

const anyRadius = fc.oneof(
  { weight: 6, arbitrary: fc.tuple(between(6, 300), fc.constantFrom(-1, 1)).map(([r, sign]) => sign * r) },
  { weight: 1, arbitrary: fc.constant(Number.POSITIVE_INFINITY) },
);

describe('the sag of a sphere', () => {
  it('lies on the sphere, on the side of its vertex', () => {
    fc.assert(
      fc.property(between(5, 400), fc.constantFrom(-1, 1), between(0, 1), (size, sign, share) => {
        const [r, h] = [sign * size, share * size];
        const s = sag(r, h);
        expect((r - s) ** 2 + h * h).toBeCloseTo(r * r, 7);
        expect(Math.abs(s)).toBeLessThanOrEqual(size * (1 + 1e-15));
        expect(s * sign).toBeGreaterThanOrEqual(0);
      }),
      part(0.2, 121),
    );
  });

  it('is nothing on a plane, and keeps its digits on a weak surface', () => {
    expect(sag(Number.POSITIVE_INFINITY, 7)).toBe(0);
    expect(sag(Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY)).toBe(0);
    // h²/2r + h⁴/8r³: the next term is too small to see.
    const [r, h] = [1e8, 10];
    expect(sag(r, h) / ((h * h) / (2 * r)) - 1).toBeCloseTo((h * h) / (4 * r * r), 15);
  });
});

describe('the height between two surfaces', () => {
  /** By looking, ever closer, for the lowest height at which nothing is left. */
  function looked(before: number, after: number, thickness: number): number {
    const left = (h: number): number => thickness + sag(after, h) - sag(before, h);
    let [low, high] = [0, Math.min(Math.abs(before), Math.abs(after))];
    if (high === Number.POSITIVE_INFINITY) return high;
    for (let turn = 0; turn < 4; turn++) {
      const step = (high - low) / 300;
      let h = low;
      while (h < high && left(Math.min(high, h + step)) >= 0) h += step;
      if (h >= high) return high;
      [low, high] = [h, Math.min(high, h + step)];
    }
    return low;
  }

  it('is what looking for it finds, where the surfaces meet and where one ends before they do', () => {
    let [met, ended] = [0, 0];
    fc.assert(
      fc.property(anyRadius, anyRadius, between(0.1, 15), (before, after, thickness) => {
        const got = heightBetween(before, after, thickness);
        const due = looked(before, after, thickness);
        if (due === Number.POSITIVE_INFINITY) {
          expect(got).toBe(due);
          return;
        }
        expect(Math.abs(got - due)).toBeLessThan(1e-6 * Math.max(1, due));
        if (due < Math.min(Math.abs(before), Math.abs(after))) met++;
        else ended++;
      }),
      part(0.4, 122),
    );
    if (process.env.RUNS === undefined) expect(Math.min(met, ended)).toBeGreaterThan(20);
  });

  it('follows from the circle where a sphere meets a plane', () => {
    expect(heightBetween(50, Number.POSITIVE_INFINITY, 4)).toBeCloseTo(Math.sqrt(50 ** 2 - 46 ** 2), 10);
    expect(heightBetween(Number.POSITIVE_INFINITY, -50, 4)).toBeCloseTo(Math.sqrt(50 ** 2 - 46 ** 2), 10);
    expect(heightBetween(Number.POSITIVE_INFINITY, 50, 4)).toBe(50);
  });

  it('is, to the digit, the radius of what ends before they meet: a ball on a plate that it only just touches', () => {
    for (const r of [0.3, 1.2, 26, 33.1]) {
      expect(heightBetween(r, Number.POSITIVE_INFINITY, r)).toBe(r);
      expect(heightBetween(Number.POSITIVE_INFINITY, -r, 2 * r)).toBe(r);
    }
  });

  it('is found however small it is', () => {
    // Two spheres of 5 mm that overlap by 2 (5 - √(25 - 0.36)): they meet 0.6 mm off the axis.
    expect(heightBetween(5, -5, 2 * (5 - Math.sqrt(24.64)))).toBeCloseTo(0.6, 12);
  });

  it('is nothing where the surfaces touch in the middle and cross, everything between two planes', () => {
    expect(heightBetween(50, -50, 0)).toBeLessThan(1e-12);
    expect(heightBetween(50, -50, -1)).toBeLessThan(1e-12);
    expect(heightBetween(Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 3)).toBe(Number.POSITIVE_INFINITY);
    expect(heightBetween(Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 0)).toBe(Number.POSITIVE_INFINITY);
    expect(heightBetween(Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, -3)).toBe(0);
  });
});
