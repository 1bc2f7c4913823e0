import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { paraxialRay, rayPair } from '../../../core/trace/paraxial-rays.ts';
import { prescription } from '../../../core/trace/prescription.ts';
import { ANY_NM, lensesUpTo } from '../support/arbitrary-lens.ts';
import { between } from '../support/arbitrary-train.ts';
import { anyLit } from '../support/lit-lens.ts';
import { part } from './bundles.ts';

describe('a paraxial ray', () => {
  it("runs straight between surfaces, keeps n i at each, and leaves as the lens's matrix says", () => {
    fc.assert(
      fc.property(lensesUpTo(30), between(-10, 10), between(-0.3, 0.3), (lens, height, slope) => {
        const prescribed = prescription(lens, ANY_NM);
        const ray = paraxialRay(prescribed, height, slope);
        const last = prescribed.count - 1;
        expect([ray.height.length, ray.slope.length, ray.incidence.length]).toEqual([last + 1, last + 2, last + 1]);
        const errors: number[] = [];
        for (let k = 0; k <= last; k++) {
          const [h, before, behind] = [ray.height[k], ray.slope[k], ray.slope[k + 1]] as [number, number, number];
          const c = prescribed.curvature[k] as number;
          if (k > 0) errors.push(h - (ray.height[k - 1] as number) - before * (lens.thicknessesMm[k - 1] as number));
          errors.push((prescribed.index[k] as number) * (before + h * c) - (ray.incidence[k] as number));
          errors.push((prescribed.index[k + 1] as number) * (behind + h * c) - (ray.incidence[k] as number));
        }
        const { a, b, c, d } = cardinal(prescribed).matrix;
        errors.push((ray.height[last] as number) - a * height - b * slope, (ray.slope[last + 1] as number) - c * height - d * slope);
        expect(Math.max(...errors.map(Math.abs))).toBeLessThan(1e-11);
      }),
      part(0.3, 151),
    );
  });
});

describe('marginal and chief ray', () => {
  it('come from object and pupil as they stand, and keep their invariant behind every surface', () => {
    fc.assert(
      fc.property(anyLit, ({ lens, light }) => {
        const { pupilRadiusMm, pupilDistanceMm, slope, objectDistanceMm = Number.POSITIVE_INFINITY } = light;
        const prescribed = prescription(lens, ANY_NM);
        const { marginal, chief } = rayPair(prescribed, light);
        // Back to the pupil: the edge, and the middle.
        const back = ({ height, slope }: typeof marginal, by: number): number => (height[0] as number) - by * (slope[0] as number);
        expect(back(marginal, pupilDistanceMm)).toBeCloseTo(pupilRadiusMm, 12);
        expect(back(chief, pupilDistanceMm)).toBeCloseTo(0, 12);
        expect(chief.slope[0]).toBe(slope);
        if (Number.isFinite(objectDistanceMm)) expect(back(marginal, objectDistanceMm)).toBeCloseTo(0, 12);
        else expect(marginal.slope[0]).toBe(0);
        for (let k = 0; k < prescribed.count; k++) {
          const invariant =
            (prescribed.index[k + 1] as number) *
            ((chief.slope[k + 1] as number) * (marginal.height[k] as number) -
              (marginal.slope[k + 1] as number) * (chief.height[k] as number));
          expect(Math.abs(invariant - pupilRadiusMm * slope)).toBeLessThan(1e-12);
        }
      }),
      part(0.2, 152),
    );
  });

  it('take light without an object distance for collimated', () => {
    const lens = prescription(
      { radiiMm: [50, -50], thicknessesMm: [4], media: [{ name: '', rangeNm: [1, 2], indexAt: () => 1.5 }], semiAperturesMm: [9, 9] },
      ANY_NM,
    );
    const light = { pupilRadiusMm: 2, pupilDistanceMm: 30, slope: 0.1 };
    expect(rayPair(lens, light)).toEqual(rayPair(lens, { ...light, objectDistanceMm: Number.POSITIVE_INFINITY }));
  });
});
