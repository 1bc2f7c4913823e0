import { effect, signal } from '@preact/signals';
import { answered } from './draft.ts';
import { type Varied, vary } from './vary.ts';

/** The sweep of the pairing that is shown; undefined until it is first worked out. */
export const varied = signal<Varied | undefined>(undefined);

let frame = 0;

// A hundred pairings are worked out for it: the answer itself is painted first, and typing is not held up.
effect(() => {
  const evaluation = answered.value;
  cancelAnimationFrame(frame);
  frame = requestAnimationFrame(() =>
    setTimeout(() => {
      if (answered.peek() === evaluation) varied.value = vary(evaluation);
    }),
  );
});
