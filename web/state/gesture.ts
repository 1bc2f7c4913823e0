import { commit } from './address.ts';
import { draft, take } from './draft.ts';
import { held } from './held.ts';

/**
 * A handle of a drawing that is moved by hand: everything follows each change, the history gets one step
 * when it is let go, and nothing when it is given up.
 */
let before: object | undefined;

/** @param name tells one handle from another */
export function hold(name: string): void {
  if (held.peek() === name) return;
  letGo();
  before = draft.peek();
  held.value = name;
}

/** Lets go: what was moved becomes one step of history. */
export function letGo(): void {
  if (held.peek() === undefined) return;
  held.value = undefined;
  before = undefined;
  commit();
}

/** Gives up: what stood there before comes back. */
export function giveUp(): void {
  if (held.peek() === undefined) return;
  held.value = undefined;
  if (before) take(before);
  before = undefined;
}
