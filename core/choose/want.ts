import { z } from 'zod';
import { BOUNDS, type Bounded, bounded } from '../parts/quantity.ts';

/** Two ends of what is wanted, the smaller first. */
const between = (least: number, greatest: number) =>
  z.tuple([z.number().min(least).max(greatest), z.number().min(least).max(greatest)]).superRefine(([low, high], context) => {
    if (low <= high) return;
    context.addIssue({
      code: 'custom',
      message: `must begin with the smaller end: nothing is at least ${low} and at most ${high}`,
      params: { code: 'contradiction', expected: `[${high}, ${low}]` },
    });
  });

const share = z.number().min(0.01).max(1);
const length = (name: Bounded) => z.number().min(BOUNDS[name][0]).max(BOUNDS[name][1]);

const subjectSchema = z.strictObject({
  widthMm: bounded('subjectWidthMm'),
  heightMm: bounded('subjectHeightMm').optional(),
  depthMm: bounded('subjectDepthMm').optional(),
  /** How much of the frame's side it shall fill at least, where it is tightest. */
  shareOfFrame: share.optional(),
});

/**
 * What a person wants of a rig; what is left out is not asked for. Lengths in mm, the finest detail as the
 * distance in µm of two points that are told apart, angles in degrees, light and areas as shares. Coverage
 * is judged on the subject, or on as much of the frame as `minCoveredShare` says.
 */
export const wantSchema = z.strictObject({
  subject: subjectSchema.optional(),
  fieldWidthMm: between(0.001, 3000).optional(),
  magnification: between(0.01, 1000).optional(),
  finestDetailUm: z.number().min(0.05).max(1000).optional(),
  minWorkingDistanceMm: length('workingDistanceMm').optional(),
  /** Room for what spreads the light: so deep before the subject, and open so far up from its plane. */
  lightingClearance: z.strictObject({ depthMm: length('workingDistanceMm'), minConeDeg: z.number().min(0).max(90) }).optional(),
  minCoveredShare: share.optional(),
  minCornerIllumination: share.optional(),
  samplingRatio: between(0.01, 100).optional(),
  maxLengthMm: z.number().min(10).max(9000).optional(),
  maxPrice: z.number().min(0).max(1e8).optional(),
  /** The glass between subject and objective: 0 for none. */
  coverGlassMm: length('coverGlassMm').optional(),
});

export type Want = z.infer<typeof wantSchema>;

/** The subject as a pairing tells it. */
export const subjectOf = ({ subject }: Want): { widthMm: number; heightMm?: number; depthMm?: number } | undefined => {
  if (!subject) return undefined;
  const { shareOfFrame: _, ...box } = subject;
  return Object.fromEntries(Object.entries(box).filter(([, side]) => side !== undefined)) as ReturnType<typeof subjectOf>;
};
