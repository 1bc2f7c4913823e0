import type { Advice, Band, MadeKind, Places, SharpOver } from '../../core/glassworks.ts';
import type { Pairing } from '../../core/index.ts';

/** What the worker is asked: one search for one pairing; with a class, over the lenses of the class in the place of the relay's own glass. */
export interface Asked {
  id: number;
  pairing: Pairing;
  places: Places;
  /** What is to be sharp. */
  over: SharpOver;
  class?: MadeKind;
}

/** What came of it. */
export type Found = { advice: Advice; band?: undefined } | { band: Band; advice?: undefined };

/** What the worker answers: how far it has come, then what came of it, or why nothing did. */
export type Answered = { id: number; done: number; of: number } | { id: number; found: Found } | { id: number; failed: string };
