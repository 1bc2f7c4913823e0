import type { FIGURE_IDS, RADIUS_IDS } from '../../core/index.ts';
import type { TableFigureId } from '../../core/table.ts';

export type ToldId = (typeof FIGURE_IDS)[number] | (typeof RADIUS_IDS)[number] | TableFigureId;

export interface Source {
  readonly title: string;
  /** Author, publisher or both. */
  readonly by: string;
  readonly year?: number;
  /** Page, section or address. */
  readonly where?: string;
}

/**
 * How the number is known: `read` in the source's own text; `formula read`, and the number worked out
 * from it with a pocket calculator; or recalled `from memory`.
 */
export type Known = 'read' | 'formula read' | 'from memory';

export interface Value {
  /** Which of a row's numbers it is; left out where there is one. */
  readonly what?: string;
  /** As it stands in the source. */
  readonly printed: string;
  /** The same quantity out of core, in the unit in which the source prints it. */
  readonly of: () => number;
  /** True where the source cuts digits off instead of rounding. */
  readonly cutOff?: true;
  /** What the source's own rounded inputs add to the tolerance. */
  readonly slack?: number;
  /** The figure of a report that the value is read from. */
  readonly figure?: ToldId;
}

export interface Row {
  readonly id: string;
  readonly claim: string;
  readonly source: Source;
  readonly known: Known;
  /** How core comes to it. */
  readonly how: string;
  readonly values: readonly Value[];
}
