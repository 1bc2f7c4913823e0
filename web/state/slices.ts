/** Work that is done a little at a time, so that nothing else has to wait for it. */
export interface Pace {
  /** No slice begins a step after so many ms. */
  sliceMs: number;
  now(): number;
  /** Calls back when the next frame has been painted. */
  afterPaint(then: () => void): void;
  /** Calls back when what waits has had its turn. */
  soon(then: () => void): void;
}

/**
 * What is asked for is begun after the next paint and done in slices. A piece of work that is under way is
 * finished first: asked again and again, it still ends again and again. Of those that wait only the newest is kept.
 *
 * @param done gets each result that was finished
 */
export function inSlices<T>({ sliceMs, now, afterPaint, soon }: Pace, done: (result: T) => void): (work: Generator<void, T>) => void {
  let waiting: Generator<void, T> | undefined;
  let busy = false;

  const begin = (): void => {
    const work = waiting;
    waiting = undefined;
    busy = work !== undefined;
    if (work) go(work);
  };

  const go = (work: Generator<void, T>): void => {
    const until = now() + sliceMs;
    do {
      const step = work.next();
      if (!step.done) continue;
      done(step.value);
      if (waiting) afterPaint(begin);
      else busy = false;
      return;
    } while (now() < until);
    soon(() => go(work));
  };

  return (work) => {
    waiting = work;
    if (busy) return;
    busy = true;
    afterPaint(begin);
  };
}
