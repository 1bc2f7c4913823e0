import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';

/** What the page weighs before its first answer: the scripts that its document names. */

const DIST = join(import.meta.dirname, '../../dist/web');
const MOST = 70_000;

it('asks for less than 70 kB of script before the first answer, and for no tracing', () => {
  const html = readFileSync(join(DIST, 'index.html'), 'utf8');
  const scripts = [...html.matchAll(/(?:src|href)="(\/assets\/[^"]+\.js)"/g)].map((match) => match[1] as string);
  expect(scripts.length).toBeGreaterThan(0);
  const code = scripts.map((script) => readFileSync(join(DIST, script)));
  const bytes = code.reduce((sum, text) => sum + gzipSync(text, { level: 9 }).length, 0);
  expect(bytes).toBeGreaterThan(10_000);
  expect(bytes).toBeLessThan(MOST);
  // The names of glasses stand in what traces them, and nowhere else.
  expect(code.some((text) => text.includes('N-BK7'))).toBe(false);
  const fetched = [...code.join('').matchAll(/assets\/(glassworks-[\w-]+\.js)|\.\/(glassworks-[\w-]+\.js)/g)].map((m) => m[1] ?? m[2]);
  expect(fetched.length).toBeGreaterThan(0);
  expect(readFileSync(join(DIST, 'assets', fetched[0] as string), 'utf8')).toContain('N-BK7');
});
