import { batch } from '@preact/signals';
import { commit } from './address.ts';
import { draft, take } from './draft.ts';
import { byHand, held } from './held.ts';
import { hasGlass } from './works.ts';

/**
 * A handle of a drawing that is moved: everything follows each change, the history gets one step when it
 * is let go, and nothing when it is given up.
 */
let before: object | undefined;

/** @param name tells one handle from another */
export function hold(name: string, how: 'hand' | 'keys'): void {
  if (held.peek() === name) return;
  letGo();
  before = draft.peek();
  batch(() => {
    held.value = name;
    byHand.value = how === 'hand';
  });
}

/** Lets go: what was moved becomes one step of history. */
export function letGo(): void {
  if (held.peek() === undefined) return;
  const moved = before !== draft.peek();
  before = undefined;
  batch(released);
  commit();
  if (moved) settleExactly();
}

/** What was worked out in a hurry is worked out once more, exactly, when the screen has shown the end of the move. */
function settleExactly(): void {
  const ended = draft.peek();
  if (!hasGlass(ended)) return;
  requestAnimationFrame(() =>
    setTimeout(() => {
      if (draft.peek() === ended && held.peek() === undefined) take(ended);
    }),
  );
}

/** Gives up: what stood there before comes back. */
export function giveUp(): void {
  if (held.peek() === undefined) return;
  const back = before;
  before = undefined;
  batch(() => {
    // First the hand goes, so that what comes back is worked out exactly.
    released();
    if (back) take(back);
  });
}

function released(): void {
  held.value = undefined;
  byHand.value = false;
}
