import { describe, expect, it } from 'vitest';
import type { Job } from '../../../../core/lens/made/job.ts';
import { meritFor } from '../../../../core/lens/made/merit.ts';
import { backFocus, workpiece } from '../../../../core/lens/made/workpiece.ts';
import { valueAt } from '../../../../core/trace/focus.ts';
import { rayPair } from '../../../../core/trace/paraxial-rays.ts';
import { seidelBySurface, seidelSums, transverse } from '../../../../core/trace/seidel.ts';
import { glassOf } from './media.ts';

/** A plano-convex lens of 200 mm, 5 mm thick, curved toward the stop. */
const work = workpiece([glassOf(1.5, 60)]);
work.d.curvature.set([0.01, 0]);
work.d.gap.set([0, 5]);
const LENS = work.d;
const NEAR = backFocus(LENS);
const JOB: Job = { stopsMm: [40, 75], stopRadiusMm: 4, cornerSlope: 0.1 };

describe('how a lens does its job', () => {
  it('is, in the middle, a blur that opens as the beam does, least as third-order spherical aberration leaves it', () => {
    const found = meritFor(JOB).spotOf(LENS, 40, 0, NEAR);
    if (!found) throw new Error('lost');
    // A disc of radius 4 (z - f) / 200: half its square.
    expect(found.rate / (0.5 * (4 / 200) ** 2)).toBeCloseTo(1, 2);
    const { marginal, chief } = rayPair(LENS, { pupilRadiusMm: 4, pupilDistanceMm: 40, slope: 0 });
    const { sphericalMm } = transverse(seidelSums(seidelBySurface(LENS, { marginal, chief })), marginal.slope[2] as number);
    // Of k ρ³ the best focus leaves k²/4 - (k/3)²/(1/2) = k²/36.
    expect(Math.sqrt(found.least) / (Math.abs(sphericalMm) / 6)).toBeCloseTo(1, 2);
    // Which is two thirds of the way to where the rim crosses the axis.
    expect((found.at - NEAR) / (Math.abs(sphericalMm) / (4 / 200)) / (-2 / 3)).toBeCloseTo(1, 2);
  });

  it('widens with the stop and the slope that are asked for', () => {
    const narrow = meritFor({ ...JOB, stopRadiusMm: 2 }).spotOf(LENS, 40, 0, NEAR);
    const wide = meritFor(JOB).spotOf(LENS, 40, 0, NEAR);
    expect((wide?.rate as number) / (narrow?.rate as number)).toBeCloseTo(4, 1);
    expect(Math.sqrt((wide?.least as number) / (narrow?.least as number))).toBeCloseTo(8, 1);
    const askew = meritFor(JOB).spotOf(LENS, 40, 0.1, NEAR);
    expect(askew?.least).toBeGreaterThan(5 * (wide?.least as number));
    // The field curves toward the lens.
    expect(askew?.at).toBeLessThan((wide?.at as number) - 1);
  });

  it('over a picture is the mean by area of its beams on one plane, by five hundred of them', () => {
    const merit = meritFor(JOB);
    const picture = merit.pictureOf(LENS, 75, NEAR);
    if (!picture) throw new Error('lost');
    const count = 500;
    for (const z of [NEAR - 6, picture.at, NEAR + 2]) {
      let sum = 0;
      for (let i = 0; i < count; i++) {
        const spot = merit.spotOf(LENS, 75, 0.1 * Math.sqrt((i + 0.5) / count), NEAR);
        if (!spot) throw new Error('lost');
        sum += valueAt(spot, z) / count;
      }
      expect(valueAt(picture, z) / sum).toBeCloseTo(1, 5);
    }
    expect(valueAt(picture, picture.at)).toBe(picture.least);
    expect(picture.least).toBeGreaterThan(0);
  });

  it('is the mean of its pictures, each at its own best', () => {
    const merit = meritFor(JOB);
    const [near, far] = [40, 75].map((stop) => merit.pictureOf(LENS, stop, NEAR)?.least as number) as [number, number];
    expect(merit.meanSquare(LENS, NEAR)).toBeCloseTo((near + far) / 2, 14);
    expect(Math.abs(near - far)).toBeGreaterThan(0.01 * near);
    expect(meritFor({ ...JOB, stopsMm: [75] }).meanSquare(LENS, NEAR)).toBe(far);
  });

  it('does not depend on which plane is said to be near', () => {
    const merit = meritFor(JOB);
    expect(merit.meanSquare(LENS, NEAR + 30) / merit.meanSquare(LENS, NEAR)).toBeCloseTo(1, 9);
  });

  it('is not to be had where one ray of a beam does not come through', () => {
    // The glass is 9 mm high: from 75 mm away the corner's beam reaches to 7.5 and nearly 4 mm more, from 40 mm to less.
    const low = { ...LENS, clear: Float64Array.of(9 * 9, 9 * 9) };
    const merit = meritFor(JOB);
    expect(merit.spotOf(low, 75, 0, NEAR)).toEqual(merit.spotOf(LENS, 75, 0, NEAR));
    expect(merit.spotOf(low, 75, 0.1, NEAR)).toBeUndefined();
    expect(merit.pictureOf(low, 40, NEAR)).toEqual(merit.pictureOf(LENS, 40, NEAR));
    expect(merit.pictureOf(low, 75, NEAR)).toBeUndefined();
    expect(merit.meanSquare(low, NEAR)).toBe(Number.POSITIVE_INFINITY);
  });
});
