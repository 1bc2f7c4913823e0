import { writeFileSync } from 'node:fs';
import type { Reporter, TestModule } from 'vitest/node';

/**
 * Leaves the counts of a run where `check.mjs` finds them (`COUNTS` names the file). A test file that
 * crashes, or an error outside any test, counts as a failure too.
 */
export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    const file = process.env.COUNTS;
    if (!file) return;
    let passed = 0;
    let failed = errors.length;
    for (const module of modules) {
      failed += module.errors().length;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed++;
        else if (state === 'failed') failed++;
      }
    }
    writeFileSync(file, JSON.stringify({ passed, failed }));
  }
}
