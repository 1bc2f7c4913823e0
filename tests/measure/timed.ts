import { median } from './processes.ts';

/** Seconds that one call takes, of so many calls as fill `ms`, after as many thrown away. */
function each(of: () => unknown, ms: number): number {
  let calls = 1;
  for (;;) {
    const began = performance.now();
    for (let i = 0; i < calls; i++) last.found = of();
    const took = performance.now() - began;
    if (took >= ms) return took / calls / 1000;
    calls = Math.ceil(calls * Math.min(10, Math.max(1.5, (1.2 * ms) / Math.max(took, 0.01))));
  }
}

/** What is worked out goes here, so that nothing is left out as unused; no more than the last is held. */
const last: { found: unknown } = { found: undefined };

const ROUNDS = 15;
const ROUND_MS = 60;

/** Calls a second, the median of some rounds. */
export function rate(of: () => unknown, rounds = 5, ms = ROUND_MS): number {
  each(of, ms);
  return 1 / median(Array.from({ length: rounds }, () => each(of, ms)));
}

/**
 * How many times as often `of` can be called as `than`, as the median over rounds in which both are timed one after
 * the other: what else the machine does comes and goes, and mostly stays the same for the tenth of a second that a
 * round takes.
 */
export function faster(of: () => unknown, than: () => unknown): { ratio: number; perSecond: number; otherPerSecond: number } {
  each(of, ROUND_MS);
  each(than, ROUND_MS);
  const rounds = Array.from({ length: ROUNDS }, () => [each(of, ROUND_MS), each(than, ROUND_MS)] as const);
  return {
    ratio: median(rounds.map(([own, other]) => other / own)),
    perSecond: 1 / median(rounds.map(([own]) => own)),
    otherPerSecond: 1 / median(rounds.map(([, other]) => other)),
  };
}
