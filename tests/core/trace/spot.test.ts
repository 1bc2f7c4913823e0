import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { valueAt } from '../../../core/trace/focus.ts';
import { ringsAndSpokes } from '../../../core/trace/points.ts';
import { CLIPPED, type Rays, THROUGH } from '../../../core/trace/rays.ts';
import { meanAt, spot } from '../../../core/trace/spot.ts';
import { through } from '../../../core/trace/through.ts';
import { between } from '../support/arbitrary-train.ts';
import { anyCase, part, pointsAt, sent } from './bundles.ts';

/** Where the rays that came through meet a plane, and their mean and mean square, straight from the definitions. */
function counted(bundle: Rays, share: Float64Array, z: number) {
  const hits = Array.from(share, (weight, i) => {
    const along = (z - (bundle.z[i] as number)) / (bundle.N[i] as number);
    return {
      weight: bundle.status[i] === THROUGH ? weight : 0,
      x: (bundle.x[i] as number) + along * (bundle.L[i] as number),
      y: (bundle.y[i] as number) + along * (bundle.M[i] as number),
    };
  });
  const whole = hits.reduce((sum, h) => sum + h.weight, 0);
  const mean = (of: (h: (typeof hits)[number]) => number): number => hits.reduce((sum, h) => sum + h.weight * of(h), 0) / whole;
  const [x, y] = [mean((h) => h.x), mean((h) => h.y)];
  return { x, y, xx: mean((h) => (h.x - x) ** 2), yy: mean((h) => (h.y - y) ** 2) };
}

describe('a spot', () => {
  it('is on every plane what counting its rays there gives, clipped or not', () => {
    let clipped = 0;
    fc.assert(
      fc.property(anyCase, between(-8, 8), between(0.5, 1), (one, off, open) => {
        const points = ringsAndSpokes(4, 8);
        const height = open * (one.from.pupilRadiusMm + Math.abs(one.from.pupilDistanceMm) * one.from.slope);
        const { bundle, came } = sent({ ...one.lens, clear: one.lens.clear.map((c) => Math.min(c, height ** 2)) }, points, one.from);
        if (came.rays === 0) return;
        if (came.rays < points.count) clipped++;
        const got = spot(bundle, came.weights, one.backFocalLengthMm);
        const z = one.backFocalLengthMm + off;
        const { x, y, xx, yy } = counted(bundle, points.share, z);
        expect(meanAt(got.sagittal, z)).toBeCloseTo(x, 11);
        expect(meanAt(got.tangential, z)).toBeCloseTo(y, 11);
        expect(valueAt(got.sagittal.square, z)).toBeCloseTo(xx, 12);
        expect(valueAt(got.tangential.square, z)).toBeCloseTo(yy, 12);
        expect(valueAt(got.square, z)).toBeCloseTo(xx + yy, 12);
      }),
      part(0.4, 21),
    );
    expect(clipped).toBeGreaterThan(20);
  });

  it('is smallest at the vertex of its parabola, and its directions at theirs', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const points = ringsAndSpokes(4, 8);
        const { bundle, came } = sent(one.lens, points, one.from);
        if (came.rays < points.count) return;
        const { square, sagittal, tangential } = spot(bundle, came.weights, one.backFocalLengthMm);
        const at = (z: number) => counted(bundle, points.share, z);
        const step = 0.01;
        for (const [{ at: best, least }, of] of [
          [square, (z: number) => at(z).xx + at(z).yy],
          [sagittal.square, (z: number) => at(z).xx],
          [tangential.square, (z: number) => at(z).yy],
        ] as const) {
          expect(of(best)).toBeCloseTo(least, 12);
          expect(Math.min(of(best - step), of(best + step))).toBeGreaterThan(least);
          // Rays converge evenly on both sides of their best focus.
          expect((of(best - step) - of(best + step)) / (of(best - step) - least)).toBeCloseTo(0, 5);
        }
      }),
      part(0.2, 22),
    );
  });

  it('of what is left of a beam counts only that, renormalised', () => {
    const points = pointsAt([0, 1], [0, 0], [0, -1], [0.5, 0]);
    const { bundle } = sent(
      { count: 0, curvature: new Float64Array(), gap: new Float64Array(), index: Float64Array.of(1), clear: new Float64Array() },
      points,
      {
        pupilRadiusMm: 2,
        pupilDistanceMm: 0,
        slope: 0.1,
      },
    );
    bundle.status[1] = CLIPPED;
    bundle.status[3] = CLIPPED;
    const came = through(bundle, points);
    expect(came).toEqual({ rays: 2, share: 0.5, weights: Float64Array.of(0.5, 0, 0.5, 0) });
    const { tangential, sagittal } = spot(bundle, came.weights, 100);
    expect(meanAt(tangential, 100)).toBeCloseTo(10, 12);
    expect(valueAt(tangential.square, 100)).toBeCloseTo(4, 12);
    expect(valueAt(sagittal.square, 100)).toBe(0);
  });

  it('of one ray, and of parallel rays, is the same on every plane and says no plane but the one asked for', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const points = pointsAt([0.3, -0.7]);
        const { bundle, came } = sent(one.lens, points, one.from);
        const { square } = spot(bundle, came.weights, 123);
        expect(square.at).toBe(123);
        expect(square.rate).toBe(0);
        expect(square.least).toBeLessThan(1e-24);
      }),
      part(0.067, 23),
    );
  });

  it('has nothing where nothing came through', () => {
    const points = ringsAndSpokes(2, 4);
    fc.assert(
      fc.property(anyCase, (one) => {
        const { came } = sent({ ...one.lens, clear: one.lens.clear.map(() => -1) }, points, one.from);
        expect(came.rays).toBe(0);
        expect(came.share).toBe(0);
        expect(came.weights.every((w) => w === 0)).toBe(true);
      }),
      part(0.01, 24),
    );
  });
});
