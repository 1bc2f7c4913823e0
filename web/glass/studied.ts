import { effect, signal } from '@preact/signals';
import { type Judging, judgingOf, type SharpOver, type Study, studyOf } from '../../core/glassworks.ts';
import { amount, type Evaluation } from '../../core/index.ts';
import { answered } from '../state/draft.ts';
import { held } from '../state/held.ts';
import { listedFor } from './listed-for.ts';

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

/** A hand that moves something goes first: the study is taken up when it has rested for so long, ms. */
const REST_MS = 160;

/** Keeps the study up as long as a view shows it: after the answer is painted, so that nothing is held up. */
export function followStudy(): () => void {
  let turn: ReturnType<typeof setTimeout> | undefined;
  let open = true;
  const take = (): void => {
    const evaluation = answered.peek();
    if (open && evaluation.pairing.relay.glass) studied.value = studyFor(evaluation, sharpOver.peek());
  };
  const stop = effect(() => {
    const evaluation = answered.value;
    sharpOver.value;
    clearTimeout(turn);
    if (!evaluation.pairing.relay.glass) {
      studied.value = undefined;
      return;
    }
    turn = setTimeout(() => requestAnimationFrame(() => setTimeout(take)), held.value === undefined ? 0 : REST_MS);
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
  const lens = listedFor(pairing.relay);
  if (!lens) return undefined;
  const judging = judgingOf(evaluation, lens, over);
  return { for: evaluation, judging, study: studyOf(judging, amount(pairing.infinitySpaceMm)) };
}
