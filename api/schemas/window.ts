import { z } from '@hono/zod-openapi';
import { LIMIT_NAMES, VARIABLES, type WindowAnswer, wantSchema } from '../../core/choosing.ts';
import { CIRCLES, FIGURE_IDS } from '../../core/index.ts';
import { exactly } from './exactly.ts';
import { pairingRequest } from './requests.ts';

const wanted = {
  want: wantSchema,
  vary: z
    .enum(VARIABLES)
    .optional()
    .openapi({ description: 'what is varied, a JSON Pointer into the pairing; /relay/focalLengthMm unless told' }),
  from: z.number().optional().openapi({ description: 'where it is looked for, mm; where it usually is unless told' }),
  to: z.number().optional(),
};

export const windowRequest = z.strictObject({ pairing: pairingRequest, ...wanted }).openapi('WindowRequest');
/** What surrounds the pairing, which is judged on its own. */
export const windowEnvelope = z.strictObject({ pairing: z.unknown().optional(), ...wanted });

const span = z.tuple([z.number(), z.number()]).openapi({ description: 'low and high, mm' });
const limitName = z.enum(LIMIT_NAMES);
const circle = z.enum(CIRCLES);

export const windowSchema = exactly<WindowAnswer>()(
  z
    .strictObject({
      vary: z.enum(VARIABLES),
      from: z.number(),
      to: z.number(),
      now: z.number().optional(),
      limits: z.array(
        z.strictObject({
          name: limitName,
          figure: z.enum(FIGURE_IDS),
          sense: z.enum(['least', 'most']),
          limit: z.number(),
          intervals: z.array(span),
          how: z.enum(['closed form', 'roots', 'not known']),
          unknown: z.array(z.string()).optional(),
          without: z.array(circle).optional(),
          nearest: z.strictObject({ at: z.number(), value: z.number() }).optional(),
        }),
      ),
      window: z.array(span),
      ends: z.array(
        z.strictObject({
          side: z.enum(['below', 'above']),
          at: z.number(),
          limits: z.array(limitName),
          circle: circle.optional(),
          says: z.string(),
        }),
      ),
      conflict: z.strictObject({ limits: z.tuple([limitName, limitName]), between: span }).optional(),
      stands: z.array(span),
      held: z.array(z.string()),
      says: z.string(),
    })
    .openapi('Window'),
);
