import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Mutant } from './sites.ts';

/** What the one who hands out the mutants and those who try them agree on. */

export const ROOT = resolve(import.meta.dirname, '../..');
/** Where a run keeps what it goes by; nothing in it is needed afterwards. */
export const SCRATCH = join(ROOT, '.mutants');

export interface Plan {
  /** For each file of core its mutants, and the id of the first of them. */
  readonly files: Readonly<Record<string, { readonly first: number; readonly mutants: readonly Mutant[] }>>;
  readonly count: number;
  /** Files of tests. */
  readonly tests: readonly string[];
  /** For each file of core the files of tests that import it, the nearest first. */
  readonly reaching: Readonly<Record<string, readonly string[]>>;
  /** For each file of tests the modules beside core that it loads. */
  readonly beside: Readonly<Record<string, readonly string[]>>;
  /** Mutants to try, by id. */
  readonly left: readonly number[];
  /** So long tests are tried on one mutant, ms of the processor. */
  readonly patience: number;
  /** Where what is found is written to, a line of JSON each. */
  readonly log: string;
}

/** What a trial says, a line each. */
export type Said =
  | { readonly noticed: number; readonly by: string }
  | { readonly left: number; readonly met: number }
  | { readonly spoilt: number; readonly by: string };

export const readPlan = (): Plan => JSON.parse(readFileSync(process.env.MUTANTS as string, 'utf8'));

/** How long each test takes once it is warm, ms, by file and name: from the last run, for the next to leave out the slow ones. */
const TIMES = join(SCRATCH, 'times.json');
export const readTimes = (): Record<string, number> => (existsSync(TIMES) ? JSON.parse(readFileSync(TIMES, 'utf8')) : {});
export const keepTimes = (times: Readonly<Record<string, number>>): void => {
  mkdirSync(SCRATCH, { recursive: true });
  writeFileSync(TIMES, JSON.stringify({ ...readTimes(), ...times }));
};
