import { describe, expect, test } from 'vitest';
import { bestFocus, type FieldPoint, greatest, placesAbout, spreadOf, worseThroughFocus } from '../../../core/contrast/field.ts';
import type { Pairs } from '../../../core/contrast/pairs.ts';

/** A fifth of the contrast is gone at `reach` where the variance has grown to 0.2 / 2π². */
const rateFor = (reach: number): number => Math.sqrt(0.2 / (2 * Math.PI ** 2)) / reach;

/** One pair of rays with its best place at `peak`, and `focus` told as the steadiest: contrast is `cos 2π rate (z - peak)`. */
const pairAt = (peak: number, reach: number, focus = peak): Pairs => ({
  count: 1,
  phase: Float64Array.of(-rateFor(reach) * peak),
  rate: Float64Array.of(rateFor(reach)),
  share: Float64Array.of(1),
  perfect: 1,
  real: true,
  steady: { focus, least: 0, growth: rateFor(reach) ** 2 },
  mostSpread: 1.25,
});
const pointOf = (sagittal: Pairs, tangential = sagittal): FieldPoint => ({ slope: 0, sagittal, tangential });

describe('the places of the focus that are looked at', () => {
  test('go past the steadiest ones of both directions, in steps of the finer one', () => {
    // -2.01 x 1 and 3 + 2.01 x .5; steps of .5 / 4: 6.015 / .125 = 48.1, so 49 steps and 50 places.
    const range = placesAbout([pointOf(pairAt(0, 1), pairAt(3, 0.5))], 2.01, 4);
    expect(range.from).toBeCloseTo(-2.01, 12);
    expect(range.count).toBe(50);
    expect(range.step).toBeCloseTo(6.015 / 49, 12);
  });

  test('take in every point, in whatever order', () => {
    const points = [pointOf(pairAt(0, 1)), pointOf(pairAt(-4, 2)), pointOf(pairAt(1, 1))];
    for (const order of [points, points.toReversed()]) {
      const range = placesAbout(order, 1, 2.03);
      expect(range.from).toBeCloseTo(-6, 12);
      expect(range.from + range.step * (range.count - 1)).toBeCloseTo(2, 12);
      // 8 over 1 / 2.03 is 16.2.
      expect(range.count).toBe(18);
    }
  });

  test('are no more than 400, however far they lie apart', () => {
    const range = placesAbout([pointOf(pairAt(0, 1), pairAt(1000, 1))], 1, 3);
    expect(range.count).toBe(400);
    expect(range.from).toBeCloseTo(-1, 12);
    expect(range.from + 399 * range.step).toBeCloseTo(1001, 9);
  });
});

describe('the contrast of a point', () => {
  test('is that of the worse direction at each place', () => {
    const point = pointOf(pairAt(-0.5, 1), pairAt(0.5, 1));
    const found = worseThroughFocus(point, { from: -1, step: 0.5, count: 5 });
    const away = [1.5, 1, 0.5, 1, 1.5];
    for (const [k, c] of found.entries()) expect(c).toBeCloseTo(Math.cos(2 * Math.PI * rateFor(1) * (away[k] as number)), 12);
  });
});

describe('the one best focus', () => {
  test('is found to a 48th of the distance that costs a fifth, wherever it lies within that distance', () => {
    for (let peak = -0.9; peak <= 0.9; peak += 0.06) {
      const { focusMm, contrast } = bestFocus([pointOf(pairAt(2 * peak, 2, 0))]);
      expect(Math.abs(focusMm / 2 - peak)).toBeLessThan(1 / 48 + 1e-9);
      expect(contrast).toBeCloseTo(Math.cos(2 * Math.PI * rateFor(1) * (focusMm / 2 - peak)), 12);
    }
  });

  test('of several points is where the worst of them is best: half-way between the outermost', () => {
    const points = [-0.6, 0.2, 0.1, 0.8].map((peak) => pointOf(pairAt(peak, 1)));
    for (const order of [points, points.toReversed()]) {
      const { focusMm, contrast } = bestFocus(order);
      expect(Math.abs(focusMm - 0.1)).toBeLessThan(1 / 40);
      expect(contrast).toBeCloseTo(Math.cos(2 * Math.PI * rateFor(1) * (0.7 + Math.abs(focusMm - 0.1))), 9);
    }
  });

  test('of none is the first place of all, without contrast', () => expect(bestFocus([])).toEqual({ focusMm: 0, contrast: 0 }));
});

describe('some places of the focus', () => {
  test('spread from the nearest to the farthest, and not at all where there are none', () => {
    expect(spreadOf([3, -2, 1])).toBe(5);
    expect(spreadOf([-7, -4])).toBe(3);
    expect(spreadOf([0.5])).toBe(0);
    expect(spreadOf([])).toBe(0);
  });

  test('are best at the first of the greatest', () => {
    expect(greatest(Float64Array.of(5, 3))).toBe(0);
    expect(greatest(Float64Array.of(1, 4, 3))).toBe(1);
    expect(greatest(Float64Array.of(1, 3, 4))).toBe(2);
    expect(greatest(Float64Array.of(1, 2, 2, 0))).toBe(1);
    expect(greatest(Float64Array.of(2, 2))).toBe(0);
  });
});
