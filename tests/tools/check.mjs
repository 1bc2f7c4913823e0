/**
 * Every check, in order: `npm test`. Each step counts as one; the tests count one by one. Ends on a line
 * `N passed, N failed` whatever happens, and exits with 1 where anything failed.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureChromium } from './chromium.mjs';

const scratch = mkdtempSync(join(tmpdir(), 'pupilwalk-'));
const counts = join(scratch, 'counts.json');
let passed = 0;
let failed = 0;

const bin = (name) => join('node_modules', '.bin', name);
const run = (command, args, env = {}) => spawnSync(command, args, { stdio: 'inherit', env: { ...process.env, ...env } }).status === 0;

function step(name, holds) {
  const began = Date.now();
  const ok = holds();
  if (ok) passed++;
  else failed++;
  console.log(`${ok ? 'ok  ' : 'FAIL'} ${name} (${((Date.now() - began) / 1000).toFixed(1)} s)`);
}

for (const room of ['core', 'api', 'web', 'tests']) step(`types: ${room}`, () => run(bin('tsc'), ['-p', room]));
step('lint and format', () => run(bin('biome'), ['check', '--error-on-warnings', '.']));
step('unused code', () => run(bin('knip'), ['--no-progress']));
step('build', () => run('npm', ['run', '--silent', 'build']));

const chromium = ensureChromium();
step('a browser', () => {
  if (!chromium) console.log('No Chromium found: install one (Debian: apt-get install chromium) or set CHROMIUM_PATH.');
  return chromium !== undefined;
});

const projects = chromium ? [] : ['--project', 'core', '--project', 'api'];
const ran = run(bin('vitest'), ['run', ...projects], { COUNTS: counts, ...(chromium ? { CHROMIUM_PATH: chromium } : {}) });
try {
  const tests = JSON.parse(readFileSync(counts, 'utf8'));
  passed += tests.passed;
  failed += tests.failed;
  if (!ran && tests.failed === 0) failed++;
} catch {
  failed++;
}
rmSync(scratch, { recursive: true, force: true });
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
