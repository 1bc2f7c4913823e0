/**
 * Would a test notice? Each mutant of core is one place changed: an operator, a number, a branch, a statement. Told is
 * how many of them the tests notice, by folder; it fails below the floors. By hand, not part of `npm test`:
 *
 *   npm run mutants -- [--fresh] [--only core/pupil,core/lens] [--patience 1500] [--runs 5] [--workers 2] [--tests tests/core/pupil] [--tell]
 *
 * `noticed.json` keeps what was noticed before: that is not tried again while its file stays as it is (`--fresh` tries
 * all, `--tell` none). With `--tests` only those are tried that begin so: quick, while one writes them. Those in `equivalent/` change nothing that could be noticed, each with the reason.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { readEquivalent, readNoticed, writeNoticed } from './ledger.ts';
import { type Plan, ROOT, type Said, SCRATCH } from './plan.ts';
import { besideCore, reachingOf } from './reaching.ts';
import { scores } from './score.ts';
import { type Mutant, mutantsOf } from './sites.ts';

const { values: options } = parseArgs({
  options: {
    fresh: { type: 'boolean', default: false },
    tell: { type: 'boolean', default: false },
    only: { type: 'string', default: 'core/' },
    patience: { type: 'string', default: '1500' },
    runs: { type: 'string', default: '5' },
    workers: { type: 'string', default: '2' },
    tests: { type: 'string', default: 'tests/' },
  },
});

const only = options.only.split(',');
const isIn = (file: string): boolean => only.some((beginning) => file.startsWith(beginning));

const filesIn = (folder: string, ending: string): string[] =>
  (readdirSync(join(ROOT, folder), { recursive: true }) as string[])
    .filter((name) => name.endsWith(ending))
    .map((name) => `${folder}/${name}`)
    .sort();

interface Tried extends Mutant {
  readonly file: string;
  readonly id: number;
  state: 'noticed' | 'equivalent' | 'left' | 'not met' | 'spoils' | 'not tried';
}

const sources = filesIn('core', '.ts');
const texts = new Map(sources.map((file) => [file, readFileSync(join(ROOT, file), 'utf8')]));
const before = readNoticed(texts);
const noticed = (file: string, i: number): boolean => !(options.fresh && isIn(file)) && before(file, i);
const equivalent = readEquivalent(texts);
const files: Record<string, Plan['files'][string]> = {};
const all: Tried[] = [];
for (const [file, text] of texts) {
  const mutants = mutantsOf(file, text);
  files[file] = { first: all.length, mutants };
  mutants.forEach((mutant, i) => {
    const state = equivalent.listed(file, mutant) ? 'equivalent' : noticed(file, i) ? 'noticed' : 'not tried';
    all.push({ ...mutant, file, id: all.length, state });
  });
}

for (const { file, line, was } of equivalent.stale.values()) console.error(`equivalent/: no mutant of ${was} in ${file}: ${line}`);

mkdirSync(SCRATCH, { recursive: true });
for (const name of readdirSync(SCRATCH)) if (name.endsWith('.log')) rmSync(join(SCRATCH, name));
const tests = ['tests/core', 'tests/published', 'tests/data']
  .flatMap((folder) => filesIn(folder, '.test.ts'))
  .filter((file) => file.startsWith(options.tests));
const reaching = reachingOf(sources, tests);
const beside = besideCore(tests);
const wanted = all.filter(({ state, file }) => state === 'not tried' && isIn(file));
const logs: string[] = [];

/** What has been found so far, by all who try. */
function take(): void {
  for (const log of logs)
    for (const line of existsSync(log) ? readFileSync(log, 'utf8').split('\n') : []) {
      if (!line) continue;
      const said = JSON.parse(line) as Said;
      if ('noticed' in said) (all[said.noticed] as Tried).state = 'noticed';
      else if ('spoilt' in said) (all[said.spoilt] as Tried).state = 'spoils';
      else (all[said.left] as Tried).state = said.met > 0 ? 'left' : 'not met';
    }
  writeNoticed(texts, all);
}

/** Tries every so-manieth of those left in a process of its own, and goes on in another where one was spoilt. */
async function worker(share: number, of: number): Promise<void> {
  for (let round = 0; ; round++) {
    const left = wanted.filter(({ state }, i) => i % of === share && state === 'not tried').map(({ id }) => id);
    if (left.length === 0) return;
    const name = `${process.pid}-${share}-${round}`;
    const log = join(SCRATCH, `${name}.log`);
    const plan: Plan = {
      files,
      count: all.length,
      tests: tests.filter((test) => left.some((id) => reaching[(all[id] as Tried).file]?.includes(test))),
      reaching,
      beside,
      left,
      patience: Number(options.patience),
      log,
    };
    const planFile = join(SCRATCH, `${name}.json`);
    writeFileSync(planFile, JSON.stringify(plan));
    logs.push(log);
    const run = spawn(
      process.execPath,
      [join(ROOT, 'node_modules/vitest/vitest.mjs'), 'run', '--config', join(import.meta.dirname, 'config.ts')],
      {
        env: { ...process.env, MUTANTS: planFile, RUNS: options.runs, NODE_NO_WARNINGS: '1' },
        cwd: ROOT,
        stdio: ['ignore', 'inherit', 'inherit'],
      },
    );
    await new Promise((done) => run.on('exit', done));
    rmSync(planFile);
    const before = wanted.filter(({ state }) => state === 'not tried').length;
    take();
    if (wanted.filter(({ state }) => state === 'not tried').length === before) return;
  }
}

console.log(`${all.length} mutants of ${sources.length} files; ${options.tell ? 0 : wanted.length} to try`);
const telling = setInterval(() => {
  take();
  console.log(`  ${wanted.filter(({ state }) => state !== 'not tried').length} of ${wanted.length} tried`);
}, 60_000);
process.once('SIGINT', () => {
  take();
  process.exit(130);
});
const workers = Math.min(Number(options.workers), wanted.length);
if (!options.tell) await Promise.all(Array.from({ length: workers }, (_, share) => worker(share, workers)));
clearInterval(telling);
take();

const told = scores(all.filter(({ file }) => isIn(file)));
console.table(told.folders);
console.log(told.sentence);
const left = all.filter(({ state, file }) => !['noticed', 'equivalent'].includes(state) && isIn(file));
const brief = (text: string): string => text.replace(/\s+/g, ' ').slice(0, 100);
writeFileSync(
  join(SCRATCH, 'left.txt'),
  left.map(({ file, line, state, was, becomes }) => `${file}:${line} ${state}: ${brief(was)} -> ${brief(becomes)}\n`).join(''),
);
console.log(`${left.length} are left: .mutants/left.txt`);
for (const low of told.low) console.error(low);
process.exitCode = told.low.length > 0 ? 1 : 0;
