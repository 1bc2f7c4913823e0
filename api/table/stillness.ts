import { z } from '@hono/zod-openapi';
import { stillnessSays } from '../../core/table.ts';
import type { TablePart } from './part.ts';

export const STILLNESS_PART: TablePart = {
  path: '/api/stillness',
  summary: 'light on the sensor beside a macro lens, and how still it must stand',
  asks: {},
  answers: { sentence: z.string() },
  more: (evaluation) => ({ sentence: stillnessSays(evaluation) }),
};
