import { z } from '@hono/zod-openapi';
import { CIRCLES, type Comparison, RADIUS_IDS, type Report, type SweepAnswer, VERDICTS } from '../../core/index.ts';
import { answersOf, figuresSchema, someFiguresSchema } from './answer.ts';

/** The answers of the three pairing routes. `satisfies` holds each to core's own type. */

const circle = z.enum(CIRCLES).openapi('Circle');
const judged = { verdict: z.enum(VERDICTS), bites: circle.optional(), hangsOn: z.array(z.string()) };

const coverageSchema = z
  .strictObject({
    ...judged,
    unknown: z.array(circle),
    reasons: z.array(z.string()),
    largestCropMm: z.tuple([z.number(), z.number()]),
    subject: z.strictObject({ ...judged, diagonalMm: z.number(), fits: z.boolean() }).optional(),
  })
  .openapi('Coverage');

const vignettingSchema = answersOf(RADIUS_IDS)
  .extend({
    curve: z.array(z.strictObject({ radiusMm: z.number(), relativeIllumination: z.number().min(0).max(1), lossEv: z.number().optional() })),
    cuts: z.array(
      z.strictObject({
        stop: z.string(),
        onsetRadiusMm: z.number(),
        shareOfCornerLoss: z.number().min(0).max(1),
        clearsAt: z.strictObject({ diameterMm: z.number().optional(), infinitySpaceMm: z.number().optional() }).optional(),
      }),
    ),
  })
  .openapi('Vignetting');

const assumptionSchema = z
  .strictObject({ path: z.string(), value: z.number(), plusMinus: z.number(), why: z.string(), matters: z.number().min(0).max(1) })
  .openapi('Assumption');

export const reportSchema = z
  .strictObject({
    figures: figuresSchema,
    vignetting: vignettingSchema,
    sentence: z.string(),
    coverage: coverageSchema,
    assumptions: z.array(assumptionSchema),
    cautions: z.array(z.string()),
  })
  .openapi('Report') satisfies z.ZodType<Report>;

export const sweepSchema = z
  .strictObject({
    vary: z.string(),
    values: z.array(z.number()),
    reports: z.array(z.strictObject({ figures: someFiguresSchema, coverage: coverageSchema })),
  })
  .openapi('Sweep') satisfies z.ZodType<SweepAnswer>;

export const comparisonSchema = z
  .strictObject({
    reports: z.array(reportSchema),
    differences: z.array(z.strictObject({ from: z.number().int(), of: z.number().int(), figures: figuresSchema })),
  })
  .openapi('Comparison') satisfies z.ZodType<Comparison>;
