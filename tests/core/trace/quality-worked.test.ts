import { describe, expect, it } from 'vitest';
import { gaussLegendre } from '../../../core/gauss.ts';
import { glassNamed } from '../../../core/glass/glasses.ts';
import { type Medium, plainIndex } from '../../../core/glass/medium.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { valueAt } from '../../../core/trace/focus.ts';
import type { Lens } from '../../../core/trace/lens.ts';
import { ringsAndSpokes } from '../../../core/trace/points.ts';
import { prescription } from '../../../core/trace/prescription.ts';
import { imageQuality, type QualityAsked } from '../../../core/trace/quality.ts';
import { meanAt, spot } from '../../../core/trace/spot.ts';
import { sent } from './bundles.ts';

const lensOf = (radiiMm: number[], thicknessesMm: number[], media: Medium[], wide = 30): Lens => ({
  radiiMm,
  thicknessesMm,
  media,
  semiAperturesMm: radiiMm.map(() => wide),
});
const PLANE = Number.POSITIVE_INFINITY;
const CROWN = glassNamed('N-BK7') as Medium;
const SINGLET = lensOf([100, -100], [6], [CROWN]);

const asked = (of: Partial<QualityAsked>): QualityAsked => ({
  pupilDiameterMm: 10,
  pupilDistanceMm: 0,
  slopes: [0],
  wavelengthsNm: [550],
  focus: 'paraxial',
  ...of,
});
function known(lens: Lens, of: Partial<QualityAsked>) {
  const found = imageQuality(lens, asked(of));
  return {
    ...found,
    fields: found.fields.map((field) => {
      if (field.state !== 'known') throw new Error(field.why);
      return field;
    }),
  };
}

/** So many of the twelve rings lie within this part of the pupil's radius. */
const ringsWithin = (part: number): number => gaussLegendre(12, 0, 1).nodes.filter((square) => square <= part * part).length;

describe('what is counted of a beam', () => {
  it('is all of its 384 rays, on the radius that its slope has behind the lens', () => {
    const { effectiveFocalLengthMm, fields } = known(SINGLET, { slopes: [0, 0.1] });
    // 1/f = (n - 1)(2/R - (n - 1) t / (n R²)).
    const n = CROWN.indexAt(550);
    expect(effectiveFocalLengthMm).toBeCloseTo(1 / ((n - 1) * (2 / 100 - ((n - 1) * 6) / (n * 100 * 100))), 9);
    for (const [i, { raysThrough, raysClipped, raysReflected, shareThrough, radiusMm }] of fields.entries()) {
      expect([raysThrough, raysClipped, raysReflected]).toEqual([384, 0, 0]);
      expect(shareThrough).toBeCloseTo(1, 12);
      expect(shareThrough).toBeLessThanOrEqual(1);
      expect(radiusMm).toBeCloseTo(i * 0.1 * effectiveFocalLengthMm, 12);
    }
  });

  it('is what is clipped, where the glass is half as high as the beam: three quarters of the area', () => {
    const half = lensOf([100, -100], [6], [CROWN], 2.5);
    const [field] = known({ ...half, semiAperturesMm: [2.5, 30] }, {}).fields;
    const rings = ringsWithin(0.5);
    expect(field).toMatchObject({ raysThrough: 32 * rings, raysClipped: 32 * (12 - rings), raysReflected: 0 });
    expect(field?.shareThrough).toBeGreaterThan(0.15);
    expect(field?.shareThrough).toBeLessThan(0.35);
  });

  // The flat side of a ball's half first: the curved one sees a ray at height h at the sine h / 20.
  const half = lensOf([PLANE, -20], [20], [plainIndex(1.9)], 19.9);

  it('is what is totally reflected, beyond the height of 1/n of the radius', () => {
    const [field] = known(half, { pupilDiameterMm: 24 }).fields;
    const rings = ringsWithin(20 / 1.9 / 12);
    expect(rings).toBeLessThan(12);
    expect(field).toMatchObject({ raysThrough: 32 * rings, raysClipped: 0, raysReflected: 32 * (12 - rings) });
  });

  it('says what became of a beam that is lost whole', () => {
    const lost = (lens: Lens, atMm: number, pupilDiameterMm: number) =>
      imageQuality(lens, asked({ pupilDiameterMm, pupilDistanceMm: 10_000, slopes: [atMm / 10_000] })).fields[0];
    const low: Lens = { ...half, semiAperturesMm: [15, 15] };
    expect(lost(low, 17, 1)).toMatchObject({
      state: 'none',
      raysThrough: 0,
      raysClipped: 384,
      raysReflected: 0,
      why: 'the whole beam passes beside the glass',
    });
    expect(lost(low, 13, 1)).toMatchObject({
      state: 'none',
      raysThrough: 0,
      raysClipped: 0,
      raysReflected: 384,
      why: 'the whole beam is totally reflected',
    });
    const both = lost(low, 15, 1);
    if (both?.state !== 'none') throw new Error('nothing comes through');
    expect(both.why).toBe('all of the beam passes beside the glass or is totally reflected');
    expect(both.raysClipped + both.raysReflected).toBe(384);
    expect(Math.min(both.raysClipped, both.raysReflected)).toBeGreaterThan(100);
  });
});

