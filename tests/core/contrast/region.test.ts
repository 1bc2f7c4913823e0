import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { overlapOf, regionOf } from '../../../core/contrast/region.ts';
import { type Discs, sharedArea } from '../../../core/pupil/discs.ts';
import { between, seeded } from '../support/arbitrary-train.ts';

const sum = (values: Float64Array): number => values.reduce((total, v) => total + v, 0);

/** One to four discs that share something, seen from the first. */
const discs: fc.Arbitrary<Discs> = fc
  .array(fc.record({ walk: between(-30, 30), radius: between(3, 8) }), { minLength: 1, maxLength: 4 })
  .map((list) => ({ walk: [0, ...list.map((d) => d.walk)], radius: [5, ...list.map((d) => d.radius)] }));

describe('the part of the pupil that a field point fills', () => {
  test('has the area that the discs share in closed form', () => {
    let seen = 0;
    fc.assert(
      fc.property(discs, between(0, 0.2), (of, slope) => {
        const region = regionOf(of, slope);
        const [exact] = sharedArea(of, slope);
        if (!region) return exact < 1e-9;
        seen++;
        // Corners where arcs meet are what the rule is least good at.
        expect(Math.abs(sum(overlapOf(region, 0, 'tangential').area) - exact)).toBeLessThan(4e-3 * exact + 1e-3);
      }),
      seeded(301),
    );
    expect(seen).toBeGreaterThan(10);
  });

  test('overlaps its own shifted copy along the field axis in what both sets of discs share', () => {
    let seen = 0;
    fc.assert(
      fc.property(discs, between(0.02, 0.2), between(0, 6), (of, slope, shear) => {
        const region = regionOf(of, slope);
        if (!region) return;
        const shift = shear / slope / 2;
        const both = { walk: [...of.walk.map((w) => w + shift), ...of.walk.map((w) => w - shift)], radius: [...of.radius, ...of.radius] };
        const [exact] = sharedArea(both, slope);
        if (exact > 0.1) seen++;
        expect(Math.abs(sum(overlapOf(region, shear, 'tangential').area) - exact)).toBeLessThan(6e-3 * exact + 3e-2);
      }),
      seeded(302),
    );
    expect(seen).toBeGreaterThan(10);
  });

  test('of one disc alone is cut alike in both directions, to 2e-4 of the whole', () => {
    const region = regionOf({ walk: [0], radius: [5] }, 0.1);
    if (!region) throw new Error('a whole pupil is no region');
    for (const shear of [0, 0.5, 2, 5, 8, 9.5, 10, 12]) {
      const v = Math.min(1, shear / 10);
      const exact = 2 * 25 * (Math.acos(v) - v * Math.sqrt(1 - v * v));
      for (const direction of ['sagittal', 'tangential'] as const)
        expect(Math.abs(sum(overlapOf(region, shear, direction).area) - exact)).toBeLessThan(2e-4 * Math.PI * 25);
    }
  });

  test('lists pairs whose ends both lie inside', () => {
    const of = { walk: [0, 25], radius: [5, 6] };
    const region = regionOf(of, 0.12);
    if (!region) throw new Error('these discs share something');
    const inside = (x: number, y: number): boolean =>
      of.radius.every((r, i) => Math.hypot(x, y - (of.walk[i] as number) * 0.12) <= r + 1e-9);
    for (const [direction, dx, dy] of [
      ['sagittal', 1.5, 0],
      ['tangential', 0, 1.5],
    ] as const) {
      const overlap = overlapOf(region, 3, direction);
      expect(overlap.count).toBeGreaterThan(0);
      for (let i = 0; i < overlap.count; i++)
        for (const sign of [-1, 1]) expect(inside((overlap.x[i] as number) + sign * dx, (overlap.y[i] as number) + sign * dy)).toBe(true);
    }
  });

  test('is as wide as the crossing of two borders, and has its area, however small it is', () => {
    // Two discs of 5 mm whose centres are 9.98 mm apart: they cross at √(25 - 4.99²) = 0.316 from the line of centres.
    const region = regionOf({ walk: [0, 9.98], radius: [5, 5] }, 1);
    if (!region) throw new Error('these discs share something');
    expect(region.halfWidth).toBeCloseTo(Math.sqrt(25 - 4.99 ** 2), 9);
    const exact = 2 * (25 * Math.acos(4.99 / 5) - 4.99 * Math.sqrt(25 - 4.99 ** 2));
    expect(sum(overlapOf(region, 0, 'tangential').area) / exact).toBeCloseTo(1, 2);
    expect(sum(overlapOf(region, 0.6, 'sagittal').area)).toBeGreaterThan(0);
  });

  test('of discs about one middle is as wide as the narrowest', () => {
    expect(regionOf({ walk: [0, 0], radius: [5, 8] }, 0.1)?.halfWidth).toBeCloseTo(5, 9);
    expect(regionOf({ walk: [0, 0, 0], radius: [8, 5, 6] }, 0.1)?.halfWidth).toBeCloseTo(5, 9);
  });

  test('lists as many pairs as nodes, seven to a side where no more are asked for, and none past the last', () => {
    const region = regionOf({ walk: [0], radius: [5] }, 0.1);
    if (!region) throw new Error('a whole pupil is no region');
    for (const direction of ['sagittal', 'tangential'] as const) {
      expect(overlapOf(region, 3, direction).count).toBe(49);
      expect(overlapOf(region, 3, direction, 11).count).toBe(121);
      expect(overlapOf(region, 9.9, direction).count).toBe(49);
      for (const shear of [10, 10.5, 14])
        expect(overlapOf(region, shear, direction)).toMatchObject({ count: 0, area: new Float64Array(0) });
    }
  });

  test('is nothing where the discs share nothing', () => {
    expect(regionOf({ walk: [0, 100], radius: [5, 5] }, 0.2)).toBeUndefined();
  });
});
