import { z } from '@hono/zod-openapi';
import { closeUpSays } from '../../core/table.ts';
import type { TablePart } from './parts.ts';

export const CLOSE_UP: TablePart = {
  path: '/api/close-ups',
  summary: 'the close-up lens on a camera lens, and extension tubes beside it',
  asks: {},
  answers: { says: z.array(z.string()).describe('what it comes to, in sentences') },
  more: (evaluation) => ({ says: closeUpSays(evaluation) }),
};
