import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { colourBySurface, colourFringes, colourPupilShifted, colourSums } from '../../../core/trace/colour.ts';
import { rayPair } from '../../../core/trace/paraxial-rays.ts';
import { type Prescription, prescription } from '../../../core/trace/prescription.ts';
import { ANY_NM } from '../support/arbitrary-lens.ts';
import { between } from '../support/arbitrary-train.ts';
import { anyLit, type Lit } from '../support/lit-lens.ts';
import { part } from './bundles.ts';

/** The lens in another colour: denser glass bends more, by `by` of what it has above air. */
const inColour = (lens: Prescription, by: number): Prescription => ({ ...lens, index: lens.index.map((n) => n + by * (n - 1) ** 2) });

/** Focus and image height of a lens on the plane of another colour's image, by following both rays. */
function followed(
  { light, imageMm }: Lit,
  lens: Prescription,
): { readonly focusMm: number; readonly heightMm: number; readonly edgeMm: number } {
  const { marginal, chief } = rayPair(lens, light);
  const [last, behind] = [lens.count - 1, lens.count];
  const on = ({ height, slope }: typeof marginal): number => (height[last] as number) + imageMm * (slope[behind] as number);
  return { focusMm: -(marginal.height[last] as number) / (marginal.slope[behind] as number), heightMm: on(chief), edgeMm: on(marginal) };
}

describe('first-order colour', () => {
  it('is what following both rays in two close colours comes to: focus, edge of the pupil, edge of the field', () => {
    fc.assert(
      fc.property(anyLit, (lit) => {
        const middle = prescription(lit.lens, ANY_NM);
        const step = 1e-5;
        const [short, long] = [inColour(middle, step), inColour(middle, -step)];
        const surfaces = colourBySurface(middle, short, long, rayPair(middle, lit.light));
        const got = colourFringes(colourSums(surfaces), lit.imageSlope);
        const size = colourFringes(
          { C1: surfaces.reduce((sum, s) => sum + Math.abs(s.C1), 0), C2: surfaces.reduce((sum, s) => sum + Math.abs(s.C2), 0) },
          Math.abs(lit.imageSlope),
        );
        const [blue, red] = [followed(lit, short), followed(lit, long)];
        expect(Math.abs(got.focusMm - (blue.focusMm - red.focusMm))).toBeLessThan(1e-5 * Math.abs(size.focusMm) + 1e-10);
        expect(Math.abs(got.axialMm - (blue.edgeMm - red.edgeMm))).toBeLessThan(1e-5 * size.axialMm + 1e-12);
        expect(Math.abs(got.lateralMm - (blue.heightMm - red.heightMm))).toBeLessThan(1e-5 * size.lateralMm + 1e-12);
      }),
      part(0.3, 161),
    );
  });

  it('of a moved pupil follows from that of the old one', () => {
    let moved = 0;
    fc.assert(
      fc.property(anyLit, between(-40, 40), ({ lens, light }, by) => {
        const collimated = { ...light, objectDistanceMm: Number.POSITIVE_INFINITY };
        const middle = prescription(lens, ANY_NM);
        const sums = (from: typeof collimated) =>
          colourSums(colourBySurface(middle, inColour(middle, 1e-3), middle, rayPair(middle, from)));
        const shift = (light.slope * by) / light.pupilRadiusMm;
        const got = colourPupilShifted(sums(collimated), shift);
        const due = sums({ ...collimated, pupilDistanceMm: light.pupilDistanceMm + by });
        expect(got.C1).toBeCloseTo(due.C1, 15);
        expect(got.C2).toBeCloseTo(due.C2, 15);
        if (Math.abs(shift * due.C1) > 1e-9) moved++;
      }),
      part(0.1, 162),
    );
    if (process.env.RUNS === undefined) expect(moved).toBeGreaterThan(20);
  });
});
