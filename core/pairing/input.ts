import type { Node } from '../figure.ts';
import type { LeafValues } from '../leaf-values.ts';
import type { Origin } from '../parts/quantity.ts';

/** One number that was put in, or taken in its place. */
export interface Input {
  /** JSON Pointer into the pairing. */
  readonly path: string;
  readonly leaf: Node;
  readonly value: number;
  readonly plusMinus: number;
  /** The interval that surely holds the truth. */
  readonly least: number;
  readonly greatest: number;
  readonly origin: Origin;
  /** Why it, or its interval, is a guess; undefined where it is not. */
  readonly guess: string | undefined;
  /**
   * That it moves nothing of the picture but what is told beside it, how long and how roomy the rig is, how well a cover
   * glass suits: it is moved by itself, never with the others at once, whose number decides how often everything is
   * worked out. `one way` where it moves each figure up, or down, only.
   */
  readonly apart?: 'one way' | 'both ways' | undefined;
  /** The leaf's value with this input moved to `x`. */
  put(current: unknown, x: number): unknown;
}

export interface Inputs {
  readonly values: LeafValues;
  readonly list: readonly Input[];
}

/** The path of what the glass decides; the unknown mapping of a relay without glass counts under it too. */
export const GLASS = '/relay/glass';
