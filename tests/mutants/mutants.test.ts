import { afterEach, describe, expect, it } from 'vitest';
import { Order } from './order.ts';
import { scores } from './score.ts';
import { type Mutant, mutantsOf, observed, switched } from './sites.ts';
import { Switches } from './switches.ts';

/** The tool that tells what tests notice is believed by nobody unless it is tested itself. */

const told = (text: string): string[] => mutantsOf('a.ts', text).map(({ was, becomes }) => `${was} -> ${becomes}`);

describe('the mutants of a text', () => {
  it('turn operators, move borders, and leave texts alone', () => {
    expect(told('const a = b + c;')).toEqual(['b + c -> b - c']);
    expect(told('const a = b < c;')).toEqual(['b < c -> b <= c', 'b < c -> b >= c']);
    expect(told('const a = `b` + c;')).toEqual([]);
    expect(told("const a = 'b' + c;")).toEqual([]);
  });
  it('move numbers by 1 % or by one, but not a slack', () => {
    expect(told('const a = 0.5;')).toEqual(['0.5 -> 0.505']);
    expect(told('const a = 7;')).toEqual(['7 -> 8']);
    expect(told('const a = 200;')).toEqual(['200 -> 202']);
    expect(told('const a = 1e-9;')).toEqual([]);
  });
  it('hold conditions to either side and leave statements, guards and orders out', () => {
    expect(told('if (a) b();')).toEqual(['a -> true', 'a -> false', 'b() -> undefined']);
    expect(told('const a = b ? c : d;')).toEqual(['b ? c : d -> c', 'b ? c : d -> d']);
    expect(told('const a = b ?? c;')).toEqual(['b ?? c -> c']);
    expect(told('const a = b && c;')).toEqual(['b && c -> b || c', 'b && c -> b', 'b && c -> c']);
    expect(told('const a = !b;')).toEqual(['!b -> b']);
    expect(told('const a = b.filter(c);')).toEqual(['b.filter(c) -> b']);
    expect(told('const a = Math.min(b, c);')).toEqual(['Math.min(b, c) -> Math.max(b, c)']);
    expect(told('const a = true;')).toEqual(['true -> false']);
  });
  it('pass over types, words for readers, and the step of a loop', () => {
    expect(told("import { a } from './a.ts'; type B = 1 | 2; const c: 5 = d as 5;")).toEqual([]);
    expect(told("const a = { words: 'b', as: (b) => 2, source: 'c' };")).toEqual([]);
    expect(told('for (let i = n; ; i++) break;')).toEqual([]);
  });
  it('say on which line they begin', () => {
    expect(mutantsOf('a.ts', 'const a =\n  b +\n c;\nconst d = 3;').map(({ line }) => line)).toEqual([2, 4]);
  });
});

describe('the text with every mutant in it', () => {
  const globals = globalThis as { __mutantOn?: unknown; __mutants?: unknown };
  afterEach(() => {
    delete globals.__mutantOn;
    delete globals.__mutants;
  });

  const SOURCE = 'return (a, b) => (a > 2 ? a * b + 1 : Math.max(a, -b));';
  const FIRST = 40;
  const mutants = mutantsOf('a.ts', SOURCE.replace('return', 'export default'));
  /** The same places in the text that begins with `return`. */
  const here: Mutant[] = mutants.map((m) => ({
    ...m,
    start: m.start - 'export default'.length + 6,
    end: m.end - 'export default'.length + 6,
  }));

  it('does what the text did as long as none is on, and with one on just what that one does', () => {
    const switches = new Switches(FIRST + here.length);
    globals.__mutantOn = (id: number) => switches.on(id);
    const run = new Function(switched(SOURCE, here, FIRST))() as (a: number, b: number) => number;
    const points = [-3, 0, 2, 2.5, 3, 7].flatMap((a) => [-4, 0, 1, 5].map((b) => [a, b] as const));
    const all = (of: (a: number, b: number) => number): number[] => points.map(([a, b]) => of(a, b));
    expect(all(run)).toEqual(all(new Function(SOURCE)() as typeof run));
    expect(here.length).toBeGreaterThan(8);
    here.forEach(({ start, end, becomes }, i) => {
      switches.turnOn(FIRST + i, Number.POSITIVE_INFINITY);
      const written = `${SOURCE.slice(0, start)}(${becomes})${SOURCE.slice(end)}`;
      expect(all(run), written).toEqual(all(new Function(written)() as typeof run));
      switches.turnOff();
    });
  });

  it('keeps its lines', () => {
    const text = 'export const a = 1;\nexport const b =\n  a < 2;\n';
    const lines = switched(text, mutantsOf('a.ts', text), 0).split('\n');
    expect(lines).toHaveLength(text.split('\n').length);
    expect(lines[2]).toContain('(a < (');
  });

  it('tells what a module comes by while it loads', () => {
    const switches = new Switches(3);
    globals.__mutants = switches;
    globals.__mutantOn = (id: number) => switches.on(id);
    switches.on(0);
    new Function(observed('a.ts', 'globalThis.__mutantOn(1);'))();
    expect([...(switches.metLoading('a.ts') as Uint8Array)]).toEqual([0, 1, 0]);
    expect(switches.metLoading('b.ts')).toBeUndefined();
  });
});

