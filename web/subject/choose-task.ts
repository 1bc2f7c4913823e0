import type { Asked, Choices, LimitAnswer, NearMiss, OneMore } from '../../core/choosing.ts';

/** What the worker is asked; without a question it lets go of what it does. */
export interface Task {
  id: number;
  asked?: Asked;
  /** The same with all parts there are: what one more part would open. */
  more?: Asked | undefined;
}

/** A near miss with how all its limits fare, those that are met too. */
export interface Miss extends NearMiss {
  limits: LimitAnswer[];
}

export interface Found extends Omit<Choices, 'nearMisses'> {
  nearMisses: Miss[];
}

/** What the worker answers: how far it has come, what it found, what one more part would open, or why nothing came of it. */
export type Told =
  | { id: number; done: number; of: number; told: number }
  | { id: number; found: Found }
  | { id: number; more: OneMore }
  | { id: number; failed: string };
