/**
 * Does a test notice when a figure is 1 % off? For each figure of the registry in turn its value is
 * multiplied by 1.01 and the tests are run; told is which files caught it and by how many tests. Exits
 * with 1 if any figure gets through. By hand, not part of `npm test`; about five seconds a figure:
 *
 *   node tests/tools/one-percent.mjs [--all] [--bail] [--only id,id] [folder or file ...]
 *
 * The folders, tests/published and tests/core unless others are named, are run one after the other until
 * a figure is caught; `--all` runs each of them for each figure and tells which figures one alone
 * catches. `--bail` ends a folder's run at the first test that notices. RUNS, the runs of property
 * tests, is 20 unless set.
 *
 * The product has no switch for this. The tree is copied, and in the copy every figure's `of` is wrapped.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join, relative, resolve } from 'node:path';
import { parseArgs } from 'node:util';

const { values: options, positionals } = parseArgs({
  allowPositionals: true,
  options: { all: { type: 'boolean', default: false }, bail: { type: 'boolean', default: false }, only: { type: 'string' } },
});
const folders = (positionals.length > 0 ? positionals : ['tests/published', 'tests/core']).map((f) => f.replace(/\/+$/, ''));

const root = resolve(import.meta.dirname, '../..');
const scratch = mkdtempSync(join(tmpdir(), 'one-percent-'));
const tree = join(scratch, 'tree');
process.on('exit', () => rmSync(scratch, { recursive: true, force: true }));
for (const [signal, code] of [
  ['SIGINT', 130],
  ['SIGTERM', 143],
])
  process.on(signal, () => process.exit(code));
const LEFT_OUT = new Set(['node_modules', 'dist', '.git', 'coverage']);
cpSync(root, tree, { recursive: true, filter: (from) => !LEFT_OUT.has(basename(from)) });
symlinkSync(join(root, 'node_modules'), join(tree, 'node_modules'));

const stop = (why) => {
  console.error(why);
  process.exit(2);
};

/** Wraps what `figure` and `openFigure` build; each must be met exactly once. */
function wrapFigures() {
  const path = join(tree, 'core/figure.ts');
  const text = readFileSync(path, 'utf8');
  const built = /\(\{ \.\.\.figureDefaults, \.\.\.def, open: (?:true|false) \}\)/g;
  const count = text.match(built)?.length ?? 0;
  if (count !== 2) stop(`core/figure.ts builds figures in ${count} places instead of 2: bring this tool up to date`);
  const wrapped = text.replace(built, (all) => `onePercentOff(${all})`);
  writeFileSync(
    path,
    `${wrapped}
function onePercentOff(figure: any): any {
  if (figure.id !== (globalThis as any).process.env.ONE_PERCENT) return figure;
  const { of } = figure;
  return { ...figure, of: (...values: unknown[]) => { const value = of(...values); return typeof value === 'number' ? 1.01 * value : value; } };
}
`,
  );
}

function figureIds() {
  const print =
    "import { FIGURE_IDS, RADIUS_IDS } from './core/index.ts'; import { TABLE_FIGURES } from './core/table.ts'; console.log(JSON.stringify([...FIGURE_IDS, ...RADIUS_IDS, ...TABLE_FIGURES.map(({ id }) => id)]));";
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', print], {
    cwd: tree,
    encoding: 'utf8',
  });
  if (status !== 0) stop(`core does not load:\n${stderr}`);
  return JSON.parse(stdout);
}

const LONGEST_RUN_MS = 300_000;

/** Runs the tests of `places` with `id` 1 % off; for each file its tests as `name -> passed`, or undefined where it did not load. */
function run(id, places, bail) {
  const out = join(scratch, 'out.json');
  rmSync(out, { force: true });
  const vitest = join(root, 'node_modules/vitest/vitest.mjs');
  const args = [vitest, 'run', '--project', 'core', '--reporter=json', `--outputFile=${out}`, ...(bail ? ['--bail=1'] : []), ...places];
  const { COUNTS: _, ...env } = process.env;
  const { stderr, error } = spawnSync(process.execPath, args, {
    cwd: tree,
    encoding: 'utf8',
    timeout: LONGEST_RUN_MS,
    env: { RUNS: '20', ...env, ONE_PERCENT: id },
  });
  if (!existsSync(out)) stop(`the tests did not run (${id || 'nothing changed'}): ${error?.message ?? stderr}`);
  const files = new Map();
  for (const { name, status, assertionResults } of JSON.parse(readFileSync(out, 'utf8')).testResults) {
    const loaded = assertionResults.length > 0 || status === 'passed';
    const tests = new Map(assertionResults.map((test) => [test.fullName, test.status]));
    files.set(relative(tree, name), loaded ? tests : undefined);
  }
  return files;
}

/** How many tests of each file failed that pass with nothing changed; Infinity where the file no longer loads. */
function caughtBy(id, folder, before) {
  const caught = new Map();
  for (const [file, tests] of run(id, [folder], options.bail)) {
    const sound = before.get(file);
    if (!sound) continue;
    const count = tests
      ? [...tests].filter(([name, status]) => status === 'failed' && sound.get(name) === 'passed').length
      : Number.POSITIVE_INFINITY;
    if (count > 0) caught.set(file, count);
  }
  return caught;
}

wrapFigures();
const all = figureIds();
const chosen = options.only?.split(',') ?? all;
const strange = chosen.filter((id) => !all.includes(id));
if (strange.length > 0) stop(`no such figure: ${strange.join(', ')}`);

const before = run('', folders, false);
let sound = 0;
for (const [file, tests] of before) {
  const failed = tests ? [...tests].filter(([, status]) => status === 'failed').length : 1;
  sound += tests ? [...tests.values()].filter((status) => status === 'passed').length : 0;
  if (failed > 0) console.log(`${file}: ${tests ? `${failed} tests fail` : 'does not load'} with nothing changed; left out`);
}
if (sound === 0) stop(`no test passes in ${folders.join(', ')}`);
console.log(`${sound} tests in ${before.size} files notice, or not, that a figure is 1 % off:\n`);

const width = Math.max(...chosen.map((id) => id.length));
const survivors = [];
const onlyIn = new Map(folders.map((folder) => [folder, []]));
for (const id of chosen) {
  const found = [];
  const places = [];
  for (const folder of folders) {
    const caught = caughtBy(id, folder, before);
    if (caught.size > 0) places.push(folder);
    found.push(...[...caught].sort(([a], [b]) => a.localeCompare(b)));
    if (caught.size > 0 && !options.all) break;
  }
  console.log(
    `${id.padEnd(width)}  ${found.map(([file, n]) => `${file} (${Number.isFinite(n) ? n : 'does not load'})`).join(', ') || 'NOT CAUGHT'}`,
  );
  if (places.length === 0) survivors.push(id);
  if (places.length === 1) onlyIn.get(places[0]).push(id);
}

console.log('');
if (folders.length > 1 && options.all)
  for (const [folder, ids] of onlyIn) console.log(`caught in ${folder} alone: ${ids.join(', ') || 'none'}`);
console.log(
  survivors.length > 0
    ? `${chosen.length - survivors.length} of ${chosen.length} figures caught; got through: ${survivors.join(', ')}`
    : `all ${chosen.length} figures caught`,
);
process.exitCode = survivors.length > 0 ? 1 : 0;
