/**
 * `npm run bench` and `npm run load`: what is measured is bundled by the server's own configuration, because code
 * run from its source is slower than what is shipped, and run in a process of its own. Ends as that ends.
 */
import { spawnSync } from 'node:child_process';
import { build } from 'vite';

const ENTRIES = {
  bench: 'tests/bench/bench.ts',
  load: 'tests/load/load.ts',
  twin: 'tests/measure/twin.ts',
  client: 'tests/measure/client.ts',
};
const FOLDER = 'dist/measured';

const what = process.argv[2];
if (what !== 'bench' && what !== 'load') throw new Error('bench or load');
for (const name of [what, 'twin', 'client'])
  await build({
    configFile: 'vite.server.config.ts',
    logLevel: 'warn',
    publicDir: false,
    build: {
      ssr: ENTRIES[name],
      outDir: FOLDER,
      // The browser's driver finds its own files beside its source.
      rolldownOptions: { external: ['playwright-core'], output: { entryFileNames: `${name}.js`, codeSplitting: false } },
    },
    ssr: { external: ['playwright-core'] },
  });
const { status } = spawnSync(process.execPath, ['--expose-gc', `${FOLDER}/${what}.js`, ...process.argv.slice(3)], { stdio: 'inherit' });
process.exitCode = status ?? 1;
