import { z } from 'zod';

/** Where a number comes from, weakest first. */
export const ORIGINS = ['assumed', 'marked', 'measured'] as const;
export type Origin = (typeof ORIGINS)[number];

/**
 * The least and the greatest that each input may be. They are wide enough for anything that a bench
 * can hold and narrow enough that no formula leaves the finite numbers.
 */
export const BOUNDS = {
  magnification: [0.1, 250],
  na: [0.001, 1.7],
  referenceFocalLengthMm: [10, 1000],
  fieldNumberMm: [0.1, 100],
  testedFieldMm: [0.1, 100],
  workingDistanceMm: [0, 500],
  parfocalDistanceMm: [5, 500],
  noseDiameterMm: [0.1, 200],
  coverGlassMm: [0, 20],
  immersionIndex: [1, 2.5],
  exitPupilFromShoulderMm: [-300, 300],
  focalLengthMm: [5, 5000],
  powerDioptre: [0.2, 200],
  clearApertureMm: [0.1, 500],
  entrancePupilDiameterMm: [0.1, 500],
  fNumber: [0.5, 256],
  entrancePupilDepthMm: [-500, 1000],
  imageCircleMm: [0.1, 500],
  frontPrincipalPlaneFromRimMm: [-2000, 2000],
  backFocalLengthMm: [0, 5000],
  rimToSensorMm: [1, 6000],
  widthMm: [0.1, 300],
  heightMm: [0.1, 300],
  pixelPitchUm: [0.1, 1000],
  registerMm: [0.1, 500],
  throatDiameterMm: [0.1, 500],
  infinitySpaceMm: [0, 2000],
  diameterMm: [0.1, 500],
  fromShoulderMm: [-300, 2000],
  fromSensorMm: [0, 5000],
  subjectWidthMm: [0.0001, 1000],
  subjectHeightMm: [0.0001, 1000],
  subjectDepthMm: [0, 1000],
  index: [1, 4],
  wavelengthNm: [100, 3000],
  sensorOffsetMm: [-500, 500],
  litThreshold: [0.01, 0.99],
  blurUm: [0.01, 1000],
  radiusMm: [0, 500],
  relativeContrast: [0.01, 1],
  frequencyLpPerMm: [0.1, 10000],
} as const satisfies Record<string, readonly [number, number]>;

export type Bounded = keyof typeof BOUNDS;

/** A bare number within the bounds of its name. */
export const bounded = (name: Bounded) => numberIn(BOUNDS[name]);

export type Ends = readonly [least: number, greatest: number];

const numberIn = ([least, greatest]: Ends) => z.number().min(least).max(greatest);

/**
 * A number, or a number with its story: `plusMinus` is the half-width of an interval that surely
 * holds the truth, `marked` what the engraving says where a measurement has replaced it.
 * A bare number counts as marked.
 */
export const quantity = (name: Bounded) => quantityIn(BOUNDS[name]);

/** The same between bounds of its own. */
export const quantityIn = ([low, high]: Ends) => {
  const number = numberIn([low, high]);
  return z.union([
    number,
    z
      .strictObject({
        value: number,
        plusMinus: z
          .number()
          .min(0)
          .max(high - low)
          .optional(),
        origin: z.enum(ORIGINS).optional(),
        marked: number.optional(),
      })
      .superRefine(({ value, plusMinus = 0 }, context) => {
        // A value out of bounds is a problem of its own.
        if (!(value >= low && value <= high)) return;
        if (value - plusMinus >= low && value + plusMinus <= high) return;
        const widest = Math.min(value - low, high - value);
        context.addIssue({
          code: 'custom',
          path: ['plusMinus'],
          message: `reaches from ${value - plusMinus} to ${value + plusMinus}, and this input lives between ${low} and ${high}`,
          params: { code: 'tooBig', expected: `at most ${Number(widest.toPrecision(6))}` },
        });
      }),
  ]);
};

export type QuantityInput =
  | number
  | { value: number; plusMinus?: number | undefined; origin?: Origin | undefined; marked?: number | undefined };

/** A quantity with nothing left to guess. */
export interface Quantity {
  value: number;
  plusMinus: number;
  origin: Origin;
}

/** A quantity as it was given, with what goes without saying. */
export const quantityOf = (q: QuantityInput): Quantity =>
  typeof q === 'number'
    ? { value: q, plusMinus: 0, origin: 'marked' }
    : { value: q.value, plusMinus: q.plusMinus ?? 0, origin: q.origin ?? 'marked' };

export const amount = (q: QuantityInput): number => (typeof q === 'number' ? q : q.value);

export const isMeasured = (q: QuantityInput | undefined): boolean => typeof q === 'object' && q.origin === 'measured';

/** Text that a person types or reads. */
export const name = z.string().min(1).max(120);
