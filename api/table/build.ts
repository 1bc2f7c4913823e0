import { z } from '@hono/zod-openapi';
import { quantity } from '../../core/index.ts';
import { type BuildAsk, buildAskShape, buildEffects, buildSentence, buildSheet } from '../../core/table.ts';
import { WORKS } from '../works.ts';
import type { TablePart } from './part.ts';

const number = (description: string) => z.number().openapi({ description });

const part = z
  .strictObject({
    what: z.string(),
    role: z.enum(['objective', 'ring', 'tube', 'relay', 'mount', 'camera', 'missing']),
    front: z.string().optional().openapi({ description: 'its end toward the objective: sex and thread' }),
    rear: z.string().optional().openapi({ description: 'its end toward the camera' }),
    lengthMm: number('from seat to seat, as it is set').optional(),
    clearMm: number('its clear opening').optional(),
    acrossMm: number('how wide it is outside, by its threads').optional(),
    supposed: z
      .array(z.enum(['lengthMm', 'clearMm']))
      .optional()
      .openapi({ description: 'which of its numbers are taken as usual, for want of its own' }),
    standing: z.enum(['in the pairing', 'owned', 'to buy', 'missing']),
    remark: z.string().optional(),
  })
  .openapi('BuildPart');

const stop = z.strictObject({
  label: z.string(),
  diameterMm: quantity('diameterMm'),
  fromShoulderMm: z.number().optional(),
  fromSensorMm: z.number().optional(),
});

const run = z
  .discriminatedUnion('state', [
    z.strictObject({
      state: z.literal('joined'),
      parts: z.number().int().openapi({ description: 'how many pieces' }),
      lengthMm: z.number(),
      leastMm: number('as short as a focusing tube turns'),
      mostMm: number('as long as a focusing tube turns'),
      wantedMm: z.number().optional(),
      wantedLowMm: number('the least that may be wanted').optional(),
      wantedHighMm: number('the greatest that may be wanted').optional(),
      differsMm: number('how much longer it is than wanted; negative where it is too short').optional(),
      toBuy: z.number().int(),
      narrowest: stop.optional().openapi({ description: "the narrowest opening, as one of the pairing's stops" }),
    }),
    z.strictObject({
      state: z.literal('none'),
      why: z.string(),
      wouldDo: z.string().openapi({ description: 'the ring that would close the gap' }),
      kept: z.number().int().openapi({ description: 'how many pieces go on all the same' }),
    }),
    z.strictObject({ state: z.literal('unknown'), why: z.string(), path: z.string() }),
    z.strictObject({ state: z.literal('nothing'), why: z.string() }),
  ])
  .openapi('BuildRun');

export const BUILD_PART: TablePart = {
  path: '/api/builds',
  summary: 'what to screw together, and how long it is',
  asks: buildAskShape,
  answers: {
    sentence: z.string(),
    parts: z.array(part).openapi({ description: 'from the objective to the camera' }),
    front: run,
    back: run,
    side: z.string().optional().openapi({ description: 'which side of the relay faces the objective, by its thread' }),
    piecesTurned: z
      .number()
      .int()
      .optional()
      .openapi({ description: 'how many pieces it takes with the relay turned round, where that is fewer' }),
    tubeMm: z
      .strictObject({ value: z.number(), low: z.number(), high: z.number() })
      .optional()
      .openapi({ description: 'the tube to build, and what focusing must reach' }),
  },
  more: (evaluation, asked) => {
    const sheet = buildSheet(evaluation, asked as BuildAsk);
    return { sentence: buildSentence(evaluation, sheet, buildEffects(evaluation, sheet, WORKS)), ...sheet };
  },
};
