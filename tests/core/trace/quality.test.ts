import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lensOf } from '../../../core/lens/listed.ts';
import type { GlassListing } from '../../../core/parts/relay-glass.ts';
import type { PupilPoints } from '../../../core/trace/beam.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { valueAt } from '../../../core/trace/focus.ts';
import { type Lens, scaled } from '../../../core/trace/lens.ts';
import { ringsAndSpokes } from '../../../core/trace/points.ts';
import { prescription } from '../../../core/trace/prescription.ts';
import { FOCUS_PLANES, imageQuality, type QualityAsked } from '../../../core/trace/quality.ts';
import { meanAt, spot } from '../../../core/trace/spot.ts';
import { strehl, withoutTilt } from '../../../core/trace/strehl.ts';
import { chiefRay, wavefront } from '../../../core/trace/wavefront.ts';
import reference from '../../api/reference-relays.json' with { type: 'json' };
import { between } from '../support/arbitrary-train.ts';
import { part, pointsAt, sent } from './bundles.ts';

const made = (glass: unknown): Lens => lensOf(glass as GlassListing, false).lens as Lens;
const ofId = (id: string): Lens => made(reference.relays.find((r) => r.id === id)?.glass);

/** The samplings of the program that the reference comes from. */
const equalRings = ((rings: number, spokes: number): PupilPoints =>
  pointsAt(
    ...Array.from({ length: rings * spokes }, (_, i) => {
      const [r, angle] = [Math.sqrt((Math.floor(i / spokes) + 0.5) / rings), (2 * Math.PI * i) / spokes];
      return [r * Math.sin(angle), r * Math.cos(angle)] as const;
    }),
  ))(40, 96);
const squareGrid = ((side: number): PupilPoints => {
  const at = (i: number): number => -1 + (2 * i) / (side - 1);
  const all = Array.from({ length: side * side }, (_, i) => [at(i % side), at(Math.floor(i / side))] as const);
  return pointsAt(...all.filter(([x, y]) => x * x + y * y <= 1));
})(65);

describe('the reference relays with the sampling of their own program', () => {
  it.each(reference.relays)('$id agrees to the digits that it printed', ({ id, rows, wavelengthNm, pupilDiameterMm }) => {
    const lens = prescription(ofId(id), wavelengthNm);
    const plane = cardinal(lens).backFocalLengthMm;
    for (const row of rows) {
      const from = { pupilRadiusMm: pupilDiameterMm / 2, pupilDistanceMm: row.pupilDistanceMm, slope: row.slope };
      const { bundle, came } = sent(lens, equalRings, from);
      const { square, sagittal, tangential } = spot(bundle, came.weights, plane);
      const um = (p: typeof square): number => 1e3 * Math.sqrt(valueAt(p, plane));
      // Printed to 1e-5 µm, the centroid to 1e-7 mm.
      expect(Math.abs(um(square) - row.rmsSpotUm)).toBeLessThan(0.6e-5);
      expect(Math.abs(um(sagittal.square) - row.sagittalRmsUm)).toBeLessThan(0.6e-5);
      expect(Math.abs(um(tangential.square) - row.tangentialRmsUm)).toBeLessThan(0.6e-5);
      expect(Math.abs(meanAt(tangential, plane) - row.centroidMm)).toBeLessThan(0.6e-7);

      const grid = sent(lens, squareGrid, from);
      const waves = wavefront(grid.bundle, chiefRay(lens, from, grid.bundle, squareGrid), plane, wavelengthNm);
      expect(Math.abs(withoutTilt(waves, squareGrid, grid.came.weights) - row.rmsWavesTiltRemoved)).toBeLessThan(1e-6);
    }
  });
});

