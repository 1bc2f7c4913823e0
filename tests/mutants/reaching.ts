import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { ROOT } from './plan.ts';

/** Which tests can see a file of core at all: those that import it, or something that does. */

const IMPORTED = /\bfrom\s+'(\.[^']+)'|\bimport\('(\.[^']+)'\)/g;

const direct = new Map<string, readonly string[]>();
function importsOf(file: string): readonly string[] {
  const known = direct.get(file);
  if (known) return known;
  const text = file.endsWith('.ts') && existsSync(join(ROOT, file)) ? readFileSync(join(ROOT, file), 'utf8') : '';
  const found = [...text.matchAll(IMPORTED)].map(([, a, b]) => relative(ROOT, join(ROOT, dirname(file), (a ?? b) as string)));
  direct.set(file, found);
  return found;
}

function allOf(file: string): ReadonlySet<string> {
  const all = new Set<string>();
  const open = [file];
  for (let next = open.pop(); next !== undefined; next = open.pop())
    if (!all.has(next)) {
      all.add(next);
      open.push(...importsOf(next));
    }
  return all;
}

/** For each test the modules beside core that it loads, itself among them. */
export const besideCore = (tests: readonly string[]): Record<string, string[]> =>
  Object.fromEntries(tests.map((test) => [test, [...allOf(test)].filter((file) => file.startsWith('tests/'))]));

/** For each source the tests that reach it: those of its own folder first, then those that load least. */
export function reachingOf(sources: readonly string[], tests: readonly string[]): Record<string, string[]> {
  const loads = tests.map((test) => ({ test, all: allOf(test) })).sort((a, b) => a.all.size - b.all.size);
  const near = (source: string, test: string): boolean => test.startsWith(`tests/${dirname(source)}/`);
  return Object.fromEntries(
    sources.map((source) => {
      const reach = loads.filter(({ all }) => all.has(source)).map(({ test }) => test);
      return [source, [...reach.filter((test) => near(source, test)), ...reach.filter((test) => !near(source, test))]];
    }),
  );
}
