import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rayPair } from '../../../core/trace/paraxial-rays.ts';
import { prescription } from '../../../core/trace/prescription.ts';
import {
  fieldCurves,
  pupilShifted,
  type Seidel,
  seidelBySurface,
  seidelSums,
  type Transverse,
  transverse,
} from '../../../core/trace/seidel.ts';
import { ANY_NM } from '../support/arbitrary-lens.ts';
import { between } from '../support/arbitrary-train.ts';
import { anyLit, dimmed, type Lit, miss } from '../support/lit-lens.ts';
import { part } from './bundles.ts';

const surfacesOf = ({ lens, light }: Lit): Seidel[] => {
  const prescribed = prescription(lens, ANY_NM);
  return seidelBySurface(prescribed, rayPair(prescribed, light));
};

/** What the surfaces add regardless of sign: what a sum's error is measured by. */
const sizes = (surfaces: readonly Seidel[]): Seidel => {
  const size = (key: keyof Seidel): number => surfaces.reduce((sum, one) => sum + Math.abs(one[key]), 0);
  return { S1: size('S1'), S2: size('S2'), S3: size('S3'), S4: size('S4'), S5: size('S5') };
};

/** The transverse aberrations by real rays, as their names define them; and coma again from a ray at the side of the pupil. */
function real(of: Lit): Transverse & { sagittalComaMm: number } {
  const sphericalMm = miss(of, 0, 0, 1).y;
  const [chief, top, bottom, side] = [miss(of, 1, 0, 0), miss(of, 1, 0, 1), miss(of, 1, 0, -1), miss(of, 1, 1, 0)];
  const tangentialFieldMm = (top.y - bottom.y) / 2 - sphericalMm;
  const sagittalFieldMm = side.x - sphericalMm;
  return {
    sphericalMm,
    tangentialComaMm: (top.y + bottom.y) / 2 - chief.y,
    sagittalComaMm: side.y - chief.y,
    tangentialFieldMm,
    sagittalFieldMm,
    petzvalFieldMm: (3 * sagittalFieldMm - tangentialFieldMm) / 2,
    distortionMm: chief.y,
  };
}

/** Real rays grow as the cube of pupil and field, with a fifth and a seventh power beside it: three sizes give the cube alone. */
function cubes(of: Lit): ReturnType<typeof real> {
  const [whole, half, quarter] = [real(of), real(dimmed(of, 0.5)), real(dimmed(of, 0.25))];
  const cube = (key: keyof typeof whole): number => (4096 * quarter[key] - 160 * half[key] + whole[key]) / 45;
  return {
    sphericalMm: cube('sphericalMm'),
    tangentialComaMm: cube('tangentialComaMm'),
    sagittalComaMm: cube('sagittalComaMm'),
    tangentialFieldMm: cube('tangentialFieldMm'),
    sagittalFieldMm: cube('sagittalFieldMm'),
    petzvalFieldMm: cube('petzvalFieldMm'),
    distortionMm: cube('distortionMm'),
  };
}

describe('third-order aberrations', () => {
  it('are what real rays near the axis come to, each of the five and coma across the field', () => {
    fc.assert(
      fc.property(anyLit, (of) => {
        const surfaces = surfacesOf(of);
        const due = transverse(seidelSums(surfaces), of.imageSlope);
        const size = transverse(sizes(surfaces), Math.abs(of.imageSlope));
        const got = cubes(of);
        for (const key of Object.keys(due) as (keyof Transverse)[])
          expect(Math.abs(got[key] - due[key]), `${key}: rays ${got[key]}, sums ${due[key]}`).toBeLessThan(1e-4 * size[key] + 1e-11);
        expect(Math.abs(3 * got.sagittalComaMm - due.tangentialComaMm)).toBeLessThan(1e-4 * size.tangentialComaMm + 1e-11);
      }),
      part(0.2, 141),
    );
  });

  it('of a moved pupil follow from those of the old one', () => {
    fc.assert(
      fc.property(anyLit, between(-40, 40), (of, by) => {
        const { pupilRadiusMm, objectDistanceMm = Number.POSITIVE_INFINITY, pupilDistanceMm } = of.light;
        const moved = pupilDistanceMm + by;
        // As wide in the light as before, and the same object point.
        const wide = Number.isFinite(objectDistanceMm) ? (objectDistanceMm - moved) / (objectDistanceMm - pupilDistanceMm) : 1;
        const slope = of.light.slope / wide;
        const there = { ...of, light: { ...of.light, pupilRadiusMm: pupilRadiusMm * wide, pupilDistanceMm: moved, slope } };
        const [old, again] = [of, there].map(({ lens, light }) => rayPair(prescription(lens, ANY_NM), light));
        const shift = ((again?.chief.height[0] as number) - (old?.chief.height[0] as number)) / (old?.marginal.height[0] as number);
        expect(again?.marginal.height[0]).toBeCloseTo(old?.marginal.height[0] as number, 12);
        const surfaces = surfacesOf(of);
        const got = pupilShifted(seidelSums(surfaces), shift);
        const straight = surfacesOf(there);
        const [due, size, before] = [seidelSums(straight), sizes(straight), sizes(surfaces)];
        const k = Math.abs(shift);
        const room: Seidel = {
          S1: before.S1,
          S2: before.S2 + k * before.S1,
          S3: before.S3 + 2 * k * before.S2 + k * k * before.S1,
          S4: before.S4,
          S5: before.S5 + k * (3 * before.S3 + before.S4) + 3 * k * k * before.S2 + k ** 3 * before.S1,
        };
        for (const key of Object.keys(due) as (keyof Seidel)[])
          expect(Math.abs(got[key] - due[key]), `${key}: shifted ${got[key]}, straight ${due[key]}`).toBeLessThan(
            1e-10 * (size[key] + room[key]) + 1e-18,
          );
      }),
      part(0.3, 142),
    );
  });

  it('keep the textbook ratio of distortion at every surface that is not met at right angles', () => {
    fc.assert(
      fc.property(anyLit, ({ lens, light }) => {
        const prescribed = prescription(lens, ANY_NM);
        const pair = rayPair(prescribed, light);
        for (const [k, { S3, S4, S5 }] of seidelBySurface(prescribed, pair).entries()) {
          const [A, AChief] = [pair.marginal.incidence[k] as number, pair.chief.incidence[k] as number];
          if (Math.abs(A) < 1e-3) continue;
          const ratio = AChief / A;
          expect(Math.abs(S5 - ratio * (S3 + S4))).toBeLessThan(1e-9 * Math.abs(ratio) * (Math.abs(S3) + Math.abs(S4)) + 1e-18);
        }
      }),
      part(0.2, 143),
    );
  });

  it('bend the field: curves behind the focus, a sagittal one a third as far from Petzval as the tangential', () => {
    const sums = { S1: 1, S2: 2, S3: 0.3, S4: 0.2, S5: 0 };
    // From a transverse aberration to its focus along the axis: over the slope of the ray, the other way.
    const { sagittalFieldMm, tangentialFieldMm, petzvalFieldMm } = transverse(sums, -0.1);
    const { sagittalMm, tangentialMm, petzvalMm } = fieldCurves(sums, -0.1);
    expect(sagittalMm).toBeCloseTo(-sagittalFieldMm / -0.1, 12);
    expect(tangentialMm).toBeCloseTo(-tangentialFieldMm / -0.1, 12);
    expect(petzvalMm).toBeCloseTo(-petzvalFieldMm / -0.1, 12);
    expect(tangentialMm - petzvalMm).toBeCloseTo(3 * (sagittalMm - petzvalMm), 12);
  });
});
