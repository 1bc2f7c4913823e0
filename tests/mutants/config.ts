import { relative, resolve } from 'node:path';
import { defineConfig } from 'vitest/config';
import { ROOT, readPlan } from './plan.ts';
import { observed, switched } from './sites.ts';

/** Runs core's tests over core with every mutant in it, each behind a switch. Started by `mutants.ts`. */

const plan = readPlan();

export default defineConfig({
  root: ROOT,
  plugins: [
    {
      name: 'mutants',
      enforce: 'pre',
      transform(code: string, id: string) {
        const name = relative(ROOT, id.split('?')[0] as string);
        if (!/^(core|tests)\/.*\.ts$/.test(name) || name.startsWith('tests/mutants/')) return undefined;
        const file = plan.files[name];
        return { code: observed(name, file ? switched(code, file.mutants, file.first) : code), map: null };
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
