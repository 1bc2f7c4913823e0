import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainIndex } from '../../../core/glass/medium.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { closePencil } from '../../../core/trace/coddington.ts';
import { type Lens, scaled } from '../../../core/trace/lens.ts';
import { mappingFactor } from '../../../core/trace/mapping.ts';
import { type Prescription, prescription } from '../../../core/trace/prescription.ts';
import { THROUGH } from '../../../core/trace/rays.ts';
import { ANY_NM, lensesUpTo } from '../support/arbitrary-lens.ts';
import { between } from '../support/arbitrary-train.ts';
import { part } from './bundles.ts';

const powered = lensesUpTo(30).filter((lens) => Math.abs(cardinal(prescription(lens, ANY_NM)).matrix.c) > 2e-3);

/** Height of the chief ray on the paraxial focal plane; undefined where it is lost. */
function radius(lens: Prescription, pupilDistanceMm: number, slope: number): number | undefined {
  const pencil = closePencil(lens, { pupilDistanceMm, slope });
  if (pencil.status !== THROUGH) return undefined;
  return pencil.y + ((cardinal(lens).backFocalLengthMm - pencil.z) * pencil.M) / pencil.N;
}

const sineSquare = (slope: number): number => (slope * slope) / (1 + slope * slope);

describe('the mapping factor', () => {
  it('is f² d(sin²θ)/d(r²), by tracing beside the chief ray', () => {
    let held = 0;
    fc.assert(
      fc.property(powered, between(-15, 60), between(0.02, 0.25), (lens, pupilDistanceMm, slope) => {
        const prescribed = prescription(lens, ANY_NM);
        const f = cardinal(prescribed).effectiveFocalLengthMm;
        const got = mappingFactor(prescribed, pupilDistanceMm, slope, f);
        const ratio = (step: number): number => {
          const [less, more] = [slope - step, slope + step].map((t) => radius(prescribed, pupilDistanceMm, t));
          if (less === undefined || more === undefined) return Number.NaN;
          return (f * f * (sineSquare(slope + step) - sineSquare(slope - step))) / (more * more - less * less);
        };
        const due = (4 * ratio(5e-5) - ratio(1e-4)) / 3;
        // Where the picture folds over there is no such number.
        if (!(due > 0.01 && due < 100)) return;
        held++;
        expect(Math.abs(got / due - 1), `${got}, rays ${due}`).toBeLessThan(1e-6);
      }),
      part(0.4, 181),
    );
    if (process.env.RUNS === undefined) expect(held).toBeGreaterThan(60);
  });

  it('does not change with the size of it all', () => {
    const lens: Lens = { radiiMm: [60, -60], thicknessesMm: [5], media: [plainIndex(1.5)], semiAperturesMm: [20, 20] };
    const at = (k: number): number => {
      const small = prescription(scaled(lens, k), ANY_NM);
      return mappingFactor(small, 30 * k, 0.2, cardinal(small).effectiveFocalLengthMm);
    };
    // A hundredth as large: a focal length of 0.6 mm.
    expect(at(0.01)).toBeCloseTo(at(1), 12);
  });

  it('is 0 where the picture folds over: a chief ray farther out lands farther in', () => {
    // A ball lens far behind the pupil: its rim bends so much that heights on the focal plane come back.
    const ball = prescription({ radiiMm: [20, -20], thicknessesMm: [40], media: [plainIndex(1.5)], semiAperturesMm: [20, 20] }, ANY_NM);
    const f = cardinal(ball).effectiveFocalLengthMm;
    let [folded, plain] = [0, 0];
    for (let height = 1; height < 17; height++) {
      const slope = height / 150;
      const [less, more] = [slope - 1e-4, slope + 1e-4].map((t) => Math.abs(radius(ball, 130, t) as number)) as [number, number];
      const got = mappingFactor(ball, 130, slope, f);
      if (more > less) {
        plain++;
        expect(got).toBeGreaterThan(0);
      } else {
        folded++;
        expect(got).toBe(0);
      }
    }
    expect(Math.min(folded, plain)).toBeGreaterThan(2);
  });

  it('is 1 on the axis and the same on both sides', () => {
    fc.assert(
      fc.property(powered, between(-15, 60), between(0, 0.2), (lens, distance, slope) => {
        const prescribed = prescription(lens, ANY_NM);
        const f = cardinal(prescribed).effectiveFocalLengthMm;
        expect(mappingFactor(prescribed, distance, 0, f)).toBeCloseTo(1, 9);
        expect(mappingFactor(prescribed, distance, -slope, f)).toBeCloseTo(mappingFactor(prescribed, distance, slope, f), 9);
      }),
      part(0.1, 182),
    );
  });

  it('is cos⁴θ where r = f tan θ: a thin lens with the pupil at it, which bends its middle not at all', () => {
    const lens = prescription({ radiiMm: [80, -80], thicknessesMm: [0], media: [plainIndex(1.5)], semiAperturesMm: [9, 9] }, ANY_NM);
    const f = cardinal(lens).effectiveFocalLengthMm;
    for (const slope of [0.05, 0.2, 0.6]) expect(mappingFactor(lens, 0, slope, f)).toBeCloseTo((1 + slope * slope) ** -2, 12);
  });

  it('is cos⁴θ for a shell with the pupil in its middle, which bends no chief ray', () => {
    const shell: Lens = { radiiMm: [-30, -36], thicknessesMm: [6], media: [plainIndex(1.5)], semiAperturesMm: [9, 9] };
    const lens = prescription(shell, ANY_NM);
    const f = cardinal(lens).effectiveFocalLengthMm;
    for (const slope of [0.05, 0.3, 1]) expect(mappingFactor(lens, 30, slope, f)).toBeCloseTo((1 + slope * slope) ** -2, 12);
  });

  it('is 0 where no chief ray comes through, and where the picture folds over', () => {
    const lens = prescription({ radiiMm: [20, Infinity], thicknessesMm: [5], media: [plainIndex(1.6)], semiAperturesMm: [9, 9] }, ANY_NM);
    const f = cardinal(lens).effectiveFocalLengthMm;
    expect(mappingFactor(lens, 100, 0.3, f)).toBe(0);
    const slopes = Array.from({ length: 60 }, (_, i) => 0.005 * i);
    const heights = slopes.map((slope) => radius(lens, 62, slope));
    const folded = slopes.filter((_, i) => i > 0 && Math.abs(heights[i] as number) < Math.abs(heights[i - 1] as number));
    expect(folded.length).toBeGreaterThan(3);
    for (const slope of folded.slice(1)) expect(mappingFactor(lens, 62, slope, f)).toBe(0);
  });
});
