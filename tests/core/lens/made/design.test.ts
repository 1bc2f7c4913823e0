import { describe, expect, it } from 'vitest';
import { AIR } from '../../../../core/glass/medium.ts';
import { bending, bestBending, type Task } from '../../../../core/lens/made/design.ts';
import { axialColour } from '../../../../core/lens/made/workpiece.ts';
import { workshopLimits } from '../../../../core/lens/made/workshop.ts';
import { cardinal } from '../../../../core/trace/cardinal.ts';
import { blursAtJob } from '../made-support.ts';
import { glassOf, lensOf } from './media.ts';

const CROWN = glassOf(1.5, 60);
const FLINT = glassOf(1.65, 32);
const taskOf = (focalLengthMm: number, clearMm = 38): Task => ({
  focalLengthMm,
  limits: workshopLimits(clearMm),
  job: { stopsMm: [75, 40], stopRadiusMm: 5, cornerSlope: 0.08 },
});

describe('a lens to be bent', () => {
  it.each([
    // Blank of 20 mm: curvatures to 0.025 outside; of power 1 and a little more for thickness, 1.15 * 0.025 f.
    // Offsets 1 and -1. For 200 mm: 5.75 less 1, so the five of any lens bound nothing; 4.75 does.
    ['strong, by the steepest surface', 200, -4.75, 4.75],
    ['of 240 mm, by how far is worth a look', 240, -5, 5],
    // 0.4 * 1000 / 40 for the nearest stop, 28.75 - 1 by the surfaces.
    ['weak, by how hollow its stop wants it', 1000, -10, 10],
  ])('%s: is looked for where it can be', (_, focalLengthMm, low, high) => {
    const [interval, more] = bending('singlet', [CROWN], taskOf(focalLengthMm)).box;
    expect(interval?.[0]).toBeCloseTo(low, 9);
    expect(interval?.[1]).toBeCloseTo(high, 9);
    expect(more).toBeUndefined();
  });

  it('of two pieces: inner surfaces may be steeper, and a spaced one has a bending for each', () => {
    // Powers 60/28 and -32/28: crown's offsets ±(60/28)/0.5/2, flint's ∓(32/28)/0.65/2.
    const [crown, flint] = [60 / 28, 32 / 28 / 0.65 / 2];
    const f = 120;
    const [outside, inside] = [0.5, 0.8].map((part) => (1.15 * f * part) / 20) as [number, number];
    const spaced = bending('air-spaced-achromat', [CROWN, FLINT], taskOf(f)).box;
    expect(spaced).toHaveLength(2);
    // Front at +crown outside, back at -crown inside; front at -flint inside, back at +flint outside.
    const due = [
      [Math.max(-5, -outside - crown, -inside + crown), Math.min(5, outside - crown, inside + crown)],
      [Math.max(-5, -inside + flint, -outside - flint), Math.min(5, inside + flint, outside - flint)],
    ];
    for (const d of [0, 1]) for (const side of [0, 1]) expect(spaced[d]?.[side]).toBeCloseTo(due[d]?.[side] as number, 9);
    const cemented = bending('cemented-achromat', [CROWN, FLINT], taskOf(f)).box;
    expect(cemented).toHaveLength(1);
    // Its last surface stands at -crown + 2 flint.
    const last = -crown + 2 * flint;
    expect(cemented[0]?.[0]).toBeCloseTo(Math.max(-5, -outside - crown, -inside + crown, -outside - last), 9);
    expect(cemented[0]?.[1]).toBeCloseTo(Math.min(5, outside - crown, inside + crown, outside - last), 9);
  });

  it('takes its bendings in parts of its power, and keeps focal length and colour', () => {
    const single = bending('singlet', [CROWN], taskOf(200));
    expect(single.shape([2])).toBe(true);
    // (2 + 1) / 200.
    expect(single.work.d.curvature[0]).toBeCloseTo(0.015, 15);
    expect(single.work.d.curvature[1]).toBeCloseTo(0.005, 3);
    expect(cardinal(single.work.d).effectiveFocalLengthMm / 200).toBeCloseTo(1, 11);
    const spaced = bending('air-spaced-achromat', [CROWN, FLINT], taskOf(200));
    expect(spaced.shape([0.4, -0.6])).toBe(true);
    const c = spaced.work.d.curvature;
    expect(c[0]).toBeCloseTo((0.4 + 60 / 28) / 200, 12);
    expect(c[2]).toBeCloseTo((-0.6 - 32 / 28 / 0.65 / 2) / 200, 12);
    expect(spaced.work.media).toEqual([CROWN, AIR, FLINT]);
    expect(Math.abs(axialColour(spaced.work))).toBeLessThan(1e-8);
    expect(cardinal(spaced.work.d).effectiveFocalLengthMm / 200).toBeCloseTo(1, 11);
  });

  it('blurs as its rays do, and without end where it cannot be made', () => {
    const task = taskOf(200);
    const single = bending('singlet', [CROWN], task);
    const blur = single.blur([1]);
    const { picture } = blursAtJob(lensOf(single.work, 19), task.job);
    expect((1000 * Math.sqrt(blur)) / picture).toBeCloseTo(1, 2);
    expect(single.blur([4.2])).toBe(Number.POSITIVE_INFINITY);
    expect(single.blur([-4.2])).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('the best bending', () => {
  it.each([150, 200, 250, 300, 400])('of a single lens of %d mm is left shaped, and no other of two hundred blurs less', (f) => {
    const task = taskOf(f);
    const best = bestBending('singlet', [CROWN], task);
    if (!best) throw new Error('none');
    expect(best.work.d.curvature[0]).toBeCloseTo(((best.at[0] as number) + 1) / f, 14);
    expect(cardinal(best.work.d).effectiveFocalLengthMm / f).toBeCloseTo(1, 11);
    const least = best.blur(best.at);
    for (let i = 0; i <= 200; i++) expect(best.blur([-5 + i / 20])).toBeGreaterThanOrEqual(least);
  });

  it('is none where every one is too steep, without looking, or the best would be', () => {
    // Blank of 20 mm and 20 mm of focal length: 1.15 * 0.5 - 1 < 0. What the shop allows is asked once for each surface.
    // So for both pieces of an achromat; at 40 mm for its crown alone, curved by 2.14 to either side: 1.15 * 2 * 1.3 < 4.28.
    for (const [kind, glasses, focalLengthMm] of [
      ['singlet', [CROWN], 20],
      ['air-spaced-achromat', [CROWN, FLINT], 20],
      ['air-spaced-achromat', [CROWN, FLINT], 40],
    ] as const) {
      const task = taskOf(focalLengthMm);
      let asked = 0;
      const limits = new Proxy(task.limits, { get: (of, key) => ++asked && Reflect.get(of, key) });
      expect(bestBending(kind, glasses, { ...task, limits })).toBeUndefined();
      expect(asked).toBeLessThan(20);
    }
    // At 80 mm there is room for an even one, but the job asks for a hollow one.
    const even = bending('singlet', [CROWN], taskOf(80));
    expect(even.shape([0])).toBe(true);
    expect(bestBending('singlet', [CROWN], taskOf(50))).toBeUndefined();
  });
});
