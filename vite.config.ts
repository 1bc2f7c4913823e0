import { defineConfig } from 'vite';

/** The page: `web/` to `dist/web`. The server is bundled by `vite.server.config.ts`. */
export default defineConfig({
  root: 'web',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: { outDir: '../dist/web', emptyOutDir: true, target: 'es2022', modulePreload: { polyfill: false } },
  server: { proxy: { '/api': 'http://127.0.0.1:8787' } },
});