describe('image quality over the field', () => {
  const plain = made({ radiiMm: [900, -60, -95], thicknessesMm: [10, 4], glasses: [1.52, 1.67] });
  const question = fc.record({
    pupil: between(2, 14),
    distance: between(0, 150),
    slope: between(0, 0.12),
    focus: fc.constantFrom(...FOCUS_PLANES),
  });
  const asked = (q: { pupil: number; distance: number; slope: number; focus: QualityAsked['focus'] }, k = 1): QualityAsked => ({
    pupilDiameterMm: k * q.pupil,
    pupilDistanceMm: k * q.distance,
    slopes: [0, q.slope / 2, q.slope],
    wavelengthsNm: [k * 500],
    focus: q.focus,
  });
  const known = (field: ReturnType<typeof imageQuality>['fields'][number]) => {
    if (field.state !== 'known') throw new Error('dark');
    return field;
  };

  it('grows with the lens, and keeps its waves in light as much longer', () => {
    fc.assert(
      fc.property(question, between(0.5, 3), (q, k) => {
        const [one, other] = [imageQuality(plain, asked(q)), imageQuality(scaled(plain, k), asked(q, k))];
        for (const [i, field] of other.fields.entries()) {
          const before = known(one.fields[i] as never);
          const after = known(field);
          for (const name of ['rmsSpotUm', 'sagittalRmsUm', 'tangentialRmsUm', 'centroidMm', 'planeMm', 'focusShiftMm'] as const)
            expect(after[name]).toBeCloseTo(k * before[name], 7);
          expect(after.rmsWavefrontWaves).toBeCloseTo(before.rmsWavefrontWaves, 7);
          expect(after.strehl).toBeCloseTo(before.strehl, 6);
          expect(after.raysThrough).toBe(before.raysThrough);
        }
      }),
      part(0.05, 41),
    );
  });

  it('is mirrored with the field', () => {
    fc.assert(
      fc.property(question, (q) => {
        const one = imageQuality(plain, { ...asked(q), slopes: [q.slope], wavelengthsNm: [500, 600] }).fields[0];
        const other = imageQuality(plain, { ...asked(q), slopes: [-q.slope], wavelengthsNm: [500, 600] }).fields[0];
        const [a, b] = [known(one as never), known(other as never)];
        expect(b.centroidMm).toBeCloseTo(-a.centroidMm, 9);
        expect(b.rmsSpotUm).toBeCloseTo(a.rmsSpotUm, 7);
        expect(b.tangentialRmsUm).toBeCloseTo(a.tangentialRmsUm, 7);
        expect(b.rmsWavefrontWaves).toBeCloseTo(a.rmsWavefrontWaves, 7);
        expect(b.allColoursRmsSpotUm).toBeCloseTo(a.allColoursRmsSpotUm as number, 7);
      }),
      part(0.05, 42),
    );
  });

  it('on each plane: the worst in one frame is never above the paraxial one, nor any at its best above that', () => {
    fc.assert(
      fc.property(question, (q) => {
        const on = (focus: QualityAsked['focus']) => imageQuality(plain, asked({ ...q, focus })).fields.map((f) => known(f).rmsSpotUm);
        const [paraxial, frame, best] = [on('paraxial'), on('one-frame'), on('each-best')];
        const within = (a: number, b: number): void => expect(a).toBeLessThanOrEqual(b + 1e-9);
        within(Math.max(...frame), Math.max(...paraxial));
        for (const [i, least] of best.entries()) {
          within(least, frame[i] as number);
          within(least, paraxial[i] as number);
        }
      }),
      part(0.05, 43),
    );
  });

  it('is on the plane told what its rays make there, colour by colour, counted on other rays', () => {
    const glass = ofId('R2');
    const wavelengthsNm = [550, 470, 640];
    const dense = ringsAndSpokes(15, 40);
    fc.assert(
      fc.property(question, (q) => {
        const field = known(imageQuality(glass, { ...asked(q), wavelengthsNm }).fields[2] as never);
        const from = { pupilRadiusMm: q.pupil / 2, pupilDistanceMm: q.distance, slope: q.slope };
        const z = field.planeMm;
        const colours = wavelengthsNm.map((nm) => {
          const { bundle } = sent(prescription(glass, nm), dense, from);
          const hit = (at: Float64Array, cosine: Float64Array, on: number): Float64Array =>
            at.map((p, i) => p + ((on - (bundle.z[i] as number)) * (cosine[i] as number)) / (bundle.N[i] as number));
          return { x: (on: number) => hit(bundle.x, bundle.L, on), y: (on: number) => hit(bundle.y, bundle.M, on) };
        });
        const mean = (of: Float64Array): number => of.reduce((sum, value, i) => sum + value * (dense.share[i] as number), 0);
        const about = (of: Float64Array, middle: number): number => mean(of.map((value) => (value - middle) ** 2));
        const centroids = colours.map(({ y }) => mean(y(z)));
        for (const [i, y] of centroids.entries())
          expect((field.lateralColourUm as number[])[i]).toBeCloseTo(1e3 * (y - (centroids[0] as number)), 5);
        const middle = centroids.reduce((sum, y) => sum + y / 3, 0);
        const all = colours.reduce((sum, { x, y }) => sum + (about(x(z), 0) + about(y(z), middle)) / 3, 0);
        expect((field.allColoursRmsSpotUm as number) / (1e3 * Math.sqrt(all))).toBeCloseTo(1, 6);

        // Moved either way from its own best focus, each direction grows alike.
        const [first] = colours as [(typeof colours)[number]];
        const paraxial = cardinal(prescription(glass, 550)).backFocalLengthMm;
        const evenly = (wide: (on: number) => number, best: number): void => {
          const [before, after] = [wide(best - 0.5), wide(best + 0.5)];
          expect(before / after).toBeCloseTo(1, 5);
        };
        evenly((on) => about(first.x(on), 0), paraxial + field.sagittalFocusShiftMm);
        evenly((on) => about(first.y(on), mean(first.y(on))), paraxial + field.tangentialFocusShiftMm);

        const lens = prescription(glass, 550);
        const { bundle, came } = sent(lens, dense, from);
        const waves = wavefront(bundle, chiefRay(lens, from, bundle, dense), z, 550);
        expect(field.rmsWavefrontWaves).toBeCloseTo(withoutTilt(waves, dense, came.weights), 7);
        expect(field.strehl).toBeCloseTo(strehl(waves, came.weights), 6);
      }),
      part(0.1, 44),
    );
  });

  it('refuses light that a glass is not known for', () => {
    expect(() =>
      imageQuality(ofId('R1'), { ...asked({ pupil: 5, distance: 50, slope: 0, focus: 'paraxial' }), wavelengthsNm: [550, 250] }),
    ).toThrow(/N-BK7 is known from 300 to 2500 nm/);
  });

  it('leaves colours out of a field point that one of them does not reach', () => {
    // A ray 10.7 mm off the axis meets the sphere at 32.3°: total reflection for an index above 1.87, which is blue here.
    const lens = made({ radiiMm: ['plane', -20], thicknessesMm: [8], glasses: ['N-SF57'], semiAperturesMm: [11.5, 11.5] });
    const at = (wavelengthsNm: number[]) =>
      imageQuality(lens, { pupilDiameterMm: 0.01, pupilDistanceMm: 1000, slopes: [0.0107], wavelengthsNm, focus: 'each-best' }).fields[0];
    const both = known(at([700, 420]) as never);
    expect(both).not.toHaveProperty('lateralColourUm');
    expect(both).not.toHaveProperty('allColoursRmsSpotUm');
    expect(at([420, 700])).toMatchObject({ state: 'none', raysThrough: 0 });
  });
});
