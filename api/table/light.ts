import { z } from '@hono/zod-openapi';
import { lightSentence } from '../../core/table.ts';
import type { TablePart } from './part.ts';

export const LIGHT_PART: TablePart = {
  path: '/api/lighting',
  summary: 'room for light at the subject',
  asks: {},
  answers: { sentence: z.string() },
  more: (evaluation) => ({ sentence: lightSentence(evaluation) }),
};
