import { describe, expect, test } from 'vitest';
import { fieldPoint } from '../../../core/contrast/field.ts';
import { middleOf } from '../../../core/contrast/middle.ts';
import { overlapOf, type Region, regionOf } from '../../../core/contrast/region.ts';
import { type Discs, sharedArea } from '../../../core/pupil/discs.ts';
import { start } from '../../../core/trace/beam.ts';
import type { Lens } from '../../../core/trace/lens.ts';
import { type Rays, rays, trace } from '../../../core/trace/rays.ts';
import { BENT, settingOf } from './lenses.ts';

const rimmed = (mm: number): Lens => ({ ...BENT, semiAperturesMm: [mm, 50, 50] });
const regionIn = (discs: Discs, slope: number): Region => {
  const region = regionOf(discs, slope);
  if (!region) throw new Error('these discs share something');
  return region;
};
const traced = (lens: Lens, slope: number, distance: number, points: readonly (readonly [number, number])[]): Rays => {
  const bundle = rays(points.length);
  for (const [i, [x, y]] of points.entries()) start(bundle, i, x, y, slope, distance);
  trace(settingOf(lens).colours.reference, bundle);
  return bundle;
};
const one = (values: ArrayLike<number>, i: number): number => values[i] as number;

describe('the middle of a beam', () => {
  // Discs of 5 and 6 mm, their centres 3 mm apart: the chord on the axis of the field goes from -3 to 5, the widest is 10 mm.
  const discs = { walk: [0, 25], radius: [5, 6] };
  const [slope, distance] = [0.12, 85];
  const { colours } = settingOf(BENT);
  const middle = middleOf(colours.reference, { slope, pupilDistanceMm: distance, region: regionIn(discs, slope) }, colours.focusMm);
  if (!middle) throw new Error('it comes through');

  test('is that of the chord along the field, and goes where its ray goes', () => {
    const ray = traced(BENT, slope, distance, [[0, 1]]);
    expect(middle.slope).toBeCloseTo(one(ray.M, 0) / one(ray.N, 0), 12);
    expect(middle.heightMm).toBeCloseTo(one(ray.y, 0) + (colours.focusMm - one(ray.z, 0)) * middle.slope, 10);
  });

  test('has its rates from rays half-way to the border', () => {
    const { L, M } = traced(BENT, slope, distance, [
      [2.5, 1],
      [-2.5, 1],
      [0, 3],
      [0, -1],
    ]);
    expect(middle.across).toBeCloseTo((one(L, 0) - one(L, 1)) / 5, 12);
    expect(middle.along).toBeCloseTo((one(M, 2) - one(M, 3)) / 4, 12);
    expect(middle.across).toBeLessThan(0);
    expect(middle.along).toBeLessThan(0);
  });

  test('has the area of all that comes through', () => {
    const [area] = sharedArea(discs, slope);
    expect(Math.abs(middle.area / area - 1)).toBeLessThan(4e-3);
  });

  test('counts of the area what the lens lets pass', () => {
    for (const rim of [2, 4, 5]) {
      // Along the axis a ray meets the first surface as high as it leaves the pupil.
      const region = regionIn({ walk: [0], radius: [5.6] }, 0);
      const { x, y, area } = overlapOf(region, 0, 'tangential');
      const passed = area.reduce((sum, a, i) => sum + (Math.hypot(one(x, i), one(y, i)) <= rim ? a : 0), 0);
      const found = middleOf(settingOf(rimmed(rim)).colours.reference, { slope: 0, pupilDistanceMm: 85, region }, colours.focusMm);
      if (rim < 2.8) expect(found).toBeUndefined();
      else expect(found?.area).toBeCloseTo(passed, 10);
    }
  });

  test('is none where one of its five rays is lost, be it the middle one or the highest alone', () => {
    const found = (rim: number, at: number) =>
      middleOf(
        settingOf(rimmed(rim)).colours.reference,
        { slope: at, pupilDistanceMm: 85, region: regionIn({ walk: [0], radius: [5.6] }, at) },
        colours.focusMm,
      );
    // The middle ray meets the lens at 85 x .05 = 4.25, the highest 2.8 above.
    expect(found(7.2, 0.05)).toBeDefined();
    expect(found(6.9, 0.05)).toBeUndefined();
    expect(found(3, 0.05)).toBeUndefined();
  });
});

