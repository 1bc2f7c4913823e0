import { computed, effect, signal } from '@preact/signals';
import type { Evaluation } from '../../core/index.ts';
import { answered } from './draft.ts';
import { held } from './held.ts';
import { inSlices } from './slices.ts';
import { type Varied, varying } from './vary.ts';

/** The last sweep that is whole, and the pairing that it is of; undefined until there is one. */
const last = signal<{ of: Evaluation; sweep: Varied } | undefined>(undefined);

export const varied = computed(() => last.value?.sweep);

/** Whether the sweep is the full one of the pairing that is shown. */
export const variedStands = computed(() => last.value !== undefined && last.value.of === answered.value && !last.value.sweep.rough);

// Some tens of pairings are worked out for it: the answer itself is painted first, and nothing that is moved is held up.
const sweep = inSlices<{ of: Evaluation; sweep: Varied }>(
  {
    sliceMs: 4,
    now: () => performance.now(),
    afterPaint: (then) => requestAnimationFrame(() => setTimeout(then)),
    soon: (then) => setTimeout(then),
  },
  (result) => {
    last.value = result;
  },
);

effect(() => {
  const [of, rough] = [answered.value, held.value !== undefined];
  const known = last.peek();
  // Where the pairing itself is not what is moved, its sweep stands.
  if (known?.of === of && (rough || !known.sweep.rough)) return;
  sweep(sweepOf(of, rough));
});

function* sweepOf(of: Evaluation, rough: boolean): Generator<void, { of: Evaluation; sweep: Varied }> {
  return { of, sweep: yield* varying(of, rough) };
}
