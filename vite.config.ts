import { defineConfig, type Plugin } from 'vite';

/**
 * The page reads with zod and never writes JSON Schema, which zod would carry along: those modules'
 * functions are emptied in the page's build, 7 kB less to wait for.
 */
const withoutJsonSchema: Plugin = {
  name: 'without-json-schema',
  enforce: 'pre',
  transform(code, id) {
    if (!/zod\/v4\/core\/(to-json-schema|json-schema-processors)\.js$/.test(id)) return undefined;
    const names = [...code.matchAll(/^export (?:const|function|class) (\w+)/gm)].map((match) => match[1]);
    return { code: names.map((name) => `export const ${name} = () => undefined;`).join('\n'), map: null };
  },
};

/** The page: `web/` to `dist/web`. The server is bundled by `vite.server.config.ts`. */
export default defineConfig({
  root: 'web',
  plugins: [withoutJsonSchema],
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      // Core is pure: of its contents page each piece of the page carries only what it uses.
      treeshake: { moduleSideEffects: [{ test: /\/core\/.*\.ts$/, sideEffects: false }] },
      // What the page starts with, in one file: split by who else uses it, it would be several, and larger.
      output: { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } },
    },
  },
  worker: { format: 'es' },
  // The Host stays the page's own, so that the server sees page and request to be of one origin.
  server: { proxy: { '/api': { target: 'http://127.0.0.1:8787', changeOrigin: false } } },
});
