import { effect, signal } from '@preact/signals';
import { type Judging, judgingOf, listedLens, type SharpOver, type Study, studyOf } from '../../core/glassworks.ts';
import { amount, type Evaluation } from '../../core/index.ts';
import { answered } from '../state/draft.ts';
import { held } from '../state/held.ts';

/** The relay's glass where it stands now, and what it is judged by. */
export interface Studied {
  for: Evaluation;
  judging: Judging;
  study: Study;
}

/** What is to be sharp: a subject only where its size is told. */
export const sharpOver = signal<SharpOver>('picture');

/** Of the pairing that is shown; undefined where its glass is not known, or until it is worked out. */
export const studied = signal<Studied | undefined>(undefined);

/** While a hand moves something a study takes its turn so long after the last, ms: the hand goes first. */
const BREATHER_MS = 120;

/** Keeps the study up as long as a view shows it: after the answer is painted, so that nothing is held up. */
export function followStudy(): () => void {
  let turn: ReturnType<typeof setTimeout> | undefined;
  let ended = Number.NEGATIVE_INFINITY;
  let open = true;
  const take = (): void => {
    turn = undefined;
    if (!open) return;
    const evaluation = answered.peek();
    if (evaluation.pairing.relay.glass) studied.value = studyFor(evaluation, sharpOver.peek());
    ended = performance.now();
  };
  const stop = effect(() => {
    const evaluation = answered.value;
    sharpOver.value;
    if (!evaluation.pairing.relay.glass) {
      studied.value = undefined;
      return;
    }
    // One that waits takes the newest pairing when its turn comes.
    if (turn !== undefined) return;
    const wait = held.peek() === undefined ? 0 : Math.max(0, BREATHER_MS - (performance.now() - ended));
    turn = setTimeout(() => requestAnimationFrame(() => setTimeout(take)), wait);
  });
  return () => {
    stop();
    open = false;
    clearTimeout(turn);
    studied.value = undefined;
  };
}

function studyFor(evaluation: Evaluation, over: SharpOver): Studied | undefined {
  const { pairing } = evaluation;
  const { lens } = listedLens(pairing.relay);
  if (!lens) return undefined;
  const judging = judgingOf(evaluation, lens, over);
  return { for: evaluation, judging, study: studyOf(judging, amount(pairing.infinitySpaceMm)) };
}
