import { z } from '@hono/zod-openapi';
import { type Answer, DIMENSION, FIGURE_IDS, type FigureId, ORIGINS, type Unit } from '../../core/index.ts';
import { exactly } from './exactly.ts';

const unit = z.enum(Object.keys(DIMENSION) as [Unit, ...Unit[]]).openapi('Unit');

/** What a figure answers: known, without limit, unknown for want of inputs, or none with the reason. */
export const answerSchema = exactly<Answer>()(
  z
    .discriminatedUnion('state', [
      z.strictObject({
        state: z.literal('known'),
        value: z.number(),
        unit,
        low: z.number().optional(),
        high: z.number().optional(),
        origin: z.enum(ORIGINS),
      }),
      z.strictObject({ state: z.literal('unlimited'), unit, low: z.number().optional() }),
      z.strictObject({ state: z.literal('unknown'), unit, missing: z.array(z.string()) }),
      z.strictObject({ state: z.literal('none'), unit, why: z.string() }),
    ])
    .openapi('Answer'),
);

/** One answer for each id: the type follows from core's ids, so that a missing one does not compile. */
export const answersOf = <Id extends string>(ids: readonly Id[]) =>
  z.strictObject(Object.fromEntries(ids.map((id) => [id, answerSchema])) as Record<Id, typeof answerSchema>);

export const figuresSchema = answersOf<FigureId>(FIGURE_IDS).openapi('Figures');
export const someFiguresSchema = figuresSchema.partial().openapi('SomeFigures');
