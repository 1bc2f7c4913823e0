import type { TableFigureId } from '../../core/table.ts';

/** What the printed sheet takes of a section. */
export interface OnSheet {
  /** Its sentence, and what else is said beside it. */
  readonly says: readonly string[];
  /** What the sentence does not tell already. */
  readonly figures: readonly TableFigureId[];
  /** Things in their order. */
  readonly list?: readonly string[];
}
