import { existsSync } from 'node:fs';
import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import type { Progress } from '../../core/choosing.ts';
import { refusal } from '../problems.ts';
import { WORKS } from '../works.ts';
import { running } from './run.ts';
import type { Answers, Said, Task } from './task.ts';

/** Where searches are done one after the other, so that short requests are answered meanwhile. */
export interface Desk {
  /**
   * @param signal ends the search at once, wherever it is
   * @throws Refusal 503 where too many wait already; the signal's reason where it was ended
   */
  search<Name extends keyof Answers>(task: Task<Name>, signal: AbortSignal, tell?: (progress: Progress) => void): Promise<Answers[Name]>;
}

/** Searches that may wait for the one that runs. */
const MOST_WAITING = 8;

/** The worker beside the bundled server; where the server runs from its source there is none. */
const BUILT = new URL('./choosing.worker.js', import.meta.url);

/** As long as this, in ms, nobody minds waiting. */
const BREATH = 20;

export function openDesk(worker: URL = BUILT): Desk {
  let waiting = 0;
  let last: Promise<unknown> = Promise.resolve();
  const done = existsSync(worker) ? inWorker(worker) : between;
  return {
    search(task, signal, tell = () => {}) {
      if (waiting >= MOST_WAITING)
        throw refusal(503, 'busy', 'comes while too many searches wait', `${waiting} waiting`, 'the same once more in a while', {
          'retry-after': '5',
        });
      waiting++;
      const mine = last.then(() => {
        signal.throwIfAborted();
        return done(task, signal, tell);
      });
      last = mine.catch(() => {}).finally(() => waiting--);
      return mine as Promise<Answers[typeof task.name]>;
    },
  };
}

type Doing = (task: Task, signal: AbortSignal, tell: (progress: Progress) => void) => Promise<Answers[keyof Answers]>;

/** In a worker of its own, kept for the next one unless the search is ended. */
function inWorker(file: URL): Doing {
  let idle: Worker | undefined;
  return (task, signal, tell) =>
    new Promise((resolve, reject) => {
      const worker = idle ?? new Worker(file);
      idle = undefined;
      // A worker that waits for nothing keeps no server from stopping.
      worker.unref();
      const settle = (keep: boolean, act: () => void): void => {
        worker.off('message', hear).off('error', fail);
        signal.removeEventListener('abort', end);
        if (keep) idle = worker;
        else worker.terminate();
        act();
      };
      const end = (): void => settle(false, () => reject(signal.reason));
      const fail = (error: Error): void => settle(false, () => reject(error));
      const hear = (said: Said): void => {
        if ('progress' in said) tell(said.progress);
        else if ('answer' in said) settle(true, () => resolve(said.answer));
        else fail(new Error(said.failed));
      };
      signal.addEventListener('abort', end);
      worker.on('message', hear).on('error', fail);
      worker.postMessage(task);
    });
}

/** Between the requests, a breath at a time. */
const between: Doing = async (task, signal, tell) => {
  const search = running(task, WORKS, tell);
  let began = performance.now();
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
    if (performance.now() - began < BREATH) continue;
    await setImmediate();
    signal.throwIfAborted();
    began = performance.now();
  }
};
