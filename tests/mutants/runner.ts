import { appendFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import fc from 'fast-check';
import type { RunnerTestCase, RunnerTestFile, RunnerTestSuite } from 'vitest';
import { TestRunner, vi } from 'vitest';
import { collectTests } from 'vitest/internal/browser';
import { Order } from './order.ts';
import { keepTimes, ROOT, readPlan, readTimes, type Said } from './plan.ts';
import { Switches } from './switches.ts';

/**
 * Runs all tests once as they stand, noting which mutants each comes by; then for each mutant the tests that come by
 * it, until one fails. Nothing is loaded anew, so that a mutant costs milliseconds. What is worked out while modules
 * load, or once and then kept, is tried with the nearest tests loaded anew.
 */

const plan = readPlan();
const times = readTimes();
const switches = new Switches(plan.count);
Object.assign(globalThis, { __mutants: switches, __mutantOn: (id: number) => switches.on(id) });
// The first failure is enough: nobody reads the smallest case.
fc.configureGlobal({ endOnFailure: true });

/** A mutant that has been asked for so many times as often as the test itself takes, and as many more, runs for ever. */
const TIMES = 10;
const MORE = 500_000;
/** So many tests that fail for ever after a mutant was on are no chance. */
const SPOILT = 3;
/** What loading a file of tests with all of core may take besides, ms of the processor. */
const LOADING = 1_500;
const MORE_AT_LOAD = 200_000_000;

interface Known {
  readonly name: string;
  readonly file: string;
  readonly run: () => unknown;
  readonly met: Uint8Array;
  readonly calls: number;
  readonly ms: number;
}

const testsOf = (suite: RunnerTestSuite): RunnerTestCase[] =>
  suite.tasks.flatMap((task) => (task.type === 'suite' ? testsOf(task) : [task as RunnerTestCase]));
const nameOf = (test: RunnerTestCase): string => {
  const names = [test.name];
  for (let suite = test.suite; suite && 'name' in suite; suite = suite.suite) names.unshift(suite.name);
  return `${relative(ROOT, test.file.filepath)} > ${names.join(' > ')}`;
};
const tell = (said: Said): void => appendFileSync(plan.log, `${JSON.stringify(said)}\n`);
/** Of this process alone, ms: what else the machine does must not count. */
const worked = (): number => process.cpuUsage().user / 1000;
const breathe = (): Promise<void> => new Promise((done) => setImmediate(done));

const sources = Object.entries(plan.files).map(([name, { first, mutants }]) => ({ name, first, end: first + mutants.length }));
const sourceOf = (id: number): string => (sources.find(({ first, end }) => id >= first && id < end) as { name: string }).name;

export default class extends TestRunner {
  private readonly noted = new Map<RunnerTestCase, { met: Uint8Array; calls: number; ms: number }>();
  private began = 0;
  private readonly files: RunnerTestFile[] = [];
  /** Come by while modules load: what was worked out then is kept. */
  private readonly loaded = new Uint8Array(plan.count);
  /** The same by file of tests, of what it loads beside core: a test that holds such values against new ones is no judge. */
  private readonly biased = new Map<string, Uint8Array>();
  /** How often each test that passes asks for mutants, by name. */
  private readonly sound = new Map<string, number>();

  override onCollectStart(file: RunnerTestFile): void {
    super.onCollectStart(file);
    switches.fresh();
  }

  onCollected([{ filepath }]: [RunnerTestFile]): void {
    const file = relative(ROOT, filepath);
    // What is come by since its module has ended: the bodies of its describes.
    const all = switches.noted().met;
    for (const module of plan.beside[file] ?? []) join(all, switches.metLoading(module));
    this.biased.set(file, all);
    join(this.loaded, all);
    for (const source of Object.keys(plan.files)) join(this.loaded, switches.metLoading(source));
  }

  override async onBeforeRunTask(test: RunnerTestCase): Promise<void> {
    if ((times[nameOf(test)] ?? 0) > plan.patience) test.mode = 'skip';
    await super.onBeforeRunTask(test);
  }

  override onBeforeTryTask(test: RunnerTestCase): void {
    super.onBeforeTryTask(test);
    switches.fresh();
    this.began = worked();
  }

  override onAfterTryTask(test: RunnerTestCase): void {
    super.onAfterTryTask(test);
    this.noted.set(test, { ...switches.noted(), ms: worked() - this.began });
  }

  override onAfterRunFiles(files?: RunnerTestFile[]): Promise<void> | void {
    super.onAfterRunFiles();
    this.files.push(...(files ?? []));
    if (this.files.length === plan.tests.length) return this.tryAll();
  }

  private async tryAll(): Promise<void> {
    const tests = new Set(this.knownTests());
    keepTimes(Object.fromEntries([...this.noted].map(([test, { ms }]) => [nameOf(test), ms])));
    const order = new Order<Known>();
    for (const id of plan.left) {
      await breathe();
      const source = sourceOf(id);
      const met = [...tests].filter((test) => test.met[id]);
      const fair = met.filter((test) => !this.biased.get(test.file)?.[id]);
      const until = worked() + plan.patience;
      let by: string | undefined;
      let wentBy = false;
      let spoilt = 0;
      for (const test of order.of(source, fair)) {
        if (worked() > until) break;
        const noticed = await fails(test, id);
        wentBy ||= switches.hasMet(id);
        order.note(source, test, noticed);
        if (!noticed) continue;
        if (await fails(test, -1)) {
          // It can't be run twice; or what the mutant has left behind makes tests fail for ever, and all that follows is worth nothing.
          tests.delete(test);
          if (++spoilt < SPOILT) continue;
          tell({ spoilt: id, by: test.name });
          throw new Error(`spoilt by ${id}`);
        }
        by = test.name;
        break;
      }
      // What no test comes by, then or now, needs no trial.
      if (by === undefined && (this.loaded[id] || (met.length > 0 && !wentBy))) by = await this.anew(id, source, met);
      tell(by === undefined ? { left: id, met: met.length } : { noticed: id, by });
    }
  }

  /** Tests that pass and are quick enough to be tried. */
  private knownTests(): Known[] {
    return this.files.flatMap(testsOf).flatMap((test) => {
      const noted = this.noted.get(test);
      const name = nameOf(test);
      if (test.result?.state !== 'pass' || !noted || noted.ms > plan.patience) return [];
      this.sound.set(name, noted.calls);
      return [{ name, file: relative(ROOT, test.file.filepath), run: TestRunner.getTestFn(test), ...noted }];
    });
  }

  /** The first test that notices a mutant which is on from the moment that core is loaded, in the files that come by it first. */
  private async anew(id: number, source: string, met: readonly Known[]): Promise<string | undefined> {
    const until = worked() + LOADING + plan.patience;
    const reaching = plan.reaching[source] ?? [];
    const first = reaching.filter((file) => met.some((test) => test.file === file));
    for (const file of new Set([...first, ...reaching])) {
      if (!(await this.collected(file, -1))) continue;
      const tests = await this.collected(file, id);
      if (!tests) return file;
      for (const test of tests.toSorted((a, b) => msOf(a) - msOf(b))) {
        const calls = this.sound.get(nameOf(test));
        if (calls === undefined) continue;
        if (await fails({ run: TestRunner.getTestFn(test), calls }, id)) return nameOf(test);
        if (worked() > until) return undefined;
      }
      if (worked() > until) return undefined;
    }
    return undefined;
  }

  private readonly loadable = new Map<string, boolean>();

  /** The tests of a file with all modules loaded anew while a mutant is on; undefined where it can't be loaded so. */
  private async collected(file: string, id: number): Promise<RunnerTestCase[] | undefined> {
    if (id < 0 && this.loadable.has(file)) return this.loadable.get(file) ? [] : undefined;
    vi.resetModules();
    switches.turnOn(id, MORE_AT_LOAD);
    try {
      const collected = await collectTests([{ filepath: resolve(ROOT, file), fileTags: undefined }], this.quiet());
      const sound = collected.every(({ result }) => result?.state !== 'fail');
      if (id < 0) this.loadable.set(file, sound);
      return sound ? collected.flatMap(testsOf) : undefined;
    } finally {
      switches.turnOff();
    }
  }

  /** This runner, telling nobody of what it collects. */
  private quiet(): TestRunner {
    const silent = { value: () => undefined };
    return Object.create(this, { onCollectStart: silent, onCollected: silent, onTaskUpdate: silent });
  }
}

const msOf = (test: RunnerTestCase): number => times[nameOf(test)] ?? 0;

/** Adds what one has to another. */
function join(all: Uint8Array, more: Uint8Array | undefined): void {
  more?.forEach((met, id) => {
    if (met) all[id] = 1;
  });
}

async function fails({ run, calls }: Pick<Known, 'run' | 'calls'>, id: number): Promise<boolean> {
  switches.turnOn(id, TIMES * calls + MORE);
  try {
    await run();
    return false;
  } catch {
    return true;
  } finally {
    switches.turnOff();
  }
}
