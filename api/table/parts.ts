import type { z } from '@hono/zod-openapi';
import type { Shelf } from '../../core/index.ts';
import type { TableEvaluation, TableGroup } from '../../core/table.ts';
import type { Stock } from '../catalogue.ts';
import { BUILD_PART } from './build.ts';
import { CLOSE_UP } from './close-up.ts';
import { INFINITY_PART } from './infinity.ts';
import { LIGHT_PART } from './light.ts';
import { STACK_PART } from './stack.ts';
import { STILLNESS_PART } from './stillness.ts';

/** A part of the table as a route tells it: where, and what it asks and answers beside its figures and settings. */
export interface TablePart {
  readonly path: string;
  readonly summary: string;
  /** What a request may hold beside pairing, subject and settings. */
  readonly asks: z.ZodRawShape;
  /** Of that what `more` judges by itself, as the request is read before. */
  readonly unjudged?: z.ZodRawShape;
  /** What the answer holds beside figures, assumptions and cautions. */
  readonly answers: z.ZodRawShape;
  /** Works that out. @throws Refusal */
  more(evaluation: TableEvaluation, asked: Readonly<Record<string, unknown>>, shelf: Shelf, stock: Stock): object;
}

export const TABLE_PARTS: Record<TableGroup, TablePart> = {
  build: BUILD_PART,
  infinity: INFINITY_PART,
  stack: STACK_PART,
  stillness: STILLNESS_PART,
  light: LIGHT_PART,
  closeUp: CLOSE_UP,
};
