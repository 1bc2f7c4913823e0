import { describe, expect, it } from 'vitest';
import { problemsOf } from '../../../core/index.ts';
import { BOUNDS, type Bounded, bounded, isMeasured, name, quantity, quantityOf } from '../../../core/parts/quantity.ts';
import { relaySchema } from '../../../core/parts/relay.ts';
import { relayGlassSchema } from '../../../core/parts/relay-glass.ts';

/**
 * What may be said of a bench. Links, files and drawers kept from before were written within these: narrower, and they
 * are no longer read; wider, and formulas may leave the finite numbers.
 */
const PROMISED: Readonly<Record<Bounded, readonly [least: number, greatest: number]>> = {
  // From a tenth of life size to the strongest immersion objective; no aperture is above the index of its oil.
  magnification: [0.1, 250],
  na: [0.001, 1.7],
  immersionIndex: [1, 2.5],
  index: [1, 4],
  // Ratios and parts.
  litThreshold: [0.01, 0.99],
  relativeContrast: [0.01, 1],
  fNumber: [0.5, 256],
  // Focal lengths and powers: 5 mm are 200 dioptres, 5 m are 0.2.
  focalLengthMm: [5, 5000],
  powerDioptre: [0.2, 200],
  referenceFocalLengthMm: [10, 1000],
  // What light passes through, mm across.
  fieldNumberMm: [0.1, 100],
  testedFieldMm: [0.1, 100],
  noseDiameterMm: [0.1, 200],
  clearApertureMm: [0.1, 500],
  entrancePupilDiameterMm: [0.1, 500],
  imageCircleMm: [0.1, 500],
  throatDiameterMm: [0.1, 500],
  diameterMm: [0.1, 500],
  widthMm: [0.1, 300],
  heightMm: [0.1, 300],
  radiusMm: [0, 500],
  // Along the axis, mm.
  workingDistanceMm: [0, 500],
  parfocalDistanceMm: [5, 500],
  coverGlassMm: [0, 20],
  exitPupilFromShoulderMm: [-300, 300],
  entrancePupilDepthMm: [-500, 1000],
  frontPrincipalPlaneFromRimMm: [-2000, 2000],
  backFocalLengthMm: [0, 5000],
  rimToSensorMm: [1, 6000],
  registerMm: [0.1, 500],
  infinitySpaceMm: [0, 2000],
  fromShoulderMm: [-300, 2000],
  fromSensorMm: [0, 5000],
  sensorOffsetMm: [-500, 500],
  // The subject, from a tenth of a micrometre to a metre.
  subjectWidthMm: [0.0001, 1000],
  subjectHeightMm: [0.0001, 1000],
  subjectDepthMm: [0, 1000],
  // Fine things.
  pixelPitchUm: [0.1, 1000],
  blurUm: [0.01, 1000],
  wavelengthNm: [100, 3000],
  frequencyLpPerMm: [0.1, 10_000],
};

const fits = (schema: { safeParse(x: unknown): { success: boolean } }, x: unknown): boolean => schema.safeParse(x).success;

describe('the bounds of an input', () => {
  it('are promised for all of them', () => {
    expect(Object.keys(BOUNDS).toSorted()).toEqual(Object.keys(PROMISED).toSorted());
  });
  it.each(Object.entries(PROMISED) as [Bounded, readonly [number, number]][])(
    '%s: from and to, and nothing beyond',
    (of, [least, greatest]) => {
      const beyond = (x: number): number => (x === 0 ? 1e-9 : Math.abs(x) * 1e-9);
      for (const schema of [bounded(of), quantity(of)]) {
        expect([least, greatest, (least + greatest) / 2].map((x) => fits(schema, x))).toEqual([true, true, true]);
        expect([least - beyond(least), greatest + beyond(greatest), Number.NaN].map((x) => fits(schema, x))).toEqual([false, false, false]);
      }
    },
  );
});

