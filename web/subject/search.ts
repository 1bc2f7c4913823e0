import { batch, effect, signal } from '@preact/signals';
import type { Asked, OneMore } from '../../core/choosing.ts';
import { type Question, question } from './asked.ts';
import type { Found, Task, Told } from './choose-task.ts';

/** The search that runs or ran last. */
export type Search =
  | { state: 'idle' }
  | { state: 'running'; done: number; of: number; told: number; long: boolean }
  | { state: 'done' }
  | { state: 'stopped' }
  | { state: 'failed'; why: string }
  | { state: 'impossible' };

export const search = signal<Search>({ state: 'idle' });

/** What was found last, and what it was asked; it stands, faint, until the next has come. */
export const result = signal<{ asked: Asked; found: Found } | undefined>(undefined);
/** What one more part would open, of the same search. */
export const openings = signal<OneMore | undefined>(undefined);

/** Typing is over when nothing has changed for so long, ms. */
const PAUSE_MS = 200;
/** A search that has run for so long says how far it has come, ms. */
const LONG_MS = 1000;

let worker: Worker | undefined;
let last = 0;
let pausing: ReturnType<typeof setTimeout> | undefined;
let standsFor = '';
/** Whether the search that ran last asks for one more part too. */
let asksMore = false;

/** Follows the wish and the parts as long as the view is open: a change ends the search that runs and begins another. */
export function followSearch(): () => void {
  let first = true;
  const stop = effect(() => {
    const now = question.value;
    clearTimeout(pausing);
    if (typeof now === 'string') {
      halt();
      forget();
      return;
    }
    const key = JSON.stringify(now);
    // The same parts may come anew from the server.
    if (key === standsFor) return;
    standsFor = key;
    pausing = setTimeout(() => begin(now), first ? 0 : PAUSE_MS);
    first = false;
  });
  return () => {
    stop();
    const whole = search.peek().state === 'done' && (!asksMore || openings.peek() !== undefined);
    halt();
    worker?.terminate();
    worker = undefined;
    // What was found whole stands when one comes back to the same wish.
    if (!whole) forget();
  };
}

function forget(): void {
  standsFor = '';
  batch(() => {
    search.value = { state: 'idle' };
    result.value = undefined;
    openings.value = undefined;
  });
}

/** Ends the search that runs. */
export function cancel(): void {
  halt();
  search.value = { state: 'stopped' };
}

/** Begins anew, after it was stopped or failed. */
export function again(): void {
  const now = question.peek();
  if (typeof now !== 'string') begin(now);
}

function halt(): void {
  clearTimeout(pausing);
  last++;
  worker?.postMessage({ id: last } satisfies Task);
}

function begin({ asked, more }: Question): void {
  asksMore = more !== undefined;
  const id = ++last;
  const since = performance.now();
  search.value = {
    state: 'running',
    done: 0,
    of: asked.objectives.length * asked.relays.length * asked.infinitySpacesMm.length,
    told: 0,
    long: false,
  };
  try {
    worker ??= new Worker(new URL('./choose.worker.ts', import.meta.url), { type: 'module' });
  } catch {
    search.value = { state: 'impossible' };
    return;
  }
  const stalled = setTimeout(() => {
    const now = search.peek();
    if (id === last && now.state === 'running') search.value = { ...now, long: true };
  }, LONG_MS);
  worker.onmessage = ({ data }: MessageEvent<Told>) => {
    // What belongs to another wish is too late.
    if (data.id !== id || id !== last) return;
    if ('done' in data) {
      // The list stands already while further parts are tried.
      if (search.peek().state !== 'running') return;
      const { done, of, told } = data;
      search.value = { state: 'running', done, of, told, long: performance.now() - since >= LONG_MS };
    } else if ('found' in data) {
      clearTimeout(stalled);
      batch(() => {
        search.value = { state: 'done' };
        result.value = { asked, found: data.found };
        openings.value = undefined;
      });
    } else if ('more' in data) openings.value = data.more;
    else {
      clearTimeout(stalled);
      search.value = { state: 'failed', why: data.failed };
    }
  };
  // Code that cannot be fetched or run says so here.
  worker.onerror = () => {
    if (id !== last) return;
    worker?.terminate();
    worker = undefined;
    search.value = { state: 'impossible' };
  };
  worker.postMessage({ id, asked, more } satisfies Task);
}
