import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AIR, plainIndex } from '../../../core/glass/medium.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { inRow, type Lens, lengthOf, reversed, scaled } from '../../../core/trace/lens.ts';
import { prescription } from '../../../core/trace/prescription.ts';
import { rays, THROUGH, trace } from '../../../core/trace/rays.ts';
import { ANY_NM, lensesUpTo } from '../support/arbitrary-lens.ts';
import { between } from '../support/arbitrary-train.ts';
import { part } from './bundles.ts';

const of = (lens: Lens) => cardinal(prescription(lens, ANY_NM));

/** Lenses that focus nearer than 2 m, so that a ray by the axis tells where. */
const powered = lensesUpTo(30).filter((lens) => Math.abs(of(lens).matrix.c) > 5e-4);

const within = (got: number, due: number, room: number): void => expect(Math.abs(got - due), `${got} is not ${due}`).toBeLessThan(room);

describe('cardinal points', () => {
  it('are where real rays close to the axis say', () => {
    fc.assert(
      fc.property(powered, (lens) => {
        const { effectiveFocalLengthMm, backFocalLengthMm, rearPrincipalPlaneMm } = of(lens);
        const height = 1e-4;
        const ray = rays(1);
        [ray.y[0], ray.N[0]] = [height, 1];
        trace(prescription(lens, ANY_NM), ray);
        expect(ray.status[0]).toBe(THROUGH);
        const slope = (ray.M[0] as number) / (ray.N[0] as number);
        const room = 1e-6 * Math.max(1, Math.abs(effectiveFocalLengthMm), Math.abs(backFocalLengthMm));
        within(-height / slope, effectiveFocalLengthMm, room);
        within((ray.z[0] as number) - (ray.y[0] as number) / slope, backFocalLengthMm, room);
        within(backFocalLengthMm - effectiveFocalLengthMm, rearPrincipalPlaneMm, 1e-9 * Math.max(1, Math.abs(backFocalLengthMm)));
      }),
      part(0.3, 131),
    );
  });

  it('change sides with the lens, and grow with it', () => {
    fc.assert(
      fc.property(powered, (lens) => {
        const [here, round, large] = [of(lens), of(reversed(lens)), of(scaled(lens, 1.5))];
        const room =
          1e-9 * Math.max(1, Math.abs(here.effectiveFocalLengthMm), Math.abs(here.backFocalLengthMm), Math.abs(here.frontFocalLengthMm));
        within(round.effectiveFocalLengthMm, here.effectiveFocalLengthMm, room);
        within(round.backFocalLengthMm, -here.frontFocalLengthMm, room);
        within(round.frontFocalLengthMm, -here.backFocalLengthMm, room);
        within(round.rearPrincipalPlaneMm, -here.frontPrincipalPlaneMm, room);
        within(here.matrix.a * here.matrix.d - here.matrix.b * here.matrix.c, 1, 1e-11);
        for (const key of [
          'effectiveFocalLengthMm',
          'backFocalLengthMm',
          'frontFocalLengthMm',
          'frontPrincipalPlaneMm',
          'rearPrincipalPlaneMm',
        ] as const)
          within(large[key], 1.5 * here[key], 1.5 * room);
      }),
      part(0.3, 132),
    );
  });

  it('of a thick lens are the textbook formulas', () => {
    const [n, r1, r2, t] = [1.6, 60, -140, 12];
    const lens: Lens = { radiiMm: [r1, r2], thicknessesMm: [t], media: [plainIndex(n)], semiAperturesMm: [20, 20] };
    const f = 1 / ((n - 1) * (1 / r1 - 1 / r2 + ((n - 1) * t) / (n * r1 * r2)));
    const { effectiveFocalLengthMm, backFocalLengthMm, frontFocalLengthMm, frontPrincipalPlaneMm, rearPrincipalPlaneMm } = of(lens);
    expect(effectiveFocalLengthMm).toBeCloseTo(f, 11);
    expect(backFocalLengthMm).toBeCloseTo(f * (1 - ((n - 1) * t) / (n * r1)), 11);
    expect(frontFocalLengthMm).toBeCloseTo(-f * (1 + ((n - 1) * t) / (n * r2)), 11);
    expect(frontPrincipalPlaneMm).toBeCloseTo(-(f * (n - 1) * t) / (n * r2), 11);
    expect(rearPrincipalPlaneMm).toBeCloseTo(-(f * (n - 1) * t) / (n * r1), 11);
  });

  it("of two lenses in a row are Gullstrand's, between their principal planes", () => {
    fc.assert(
      fc.property(powered, powered, between(0, 60), (one, two, gap) => {
        const [a, b] = [of(one), of(two)];
        const both = of(inRow(one, two, gap, AIR));
        const apart = gap - a.rearPrincipalPlaneMm + b.frontPrincipalPlaneMm;
        const [Pa, Pb] = [1 / a.effectiveFocalLengthMm, 1 / b.effectiveFocalLengthMm];
        within(-both.matrix.c, Pa + Pb - apart * Pa * Pb, 1e-9);
      }),
      part(0.3, 133),
    );
  });

  it('do not exist for a lens without power', () => {
    const plate: Lens = { radiiMm: [Infinity, Infinity], thicknessesMm: [6], media: [plainIndex(1.5)], semiAperturesMm: [9, 9] };
    const { effectiveFocalLengthMm, backFocalLengthMm, matrix } = of(plate);
    expect([Math.abs(effectiveFocalLengthMm), Math.abs(backFocalLengthMm)]).toEqual([Infinity, Infinity]);
    expect(matrix.b).toBeCloseTo(lengthOf(plate) / 1.5, 14);
  });
});
