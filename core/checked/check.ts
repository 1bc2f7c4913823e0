import type { FIGURE_IDS, Pairing, RADIUS_IDS } from '../index.ts';
import type { Settings, TableFigureId } from '../table.ts';
import type { SourceId } from './sources.ts';

export type ToldId = (typeof FIGURE_IDS)[number] | (typeof RADIUS_IDS)[number] | TableFigureId;

/**
 * How the number is known: `read` in the source's own text; `formula read`, and the number worked out
 * from it with a pocket calculator; or recalled `from memory`.
 */
export type Known = 'read' | 'formula read' | 'from memory';

/** A pairing, and what is set on the table beside it. */
export interface OnTable {
  readonly pairing: Pairing;
  readonly settings: Settings;
}

/** What the source's own rounded inputs add to the tolerance, on either side, in the unit of the value. */
export interface Slack {
  readonly of: () => number;
  /** Goes into 'and what … adds'. */
  readonly why: string;
}

/** A printed number, and what must give it. Nothing is worked out before it is asked. */
export interface Value {
  /** Which of a check's numbers it is; left out where there is one. */
  readonly what?: string;
  /** As it stands in the source. */
  readonly printed: string;
  /** The same quantity out of core, in the unit in which the source prints it. */
  readonly of: () => number;
  /** True where the source cuts digits off instead of rounding. */
  readonly cutOff?: boolean;
  readonly slack?: Slack;
  /** What is printed under other conventions: none of it may come out. */
  readonly not?: readonly string[];
  /** The figure that the value is read from. */
  readonly figure?: ToldId;
  /** Where that figure can be looked at. */
  readonly rig?: () => OnTable;
}

/** What a source prints, number by number. Its citation stands under its id in `tests/published`. */
export interface Check {
  readonly id: string;
  readonly claim: string;
  readonly source: SourceId;
  readonly known: Known;
  /** How core comes to it. */
  readonly how: string;
  readonly values: readonly Value[];
}

/** What core has, and what it must be. */
export type Pair = readonly [core: number, law: number];

/** A statement that follows from a definition or from plain geometry: each pair must be equal. */
export interface Law {
  readonly law: string;
  /** Figures that break it when they are off. */
  readonly figures: readonly ToldId[];
  /** Each worked out when it is come to. */
  readonly pairs: () => Iterable<Pair>;
}
