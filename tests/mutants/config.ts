import { relative, resolve } from 'node:path';
import { defineConfig } from 'vitest/config';
import { ROOT, readPlan } from './plan.ts';
import { switched } from './sites.ts';

/** Runs core's tests over core with every mutant in it, each behind a switch. Started by `mutants.ts`. */

const plan = readPlan();

export default defineConfig({
  root: ROOT,
  plugins: [
    {
      name: 'mutants',
      enforce: 'pre',
      transform(code: string, id: string) {
        const file = plan.files[relative(ROOT, id.split('?')[0] as string)];
        return file ? { code: switched(code, file.mutants, file.first), map: null } : undefined;
      },
    },
  ],
  test: {
    runner: resolve(import.meta.dirname, 'runner.ts'),
    // One process keeps all tests loaded.
    isolate: false,
    maxWorkers: 1,
    include: [...plan.tests],
    testTimeout: 120_000,
    reporters: [{}],
  },
});
