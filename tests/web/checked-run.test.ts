import { afterEach, expect, it, vi } from 'vitest';
import { followChecks, goOn, type Run, run, stop } from '../../web/checked/run.ts';

/** How the page works its checks out: a little at a time, stopped and taken up again. */

afterEach(() => vi.unstubAllGlobals());

const until = (holds: (now: Run) => boolean): Promise<Run> =>
  new Promise((resolve) => {
    const end = run.subscribe((now) => {
      if (!holds(now)) return;
      setTimeout(() => end());
      resolve(now);
    });
  });
const at = (now: Run): number => (now.state === 'done' ? Number.NaN : now.done);

async function leastUntilDone(): Promise<number> {
  let least = Number.POSITIVE_INFINITY;
  await until((now) => {
    if (now.state !== 'done') least = Math.min(least, at(now));
    return now.state === 'done';
  });
  return least;
}

it('does a little at a time, stops when it is told to, goes on where it was, and begins anew for who comes again', async () => {
  vi.stubGlobal('requestAnimationFrame', (then: () => void) => setTimeout(then));
  const leave = followChecks();
  expect(run.value).toMatchObject({ state: 'running', done: 0 });
  await until((now) => at(now) > 3);
  stop();
  const stopped = run.value;
  expect(stopped.state).toBe('stopped');
  await new Promise((resolve) => setTimeout(resolve, 50));
  expect(run.value).toEqual(stopped);

  goOn();
  const least = await leastUntilDone();
  expect(least).toBe(at(stopped));
  const done = run.value;
  expect(done.state === 'done' && done.answers.length).toBeGreaterThan(10);

  leave();
  expect(run.value).toBe(done);
  followChecks()();
  expect(run.value).toMatchObject({ state: 'stopped', done: 0 });
});