describe('a field point is none', () => {
  test('where the middle of its beam is lost', () => {
    expect(fieldPoint(settingOf(rimmed(10)), 0.2)).toBeUndefined();
    expect(fieldPoint(settingOf(rimmed(10)), 0.02)).toBeDefined();
  });

  test('where the pattern is too fine for the pupil: 2 x 5.6 mm over f and the wavelength, 96 to the mm', () => {
    expect(fieldPoint(settingOf(BENT, { frequency: 94 }), 0)).toBeDefined();
    expect(fieldPoint(settingOf(BENT, { frequency: 99 }), 0)).toBeUndefined();
  });

  test('where it is too fine in one direction: a lens of 3.2 by 7.8 mm, pairs 5.6 mm apart', () => {
    const discs = { walk: [0, 80], radius: [5.6, 5.6] };
    expect(fieldPoint({ ...settingOf(BENT, { frequency: 48 }), discs }, 0.1)).toBeUndefined();
    expect(fieldPoint({ ...settingOf(BENT, { frequency: 20 }), discs }, 0.1)).toBeDefined();
  });
});

describe('pairs of rays', () => {
  /** What a disc shares with itself, `v` of its diameter away, of the whole. */
  const shared = (v: number): number => (2 / Math.PI) * (Math.acos(v) - v * Math.sqrt(1 - v * v));
  const mm = 587.5618e-6;

  test('of which the lens takes one count on neither side, and those that are left count over all that comes through', () => {
    const [rim, apart] = [4.8, 3.84];
    const region = regionIn({ walk: [0], radius: [5.6] }, 0);
    const { colours } = settingOf(BENT);
    const middle = middleOf(colours.reference, { slope: 0, pupilDistanceMm: 85, region }, colours.focusMm);
    const frequency = (apart * Math.abs(middle?.along ?? 0)) / mm;
    // Along the axis a ray meets the first surface as high as it leaves the pupil.
    const passes = (x: number, y: number): boolean => Math.hypot(x, y) <= rim;
    const areaWhere = (shear: number, direction: 'sagittal' | 'tangential'): { area: number; count: number } => {
      const { x, y, area } = overlapOf(region, shear, direction);
      const [dx, dy] = direction === 'sagittal' ? [shear / 2, 0] : [0, shear / 2];
      const both = [...area].filter((_, i) => passes(one(x, i) + dx, one(y, i) + dy) && passes(one(x, i) - dx, one(y, i) - dy));
      return { area: both.reduce((sum, a) => sum + a, 0), count: both.length };
    };
    const point = fieldPoint(settingOf(rimmed(rim), { radius: 5.6, frequency }), 0);
    for (const direction of ['sagittal', 'tangential'] as const) {
      const due = areaWhere(apart, direction);
      const pairs = point?.[direction];
      expect(pairs?.perfect).toBeCloseTo(due.area / areaWhere(0, 'tangential').area, 9);
      expect(pairs?.count).toBe(due.count);
      expect(due.count).toBeLessThan(49);
      // As coarse as the nodes are at the rim's edge.
      expect(Math.abs((pairs?.perfect ?? 0) - shared(apart / (2 * rim)))).toBeLessThan(0.1);
    }
    expect(fieldPoint(settingOf(BENT, { frequency }), 0)?.sagittal.count).toBe(49);
  });

  test('lie as far apart as their own direction bends the light, off the axis', () => {
    const [slope, frequency] = [0.2, 50];
    const { L, M } = traced(BENT, slope, 20, [
      [0.1, 0],
      [-0.1, 0],
      [0, 0.1],
      [0, -0.1],
    ]);
    const [across, along] = [(one(L, 0) - one(L, 1)) / 0.2, (one(M, 2) - one(M, 3)) / 0.2];
    const point = fieldPoint(settingOf(BENT, { distance: 20, frequency }), slope);
    const due = (per: number): number => shared((mm * frequency) / Math.abs(per) / 11.2);
    expect(Math.abs(due(across) - due(along))).toBeGreaterThan(5e-3);
    expect(Math.abs((point?.sagittal.perfect ?? 0) - due(across))).toBeLessThan(1e-3);
    expect(Math.abs((point?.tangential.perfect ?? 0) - due(along))).toBeLessThan(1e-3);
  });
});
