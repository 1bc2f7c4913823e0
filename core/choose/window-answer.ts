import type { Pairing } from '../pairing/schema.ts';
import type { Conflict, End } from './ends.ts';
import type { LimitWindow } from './limit-windows.ts';
import type { Limit } from './limits.ts';
import type { Variable } from './quantities.ts';
import type { Span } from './spans.ts';

export interface WindowQuestion {
  readonly pairing: Pairing;
  readonly vary: Variable;
  /** Where it is looked for, in mm; where it usually is unless told. */
  readonly from?: number | undefined;
  readonly to?: number | undefined;
  readonly limits: readonly Limit[];
}

/** Where a quantity may lie, all else held. An end at `from` or at `to` is none: it goes on beyond what was looked at. */
export interface WindowAnswer {
  vary: Variable;
  from: number;
  to: number;
  /** What it is in the pairing itself, where that is known. */
  now?: number;
  limits: LimitWindow[];
  /** Where all limits that are known are met; nowhere where nothing that is asked is known. */
  window: Span[];
  /** What closes the window on either side, from below to above; nothing where it goes on. */
  ends: End[];
  /** Of a window that is empty: the two limits farthest from each other. */
  conflict?: Conflict;
  /** Where there is such a rig at all. */
  stands: Span[];
  /** What is held fixed, in words. */
  held: string[];
  says: string;
}
