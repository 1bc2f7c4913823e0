import { z } from '@hono/zod-openapi';
import { CIRCLES, type Comparison, RADIUS_IDS, type Report, type SweepAnswer, VERDICTS } from '../../core/index.ts';
import { answersOf, figuresSchema, someFiguresSchema } from './answer.ts';
import { exactly } from './exactly.ts';

/** The answers of the three pairing routes. `exactly` holds each to core's own type. */

const circle = z.enum(CIRCLES).openapi('Circle');
const verdict = z.enum(VERDICTS).openapi('Verdict');
const judged = {
  verdict,
  bites: circle.optional(),
  hangsOn: z.array(z.string()),
  between: z.tuple([verdict, verdict]).optional(),
};

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

export const assumptionSchema = z
  .strictObject({ path: z.string(), value: z.number(), plusMinus: z.number(), why: z.string(), matters: z.number().min(0).max(1) })
  .openapi('Assumption');

export const reportSchema = exactly<Report>()(
  z
    .strictObject({
      figures: figuresSchema,
      vignetting: vignettingSchema,
      sentence: z.string(),
      coverage: coverageSchema,
      assumptions: z.array(assumptionSchema),
      cautions: z.array(z.string()),
    })
    .openapi('Report'),
);

export const sweepSchema = exactly<SweepAnswer>()(
  z
    .strictObject({
      vary: z.string(),
      values: z.array(z.number()),
      reports: z.array(z.strictObject({ figures: someFiguresSchema, coverage: coverageSchema })),
    })
    .openapi('Sweep'),
);

export const comparisonSchema = exactly<Comparison>()(
  z
    .strictObject({
      reports: z.array(reportSchema),
      differences: z.array(z.strictObject({ from: z.number().int(), of: z.number().int(), figures: figuresSchema })),
    })
    .openapi('Comparison'),
);
