import { type Problem, steps, valueAt } from '../../core/index.ts';
import { commit } from '../state/address.ts';
import { answered, draft, edit } from '../state/draft.ts';
import { toldAt } from './complaint.tsx';

/** What inputs stand on: where they are read, written, complained of. Paths are those of a pairing. */
export interface Sheet {
  /** Before the ids of its inputs, where several sheets may lie open at once. */
  readonly mark: string;
  at(path: string): unknown;
  /** Undefined takes the value out. */
  edit(path: string, value: unknown): void;
  /** What is said against the input at a path. */
  found(path: string): readonly Problem[];
  /** An input was left, or what was typed settled by Enter. */
  done(): void;
  /** That ± and origin are asked for only where a value stands: what is left out is as usual, and nobody marked it. */
  readonly brief?: true;
  /** What is worked with where nothing, or no ±, is given. */
  taken(path: string): { value: number; plusMinus: number; origin: string } | undefined;
}

/** The pairing that the page works out. */
export const PAIRING: Sheet = {
  mark: '',
  at: (path) => valueAt(draft.value, steps(path)),
  edit,
  found: toldAt,
  done: commit,
  taken: (path) => answered.value.inputs.find((input) => input.path === path),
};
