import { describe, expect, it } from 'vitest';
import { AIR } from '../../../../core/glass/medium.ts';
import { bending, type Task } from '../../../../core/lens/made/design.ts';
import { meritFor } from '../../../../core/lens/made/merit.ts';
import { residualsOf } from '../../../../core/lens/made/residuals.ts';
import { workpiece } from '../../../../core/lens/made/workpiece.ts';
import { workshopLimits } from '../../../../core/lens/made/workshop.ts';
import { cardinal } from '../../../../core/trace/cardinal.ts';
import { type Parabola, valueAt } from '../../../../core/trace/focus.ts';
import { sag } from '../../../../core/trace/surface.ts';
import { blursAtJob } from '../made-support.ts';
import { glassOf, lensOf } from './media.ts';

const CROWN = glassOf(1.5, 60);
const FLINT = glassOf(1.65, 32);
const TASK: Task = {
  focalLengthMm: 200,
  limits: workshopLimits(40),
  job: { stopsMm: [30, 70], stopRadiusMm: 5, cornerSlope: 0.08 },
};

describe('what is left of a lens’s faults', () => {
  it.each([
    ['single, bent evenly', 'singlet', [CROWN], [0]],
    ['single, hollow toward the stop', 'singlet', [CROWN], [-3]],
    ['cemented', 'cemented-achromat', [CROWN, FLINT], [0.5]],
    ['spaced', 'air-spaced-achromat', [FLINT, CROWN], [2.5, 0.5]],
  ] as const)('%s: blurs, colour and glass by another route', (_, kind, glasses, at) => {
    const bent = bending(kind, glasses, TASK);
    expect(bent.shape(at)).toBe(true);
    const { work } = bent;
    const left = residualsOf(work, TASK);
    if (!left) throw new Error('lost');
    const lens = lensOf(work, 20);
    const { picture, worst, middle } = blursAtJob(lens, TASK.job);
    expect(left.pictureRmsUm / picture).toBeCloseTo(1, 2);
    expect(left.worstRmsUm / worst).toBeCloseTo(1, 2);
    expect(left.sphericalRmsUm / middle).toBeCloseTo(1, 2);
    const [d, F, C] = [work.d, work.F, work.C].map((colour) => cardinal(colour).backFocalLengthMm) as [number, number, number];
    expect(left.axialColourMm).toBeCloseTo(F - C, 9);
    expect(left.secondaryColourMm).toBeCloseTo(d - (F + C) / 2, 9);
    const pieces = work.media.flatMap((medium, i) => (medium === AIR ? [] : [i]));
    expect(left.centreThicknessesMm).toEqual(pieces.map((i) => lens.thicknessesMm[i]));
    expect(left.edgeThicknessesMm).toHaveLength(glasses.length);
    for (const [k, i] of pieces.entries()) {
      const edge = (lens.thicknessesMm[i] as number) + sag(lens.radiiMm[i + 1] as number, 21) - sag(lens.radiiMm[i] as number, 21);
      expect(left.edgeThicknessesMm[k]).toBeCloseTo(edge, 10);
    }
  });

  it('is worst in the middle of a picture whose corner and middle are as far from its plane, but the corner’s beam narrower', () => {
    const task: Task = { ...TASK, job: { stopsMm: [70], stopRadiusMm: 3, cornerSlope: 0.16 } };
    const bent = bending('singlet', [CROWN], task);
    bent.shape([-1]);
    const { worst } = blursAtJob(lensOf(bent.work, 20), task.job);
    expect(residualsOf(bent.work, task)?.worstRmsUm).toBeCloseTo(worst, 1);
    const picture = meritFor(task.job).pictureOf(bent.work.d, 70, 200)?.at as number;
    const blur = (slope: number) => valueAt(meritFor(task.job).spotOf(bent.work.d, 70, slope, 200) as Parabola, picture);
    expect(blur(0)).toBeGreaterThan(1.01 * blur(0.16));
    expect((residualsOf(bent.work, task)?.worstRmsUm as number) / (1000 * Math.sqrt(blur(0)))).toBeCloseTo(1, 6);
  });

  it('is nothing for a plate so thin that a beam only passes: colour, and blur on a plane far away', () => {
    // A lens of a kilometre: third-order faults go with the cube of the beam over the square of that.
    const work = workpiece([glassOf(1.5, 1e9)]);
    work.d.curvature.set([1e-6, -1e-6]);
    work.d.gap.set([0, 1]);
    const left = residualsOf(work, { ...TASK, job: { stopsMm: [30], stopRadiusMm: 5, cornerSlope: 1e-6 } });
    expect(left?.sphericalRmsUm).toBeLessThan(1e-3);
    expect(left?.pictureRmsUm).toBeLessThan(1e-3);
    expect(left?.worstRmsUm).toBeLessThan(1e-3);
    expect(Math.abs(left?.axialColourMm as number)).toBeLessThan(0.01);
    expect(left?.centreThicknessesMm).toEqual([1]);
  });

  it('is not told where a beam of the job is lost: at the corner, at the second stop', () => {
    const bent = bending('singlet', [CROWN], TASK);
    bent.shape([0]);
    const high = (mm: number) => {
      const clear = bent.work.d.clear.map(() => mm * mm);
      return { ...bent.work, d: { ...bent.work.d, clear } };
    };
    // 70 mm away 5.6 mm and the stop's 5: 10.6 mm, less a rim that no ray of the rule stands on.
    expect(residualsOf(high(11), TASK)).toBeDefined();
    expect(residualsOf(high(9.5), TASK)).toBeUndefined();
    // The rule's outermost field stands at 0.94 of the corner, whose own beam alone is lost here.
    const between = high(9.55);
    expect(meritFor(TASK.job).pictureOf(between.d, 70, 200)).toBeDefined();
    expect(residualsOf(between, TASK)).toBeUndefined();
    expect(residualsOf(high(9.5), { ...TASK, job: { ...TASK.job, stopsMm: [30] } })).toBeDefined();
    expect(residualsOf(high(2), TASK)).toBeUndefined();
  });
});
