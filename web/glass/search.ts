import { effect, signal } from '@preact/signals';
import type { MadeKind, Places, SharpOver } from '../../core/glassworks.ts';
import { amount, type Evaluation, numberIn } from '../../core/index.ts';
import { answered } from '../state/draft.ts';
import type { Answered, Asked, Found } from './search-task.ts';
import { sharpOver } from './studied.ts';

/** The search over infinity spaces, both ways round, for the pairing that is shown. */
export type Search =
  | { state: 'running'; done: number; of: number; what: 'places' | 'lenses' }
  | { state: 'done'; found: Found }
  | { state: 'stopped' }
  | { state: 'failed'; why: string }
  | { state: 'impossible' };

/** Undefined where there is nothing to search for, or not yet. */
export const search = signal<Search | undefined>(undefined);

/** The class over which a relay of unknown glass is tried. */
export const classTried = signal<MadeKind>('cemented-achromat');

/** Typing is over when nothing has changed for so long, ms. */
const PAUSE_MS = 150;

let worker: Worker | undefined;
let busy = false;
let last = 0;
let pausing: ReturnType<typeof setTimeout> | undefined;

/**
 * What was asked of the search that stands, but for where the relay stands now: in focus no place of the search
 * depends on that. With the sensor off the focus the scale does, and with it the detail that is judged.
 */
let standsFor = '';
const keyOf = ({ pairing, ...rest }: Omit<Asked, 'id'>): string =>
  JSON.stringify([amount(pairing.sensorOffsetMm ?? 0) === 0 ? { ...pairing, infinitySpaceMm: 0 } : pairing, rest]);

/**
 * Follows the pairing as long as a view shows the search: a change of what is searched ends the search that
 * runs and begins another. Returns what ends it all.
 */
export function followSearch(): () => void {
  const stop = effect(() => {
    const asked = questionOf(answered.value, classTried.value, sharpOver.value);
    const key = asked ? keyOf(asked) : '';
    if (key !== '' && key === standsFor && search.peek()?.state === 'done') return;
    standsFor = key;
    halt();
    search.value = undefined;
    if (asked) pausing = setTimeout(() => begin(asked), PAUSE_MS);
  });
  return () => {
    stop();
    halt();
    worker?.terminate();
    worker = undefined;
    standsFor = '';
    search.value = undefined;
  };
}

/** Ends the search that runs. */
export function cancel(): void {
  halt();
  search.value = { state: 'stopped' };
}

/** Begins anew, after it was stopped or failed. */
export function again(): void {
  const asked = questionOf(answered.peek(), classTried.peek(), sharpOver.peek());
  if (asked) begin(asked);
}

/** Only of one close-up lens is it known what others of its class are like. */
export const hasClass = ({ pairing }: Evaluation): boolean => pairing.relay.kind === 'supplementary';

function questionOf(evaluation: Evaluation, kind: MadeKind, over: SharpOver): Omit<Asked, 'id'> | undefined {
  const { pairing } = evaluation;
  if (pairing.relay.glass) return { pairing, places: placesFor(evaluation, STEP_MM), over };
  return hasClass(evaluation) ? { pairing, places: placesFor(evaluation, 2 * STEP_MM), over, class: kind } : undefined;
}

function halt(): void {
  clearTimeout(pausing);
  last++;
  if (!busy) return;
  worker?.terminate();
  worker = undefined;
  busy = false;
}

function begin(asked: Omit<Asked, 'id'>): void {
  halt();
  const id = last;
  const what = asked.class ? 'lenses' : 'places';
  search.value = { state: 'running', done: 0, of: asked.class ? 1 : asked.places.count, what };
  try {
    worker ??= new Worker(new URL('./search.worker.ts', import.meta.url), { type: 'module' });
  } catch {
    search.value = { state: 'impossible' };
    return;
  }
  busy = true;
  worker.onmessage = ({ data }: MessageEvent<Answered>) => {
    // What belongs to another pairing is too late.
    if (data.id !== id || id !== last) return;
    if ('done' in data) {
      search.value = { state: 'running', done: data.done, of: data.of, what };
      return;
    }
    busy = false;
    search.value = 'found' in data ? { state: 'done', found: data.found } : { state: 'failed', why: data.failed };
  };
  // Code that cannot be fetched or run says so here.
  worker.onerror = () => {
    if (id !== last) return;
    halt();
    search.value = { state: 'impossible' };
  };
  worker.postMessage({ ...asked, id } satisfies Asked);
}

const STEP_MM = 5;
/** Infinity spaces that people build, mm, and in focal lengths of a long relay. */
const [NEAREST, FARTHEST, FARTHEST_SHARE] = [20, 150, 0.75];
/** What a rig has beyond them is looked at too, as far as this many focal lengths. */
const MOST_SHARE = 1.5;
const MOST_PLACES = 61;

/** The infinity spaces worth a look, the present one among them. */
function placesFor({ pairing, answers }: Evaluation, step: number): Places {
  const now = amount(pairing.infinitySpaceMm);
  const f = numberIn(answers.relayFocalLengthMm) ?? FARTHEST / FARTHEST_SHARE;
  const fromMm = step * Math.floor(Math.min(NEAREST, now) / step);
  const toMm = step * Math.ceil(Math.max(FARTHEST, FARTHEST_SHARE * f, Math.min(now, MOST_SHARE * f)) / step);
  return { fromMm, toMm, count: Math.min(MOST_PLACES, Math.round((toMm - fromMm) / step) + 1) };
}
