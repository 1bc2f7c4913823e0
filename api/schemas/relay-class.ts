import { z } from '@hono/zod-openapi';
import { type ClassFamily, MADE_KINDS } from '../../core/glassworks.ts';
import { BOUNDS } from '../../core/index.ts';
import { exactly } from './exactly.ts';

const [shortest, longest] = BOUNDS.focalLengthMm;
const [narrowest, widest] = BOUNDS.clearApertureMm;

export const classRequest = z
  .strictObject({
    class: z.enum(MADE_KINDS),
    focalLengthMm: z.number().min(shortest).max(longest),
    clearApertureMm: z.number().min(narrowest).max(widest),
  })
  .openapi('ClassRequest');

const residuals = z.strictObject({
  axialColourMm: z.number().openapi({ description: 'back focus for F less that for C' }),
  secondaryColourMm: z.number().openapi({ description: 'back focus for d less the mean of those for F and C' }),
  sphericalRmsUm: z.number(),
  pictureRmsUm: z.number().openapi({ description: 'over the pictures of the close-up job: what the lens was bent to make least' }),
  worstRmsUm: z.number(),
  centreThicknessesMm: z.array(z.number()),
  edgeThicknessesMm: z.array(z.number()),
});

export const familySchema = exactly<ClassFamily>()(
  z
    .strictObject({
      lenses: z.array(
        z.strictObject({
          name: z.string(),
          crown: z.string(),
          flint: z.string().optional(),
          leading: z.enum(['crown', 'flint']),
          glass: z.strictObject({
            radiiMm: z.array(z.union([z.number(), z.literal('plane')])),
            thicknessesMm: z.array(z.number()),
            glasses: z.array(z.string()),
            semiAperturesMm: z.array(z.number()),
          }),
          residuals,
        }),
      ),
      unmade: z.array(z.strictObject({ name: z.string(), why: z.string() })),
    })
    .openapi('ClassFamily'),
);
