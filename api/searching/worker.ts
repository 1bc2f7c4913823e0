import { parentPort } from 'node:worker_threads';
import { glassworks } from '../../core/glassworks.ts';
import { running } from './run.ts';
import type { Said, Task } from './task.ts';

/** Searches away from the requests: one at a time; whoever wants one ended ends the worker. */
const works = glassworks();
const tell = (said: Said): void => parentPort?.postMessage(said);

parentPort?.on('message', (task: Task) => {
  try {
    const search = running(task, works, (progress) => tell({ progress }));
    let step = search.next();
    while (!step.done) step = search.next();
    tell({ answer: step.value });
  } catch (error) {
    tell({ failed: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
