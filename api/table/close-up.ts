import { z } from '@hono/zod-openapi';
import { closeUpClaims, closeUpSays } from '../../core/table.ts';
import type { TablePart } from './part.ts';

export const CLOSE_UP: TablePart = {
  path: '/api/close-ups',
  summary: 'the close-up lens on a camera lens, and extension tubes beside it',
  asks: {},
  answers: {
    says: z.array(z.string()).describe('what it comes to, in sentences'),
    claims: z.array(z.string()).describe('what is often said of close-up lenses, reckoned for this one'),
  },
  more: (evaluation) => ({ says: closeUpSays(evaluation), claims: closeUpClaims(evaluation) }),
};
