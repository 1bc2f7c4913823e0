import { defineConfig } from 'vite';

/**
 * The server as one file, `dist/server.js`, libraries included: it starts in a fifth of a second. Beside it
 * `dist/choosing.worker.js`, the worker that searches.
 */
export default defineConfig({
  build: {
    ssr: true,
    outDir: 'dist',
    emptyOutDir: false,
    target: 'node20',
    rolldownOptions: {
      input: { server: 'api/main.ts', 'choosing.worker': 'api/searching/worker.ts' },
      output: { entryFileNames: '[name].js', chunkFileNames: 'shared.js' },
    },
  },
  ssr: { noExternal: true },
});