describe('the switches', () => {
  it('note who was asked for, and stop what would run for ever', () => {
    const switches = new Switches(3);
    expect(switches.on(1)).toBe(false);
    expect(switches.noted()).toEqual({ met: Uint8Array.of(0, 1, 0), calls: 1 });
    switches.turnOn(1, 2);
    expect(switches.hasMet(1)).toBe(false);
    expect(switches.on(1)).toBe(true);
    expect(switches.hasMet(1)).toBe(true);
    expect(switches.on(0)).toBe(false);
    expect(() => switches.on(0)).toThrow('runs for ever');
    switches.turnOff();
    for (let i = 0; i < 5; i++) expect(switches.on(1)).toBe(false);
  });
});

describe('the order in which tests are tried', () => {
  const near = { file: 'tests/core/a/b.test.ts', ms: 1 };
  const far = { file: 'tests/core/c/d.test.ts', ms: 1 };
  it('begins with those that mirror the file, then goes by what they noticed', () => {
    const order = new Order<typeof near>();
    expect(order.of('core/a/b.ts', [far, near])).toEqual([near, far]);
    for (let i = 0; i < 20; i++) {
      order.note('core/a/b.ts', far, true);
      order.note('core/a/b.ts', near, false);
    }
    expect(order.of('core/a/b.ts', [near, far])).toEqual([far, near]);
    // Of another file nothing is known yet.
    expect(order.of('core/a/e.ts', [far, near])).toEqual([near, far]);
  });
  it('prefers a quick test to a slow one that notices as much', () => {
    const slow = { ...near, ms: 200 };
    expect(new Order<typeof near>().of('core/a/b.ts', [slow, near])).toEqual([near, slow]);
  });
});

describe('the score', () => {
  const of = (file: string, ...states: string[]) => states.map((state) => ({ file, state }));
  it('counts what is equivalent as noticed, and what nobody tried as not', () => {
    const { folders, low, sentence } = scores(of('core/a/b.ts', 'noticed', 'noticed', 'equivalent', 'not tried'));
    expect(folders['core/a']).toEqual({ mutants: 4, noticed: 2, equivalent: 1, share: 0.75 });
    expect(sentence).toContain('3 of 4');
    expect(low).toHaveLength(2);
    expect(low[0]).toContain('core/a: 75.0 %');
  });
  it('has a floor for each folder and one for all', () => {
    const share = (noticed: number, count: number): string[] => Array.from({ length: count }, (_, i) => (i < noticed ? 'noticed' : 'left'));
    expect(scores([...of('core/a/b.ts', ...share(85, 100)), ...of('core/c/d.ts', ...share(95, 100))]).low).toEqual([]);
    expect(scores([...of('core/a/b.ts', ...share(84, 100)), ...of('core/c/d.ts', ...share(96, 100))]).low).toEqual([
      'core/a: 84.0 % noticed, less than 85 %',
    ]);
    expect(scores(of('core/a/b.ts', ...share(89, 100))).low).toEqual(['all: 89.0 % noticed, less than 90 %']);
  });
});
