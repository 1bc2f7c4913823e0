import type { z } from '@hono/zod-openapi';
import type { Shelf } from '../../core/index.ts';
import type { TableEvaluation } from '../../core/table.ts';
import type { Stock } from '../catalogue.ts';

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
