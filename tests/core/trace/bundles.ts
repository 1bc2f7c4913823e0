import fc from 'fast-check';
import { plainIndex } from '../../../core/glass/medium.ts';
import { type Beam, beam, type PupilPoints } from '../../../core/trace/beam.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { widestSemiApertures } from '../../../core/trace/lens.ts';
import { type Prescription, prescription } from '../../../core/trace/prescription.ts';
import { type Rays, trace } from '../../../core/trace/rays.ts';
import { type Through, through } from '../../../core/trace/through.ts';
import { between, seeded } from '../support/arbitrary-train.ts';

/** A part of the runs that a property usually gets. */
export const part = (share: number, seed: number): fc.Parameters<unknown> => {
  const { numRuns = 1, ...all } = seeded(seed);
  return { ...all, numRuns: Math.ceil(share * numRuns) };
};

/** A lens in light of one colour with the beam that is sent through it. */
export interface Case {
  readonly lens: Prescription;
  readonly focalLengthMm: number;
  readonly backFocalLengthMm: number;
  readonly from: Beam;
}

/** Cemented lenses of around 200 mm, bent any way, with the pupil before them and the beam askew. */
export const anyCase: fc.Arbitrary<Case> = fc
  .record({
    bending: between(-0.008, 0.012),
    middle: between(-0.02, 0.02),
    power: between(0.004, 0.008),
    indices: fc.tuple(between(1.45, 1.75), between(1.45, 1.75)),
    thicknesses: fc.tuple(between(3, 9), between(2, 6)),
    pupil: between(2, 6),
    distance: between(-10, 150),
    slope: between(0, 0.12),
  })
  .map(({ bending, middle, power, indices: [n1, n2], thicknesses, pupil, distance, slope }) => {
    // The last curvature is what thin lenses need for the power.
    const inner = bending + middle;
    const last = inner - (power - (n1 - 1) * (bending - inner)) / (n2 - 1);
    const radiiMm = [bending, inner, last].map((c) => (Math.abs(c) < 1e-5 ? Number.POSITIVE_INFINITY : 1 / c));
    const media = [plainIndex(n1), plainIndex(n2)];
    const lens = prescription(
      { radiiMm, thicknessesMm: thicknesses, media, semiAperturesMm: widestSemiApertures(radiiMm, thicknesses) },
      550,
    );
    const { effectiveFocalLengthMm, backFocalLengthMm } = cardinal(lens);
    const from = { pupilRadiusMm: pupil, pupilDistanceMm: distance, slope };
    return { lens, focalLengthMm: effectiveFocalLengthMm, backFocalLengthMm, from };
  });

/** A beam sent through a lens, and what of it came through. */
export function sent(lens: Prescription, points: PupilPoints, from: Beam): { bundle: Rays; came: Through } {
  const bundle = beam(points, from);
  trace(lens, bundle);
  return { bundle, came: through(bundle, points) };
}

/** Rays of a pupil at any points of the disc, each counting the same. */
export const pointsAt = (...places: readonly (readonly [x: number, y: number])[]): PupilPoints => ({
  count: places.length,
  x: Float64Array.from(places, ([x]) => x),
  y: Float64Array.from(places, ([, y]) => y),
  share: new Float64Array(places.length).fill(1 / places.length),
});
