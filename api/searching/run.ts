import { choosing, oneMore, type Progress } from '../../core/choosing.ts';
import type { Glassworks } from '../../core/index.ts';
import type { Answers, Task } from './task.ts';

/** Told of progress no oftener than this, ms. */
const OFTEN = 100;

/** A search step by step; it says how far it has come from time to time. */
export function* running(
  { name, asked }: Task,
  works: Glassworks,
  tell: (progress: Progress) => void,
): Generator<undefined, Answers[keyof Answers]> {
  const search = name === 'choosing' ? choosing(asked, works) : oneMore(asked, works);
  let last = performance.now();
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
    const now = performance.now();
    if (now - last >= OFTEN) {
      tell(step.value);
      last = now;
    }
    yield;
  }
}