describe('a number with its story', () => {
  const told = (of: Bounded, value: number, plusMinus: number) => {
    const { error } = quantity(of).safeParse({ value, plusMinus });
    return error && problemsOf(error, { value, plusMinus }).map(({ path, expected }) => `${path} ${expected}`);
  };
  it('at a bound has no room for a ±, and nowhere for more than from bound to bound', () => {
    expect([told('focalLengthMm', 5, 0), told('focalLengthMm', 5, 1)]).toEqual([undefined, ['/plusMinus at most 0']]);
    expect([told('focalLengthMm', 5000, 0), told('focalLengthMm', 5000, 1)]).toEqual([undefined, ['/plusMinus at most 0']]);
    expect(told('focalLengthMm', 100, 4996)).toEqual(['/plusMinus at most 4995', '/plusMinus at most 95']);
    expect(told('focalLengthMm', 100, -1)).toEqual(['/plusMinus at least 0']);
  });
  it('is taken as marked, and as exact, where nothing is said', () => {
    expect(quantityOf(7)).toEqual({ value: 7, plusMinus: 0, origin: 'marked' });
    expect(quantityOf({ value: 7 })).toEqual({ value: 7, plusMinus: 0, origin: 'marked' });
    expect(quantityOf({ value: 7, plusMinus: 2, origin: 'assumed', marked: 8 })).toEqual({ value: 7, plusMinus: 2, origin: 'assumed' });
  });
  it('is measured where it says so', () => {
    expect(
      [{ value: 7, origin: 'measured' }, { value: 7, origin: 'marked' }, { value: 7 }, 7, undefined].map((q) => isMeasured(q as never)),
    ).toEqual([true, false, false, false, false]);
  });
  it('has a name of one to 120 letters', () => {
    expect(['', 'x', 'x'.repeat(120), 'x'.repeat(121)].map((text) => fits(name, text))).toEqual([false, true, true, false]);
    expect(fits(relaySchema, { kind: 'tube-lens', name: 'x'.repeat(121) })).toBe(false);
  });
});

describe('the surfaces of a relay', () => {
  const many = <T>(count: number, of: T): T[] => Array.from({ length: count }, () => of);
  const listing = (surfaces: number, more: object = {}) => ({
    radiiMm: many(surfaces, 50),
    thicknessesMm: many(surfaces - 1, 3),
    glasses: many(surfaces - 1, 'N-BK7'),
    ...more,
  });
  const may = (more: object, surfaces = 2): boolean => fits(relayGlassSchema, listing(surfaces, more));

  it('are two to sixteen, with thicknesses and glasses one fewer', () => {
    expect([1, 2, 16, 17].map((count) => may({ radiiMm: many(count, 50) }))).toEqual([false, true, true, false]);
    expect([0, 1, 15, 16].map((count) => may({ thicknessesMm: many(count, 3) }))).toEqual([false, true, true, false]);
    expect([0, 1, 15, 16].map((count) => may({ glasses: many(count, 'F2') }))).toEqual([false, true, true, false]);
    expect([1, 2, 16, 17].map((count) => may({ semiAperturesMm: many(count, 10) }))).toEqual([false, true, true, false]);
  });
  it('are as curved, thick, far and high as anything on a bench', () => {
    expect([-1_000_001, -1e6, 1e6, 1_000_001].map((r) => may({ radiiMm: [r, 50] }))).toEqual([false, true, true, false]);
    expect([may({ radiiMm: ['plane', 50] }), may({ radiiMm: ['flat', 50] })]).toEqual([true, false]);
    expect([-0.1, 0, 500, 500.1].map((t) => may({ thicknessesMm: [t] }))).toEqual([false, true, true, false]);
    expect([0.0499, 0.05, 250, 250.1].map((s) => may({ semiAperturesMm: [s, 10] }))).toEqual([false, true, true, false]);
    expect([-0.1, 0, 500, 500.1].map((gapMm) => may({ second: { gapMm, ...listing(2) } }))).toEqual([false, true, true, false]);
    expect([0.9, 1, 4, 4.1].map((n) => may({ glasses: [n] }))).toEqual([false, true, true, false]);
  });
});
