import { defineConfig } from 'vitest/config';

/** Projects by what they need: core and published need nothing, api the built server, web a browser too. */
export default defineConfig({
  test: {
    maxWorkers: 2,
    reporters: ['default', './tests/tools/count-reporter.ts'],
    coverage: {
      provider: 'v8',
      include: ['core/**/*.ts', 'api/**/*.ts'],
      exclude: ['api/main.ts'],
      reporter: ['text-summary'],
      thresholds: { statements: 95, branches: 90 },
    },
    projects: [
      {
        test: {
          name: 'core',
          isolate: false,
          testTimeout: 20_000,
          include: ['tests/core/**/*.test.ts', 'tests/published/**/*.test.ts', 'tests/data/**/*.test.ts', 'tests/mutants/*.test.ts'],
        },
      },
      {
        test: {
          name: 'api',
          isolate: false,
          setupFiles: ['./tests/support/data-folder.ts'],
          testTimeout: 20_000,
          include: ['tests/api/**/*.test.ts'],
        },
      },
      {
        test: {
          name: 'web',
          isolate: false,
          setupFiles: ['./tests/support/data-folder.ts'],
          include: ['tests/web/**/*.test.ts'],
          globalSetup: './tests/web/build-page.ts',
          testTimeout: 30_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
