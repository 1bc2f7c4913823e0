import { z } from 'zod';
import { quantity } from '../../parts/quantity.ts';

/** No reading is finer, in any unit of these. */
const FINEST = 1e-9;

/**
 * What a person can see on the table. A reading carries the half-width of an interval that surely holds what was
 * read, the same sense in which every ± of this project is meant; without one it says nothing, so it has to be given.
 */
const reading = (low: number, high: number) =>
  z.strictObject(
    { value: z.number().min(low).max(high), plusMinus: z.number().min(FINEST).max(high) },
    {
      error: ({ code }) =>
        code === 'invalid_type'
          ? 'must be an object with the value that was read and its plusMinus: {"value": …, "plusMinus": …}'
          : undefined,
    },
  );

/** A number that a reading is made with: taken as exact where it is bare. */
const exactOr = (low: number, high: number) =>
  z.union([
    z.number().min(low).max(high),
    z.strictObject({ value: z.number().min(low).max(high), plusMinus: z.number().min(0).max(high).optional() }),
  ]);

/** Where the rig stood when it differs from the pairing. */
const stood = { infinitySpaceMm: quantity('infinitySpaceMm').optional(), sensorOffsetMm: quantity('sensorOffsetMm').optional() };

/** Which of two numbers a magnification is to settle; the one known less well where it is left out. */
const gives = z.enum(['relay', 'objective']).optional();

/** Millimetres of a ruler across the sensor's width. */
const ruler = z.strictObject({ kind: z.literal('ruler'), acrossMm: reading(0.001, 500), gives, ...stood });

/** Divisions of a stage micrometer over so many pixels, or across the sensor's whole width. */
const micrometer = z.strictObject({
  kind: z.literal('micrometer'),
  divisions: exactOr(0.1, 100_000),
  divisionUm: exactOr(0.1, 10_000),
  pixels: reading(2, 1_000_000).optional(),
  gives,
  ...stood,
});

/** An even wall, photographed raw: the corner against the middle, or a distance from the middle. One of the four. */
const wall = z.strictObject({
  kind: z.literal('wall'),
  // Noise may show a corner a little brighter than the middle.
  cornerLossEv: reading(-1, 12).optional(),
  cornerShare: reading(0, 1.5).optional(),
  onsetRadiusMm: reading(0.01, 250).optional(),
  halfRadiusMm: reading(0.01, 250).optional(),
  ...stood,
});

/** The relay alone casts the sharp picture of a far thing. From its principal planes: of a thin lens from its middle. */
const far = z.strictObject({ kind: z.literal('far'), imageMm: reading(5, 10_000), thingMm: exactOr(500, 100_000_000) });

/** The relay alone on the camera, a ruler in the picture, at two extensions: the first is the shorter. */
const extensions = z.strictObject({
  kind: z.literal('extensions'),
  firstAcrossMm: reading(0.001, 5000),
  secondAcrossMm: reading(0.001, 5000),
  apartMm: exactOr(0.1, 1000),
});

const sightingSchema = z.discriminatedUnion('kind', [ruler, micrometer, wall, far, extensions]);
export type Sighting = z.infer<typeof sightingSchema>;
export const SIGHTING_KINDS = ['ruler', 'micrometer', 'wall', 'far', 'extensions'] as const satisfies readonly Sighting['kind'][];
export type SightingKind = (typeof SIGHTING_KINDS)[number];

export const MOST_SIGHTINGS = 12;
export const sightingsSchema = z.array(sightingSchema).min(1).max(MOST_SIGHTINGS);

/** The four ways to read a wall. */
export const WALL_READINGS = ['cornerLossEv', 'cornerShare', 'onsetRadiusMm', 'halfRadiusMm'] as const;
export type WallReading = (typeof WALL_READINGS)[number];

export const wallReading = (s: Extract<Sighting, { kind: 'wall' }>): WallReading =>
  WALL_READINGS.find((name) => s[name] !== undefined) as WallReading;