describe('where the picture is', () => {
  it('on the axis is two thirds of the way to where the rim of the beam crosses it, on the side of the lens', () => {
    const { backFocalLengthMm, fields } = known(SINGLET, { pupilDiameterMm: 8 });
    const { bundle } = sent(
      prescription(SINGLET, 550),
      { count: 1, x: Float64Array.of(0), y: Float64Array.of(1), share: Float64Array.of(1) },
      {
        pupilRadiusMm: 4,
        pupilDistanceMm: 0,
        slope: 0,
      },
    );
    const [y, z, M, N] = [bundle.y[0], bundle.z[0], bundle.M[0], bundle.N[0]] as [number, number, number, number];
    const crossing = z - (y * N) / M - backFocalLengthMm;
    expect(crossing).toBeLessThan(0);
    const [field] = fields;
    // Squares of ρ³ + k ρ over the disc: 1/4 + 2k/3 + k²/2 is least at k = -2/3.
    for (const shift of [field?.focusShiftMm, field?.sagittalFocusShiftMm, field?.tangentialFocusShiftMm])
      expect((shift as number) / crossing).toBeCloseTo(2 / 3, 2);
  });

  it('in one frame is the plane that leaves the largest blur least, by looking for it', () => {
    const slopes = [0, 0.06, 0.12];
    const { fields, backFocalLengthMm } = known(SINGLET, { slopes, focus: 'one-frame' });
    const spots = slopes.map((slope) => {
      const { bundle, came } = sent(prescription(SINGLET, 550), ringsAndSpokes(12, 32), { pupilRadiusMm: 5, pupilDistanceMm: 0, slope });
      return spot(bundle, came.weights, backFocalLengthMm).square;
    });
    const worst = (z: number): number => Math.max(...spots.map((square) => valueAt(square, z)));
    const looked = Array.from({ length: 6001 }, (_, i) => backFocalLengthMm - i * 1e-3).reduce((a, b) => (worst(b) < worst(a) ? b : a));
    expect(Math.abs(looked - backFocalLengthMm)).toBeGreaterThan(0.1);
    for (const { planeMm } of fields) expect(Math.abs(planeMm - looked)).toBeLessThan(2e-3);
  });

  it('in one frame does not ask a field that nothing reaches, and is the paraxial one where nothing reaches any', () => {
    const frame = (slopes: number[]) => imageQuality(SINGLET, asked({ slopes, focus: 'one-frame', pupilDistanceMm: 300 }));
    const plane = (of: ReturnType<typeof imageQuality>, i: number) => (of.fields[i] as { planeMm: number }).planeMm;
    expect(plane(frame([0, 0.05, 0.5]), 1)).toBe(plane(frame([0, 0.05]), 1));
    expect(frame([0.5]).fields[0]?.state).toBe('none');
    expect(frame([]).fields).toEqual([]);
  });
});

describe('colours', () => {
  const far = { pupilDistanceMm: 80, slopes: [0.1], pupilDiameterMm: 4 };

  it('each have a back focus, told from the first', () => {
    const [green, blue, red] = [550, 450, 650].map((nm) => cardinal(prescription(SINGLET, nm)).backFocalLengthMm) as [
      number,
      number,
      number,
    ];
    const { chromaticBackFocusShiftMm } = known(SINGLET, { wavelengthsNm: [550, 450, 650] });
    expect(chromaticBackFocusShiftMm).toEqual([0, blue - green, red - green]);
    expect(blue - green).toBeLessThan(-0.5);
    expect(red - green).toBeGreaterThan(0.5);
  });

  it('blur together about their common middle, two as far from it as they are apart by half', () => {
    const [field] = known(SINGLET, { ...far, wavelengthsNm: [550, 450] }).fields;
    if (!field) throw new Error('one was asked for');
    const { bundle, came } = sent(prescription(SINGLET, 450), ringsAndSpokes(12, 32), {
      pupilRadiusMm: 2,
      pupilDistanceMm: 80,
      slope: 0.1,
    });
    const other = spot(bundle, came.weights, field.planeMm);
    const lateral = 1e3 * (meanAt(other.tangential, field.planeMm) - field.centroidMm);
    expect(field.lateralColourUm?.[0]).toBe(0);
    expect(field.lateralColourUm?.[1]).toBeCloseTo(lateral, 8);
    expect(Math.abs(lateral)).toBeGreaterThan(20);
    const mean = (field.rmsSpotUm ** 2 + 1e6 * valueAt(other.square, field.planeMm)) / 2;
    expect(field.allColoursRmsSpotUm).toBeCloseTo(Math.sqrt(mean + (lateral / 2) ** 2), 8);
  });

  it('are left out where one of several does not come through at all', () => {
    // Index 1.87 reflects whole at 32.3°: here blue, and neither of two reds.
    const flint = lensOf([PLANE, -20], [8], [glassNamed('N-SF57') as Medium], 11.5);
    const [field] = known(flint, { pupilDiameterMm: 0.01, pupilDistanceMm: 1000, slopes: [0.0107], wavelengthsNm: [700, 420, 680] }).fields;
    expect(field).not.toHaveProperty('lateralColourUm');
    expect(field).not.toHaveProperty('allColoursRmsSpotUm');
  });
});
