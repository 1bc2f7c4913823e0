import { defineConfig, mergeConfig } from 'vite';
import server from './vite.server.config.ts';

/** The worker that searches, `dist/choosing.worker.js`: a file of its own beside the server, as Node wants it. */
export default mergeConfig(
  server,
  defineConfig({
    build: { ssr: 'api/searching/worker.ts', rolldownOptions: { output: { entryFileNames: 'choosing.worker.js' } } },
  }),
);
