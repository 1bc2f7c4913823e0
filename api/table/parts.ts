import type { z } from '@hono/zod-openapi';
import type { Shelf } from '../../core/index.ts';
import type { TableEvaluation, TableGroup } from '../../core/table.ts';
import { BUILD_PART } from './build.ts';
import { INFINITY_PART } from './infinity.ts';
import { STILLNESS_PART } from './stillness.ts';

/** A part of the table as a route tells it: where, and what it asks and answers beside its figures and settings. */
export interface TablePart {
  readonly path: string;
  readonly summary: string;
  /** What a request may hold beside pairing, subject and settings. */
  readonly asks: z.ZodRawShape;
  /** What the answer holds beside figures, assumptions and cautions. */
  readonly answers: z.ZodRawShape;
  /** Works that out. @throws Refusal */
  more(evaluation: TableEvaluation, asked: Readonly<Record<string, unknown>>, shelf: Shelf): object;
}

const plain = (path: string, summary: string): TablePart => ({ path, summary, asks: {}, answers: {}, more: () => ({}) });

export const TABLE_PARTS: Record<TableGroup, TablePart> = {
  build: BUILD_PART,
  infinity: INFINITY_PART,
  stack: plain('/api/stacks', 'the frames for this subject'),
  stillness: STILLNESS_PART,
  light: plain('/api/lighting', 'room for light at the subject'),
  closeUp: plain('/api/close-ups', 'the close-up lens on other lenses'),
};
