import { execFileSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

const newest = (folder: string): number =>
  readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .reduce((last, entry) => Math.max(last, statSync(join(entry.parentPath, entry.name)).mtimeMs), 0);

/** Once before all browser tests: builds the page where what is built is older than what it is built from. */
export default function buildPage(): void {
  let built = 0;
  try {
    built = statSync(join(ROOT, 'dist/web/index.html')).mtimeMs;
  } catch {}
  const sources = Math.max(statSync(join(ROOT, 'vite.config.ts')).mtimeMs, ...['web', 'core', 'data'].map(newest));
  if (built < sources) execFileSync('npx', ['vite', 'build', '--logLevel', 'warn'], { cwd: ROOT, stdio: 'inherit' });
}
