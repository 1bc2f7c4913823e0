import { z } from '@hono/zod-openapi';
import { infinitySays, infinitySteps, TUBE_BITES, tubeBites, tubeStudy } from '../../core/table.ts';
import type { TablePart } from './part.ts';

/** Errors of the tube that a curve is told at, mm: closer about 0, where they are small. */
const ERRORS = [0.1, 0.2, 0.5, 1, 2, 3, 5, 7, 10, 15, 20, 30, 50, 70, 100, 150, 200];
const ALL = [...ERRORS.map((e) => -e).reverse(), 0, ...ERRORS];

const pointSchema = z.strictObject({ tubeErrorMm: z.number(), magnification: z.number(), strehl: z.number().min(0).max(1) });

export const INFINITY_PART: TablePart = {
  path: '/api/infinity',
  summary: 'how wrong infinity may be set, what a far thing leaves in its place, and what lies over the subject',
  asks: {},
  answers: {
    sentence: z.string(),
    steps: z.array(z.string()).openapi({ description: 'how infinity is set with this kind of relay' }),
    bites: z.enum(TUBE_BITES).optional().openapi({ description: 'what ends the tolerance of the tube; left out where nothing does' }),
    curve: z.array(pointSchema).openapi({ description: 'the errors of the tube at which there is a picture' }),
  },
  more: (evaluation) => {
    const [study, bites] = [tubeStudy(evaluation), tubeBites(evaluation)];
    return {
      sentence: infinitySays(evaluation),
      steps: infinitySteps(evaluation),
      ...(bites ? { bites } : {}),
      curve: ALL.flatMap((error) => study?.at(error) ?? []),
    };
  },
};
