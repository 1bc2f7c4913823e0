import { signal } from '@preact/signals';
import { type Answers, asked, checking, type Progress } from '../../core/checked.ts';
import { inSlices } from '../state/slices.ts';

/** How far the checks have come on this page. */
export type Run = ({ readonly state: 'running' | 'stopped' } & Progress) | { readonly state: 'done'; readonly answers: readonly Answers[] };

const BEGIN: Run = { state: 'running', done: 0, of: asked() };

export const run = signal<Run>(BEGIN);

/** Long enough that little is lost between slices, short enough that nobody feels them. */
const SLICE_MS = 10;

type Work = ReturnType<typeof checking>;
let work: Work = checking();

/** Ends at once, and without a result, when the work is no longer the one that is wanted. */
function* watched(mine: Work): Generator<void, readonly Answers[] | undefined> {
  while (mine === work && run.peek().state === 'running') {
    const step = mine.next();
    if (step.done) return step.value;
    run.value = { state: 'running', ...step.value };
    yield;
  }
  return undefined;
}

const take = inSlices<readonly Answers[] | undefined>(
  {
    sliceMs: SLICE_MS,
    now: () => performance.now(),
    afterPaint: (then) => requestAnimationFrame(() => setTimeout(then)),
    soon: (then) => setTimeout(then),
  },
  (answers) => {
    if (answers) run.value = { state: 'done', answers };
  },
);

/** Works everything out anew as long as the view is open. Returns what ends that. */
export function followChecks(): () => void {
  work = checking();
  run.value = BEGIN;
  take(watched(work));
  return stop;
}

export function stop(): void {
  const now = run.peek();
  if (now.state === 'running') run.value = { ...now, state: 'stopped' };
}

export function goOn(): void {
  const now = run.peek();
  if (now.state !== 'stopped') return;
  run.value = { ...now, state: 'running' };
  take(watched(work));
}
