import { effect, signal } from '@preact/signals';
import { type Judging, judgingOf, listedLens, type SharpOver, type Study, studyOf } from '../../core/glassworks.ts';
import { amount, type Evaluation } from '../../core/index.ts';
import { answered } from '../state/draft.ts';

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

/** Keeps the study up as long as a view shows it: a frame after the answer, so that typing is not held up. */
export function followStudy(): () => void {
  let frame = 0;
  const stop = effect(() => {
    const evaluation = answered.value;
    const over = sharpOver.value;
    cancelAnimationFrame(frame);
    if (!evaluation.pairing.relay.glass) {
      studied.value = undefined;
      return;
    }
    frame = requestAnimationFrame(() =>
      setTimeout(() => {
        if (answered.peek() === evaluation) studied.value = studyFor(evaluation, over);
      }),
    );
  });
  return () => {
    stop();
    cancelAnimationFrame(frame);
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
