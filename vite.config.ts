import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig, type Plugin } from 'vite';

/** Methods of a text that ask for a form with a name. */
const NAMED_FORMS = /^ {4}\w+\(params\) \{\n {8}return this\.check\(core\._\w+\(Zod\w+, params\)\);\n {4}\},?\n/gm;

/**
 * The page reads with zod, never writes JSON Schema, says in its own words (`core/errors.ts`) what is wrong, and asks
 * for no text in a form that has a name (an e-mail address, a UUID): what zod would carry along for these is left out of
 * the page's build, 11 kB less to wait for.
 */
const onlyReading: Plugin = {
  name: 'only-reading',
  enforce: 'pre',
  transform(code, id) {
    if (/zod\/v4\/classic\/schemas\.js$/.test(id)) return { code: code.replace(NAMED_FORMS, ''), map: null };
    if (/zod\/v4\/locales\/en\.js$/.test(id)) return { code: 'export default () => ({ localeError: undefined });', map: null };
    if (!/zod\/v4\/core\/(to-json-schema|json-schema-processors)\.js$/.test(id)) return undefined;
    const names = [...code.matchAll(/^export (?:const|function|class) (\w+)/gm)].map((match) => match[1]);
    return { code: names.map((name) => `export const ${name} = () => undefined;`).join('\n'), map: null };
  },
};

/**
 * The faces of the first text are asked for with the document, not when the style sheet is there: they stand
 * when the first answer is painted.
 */
const facesFirst: Plugin = {
  name: 'faces-first',
  transformIndexHtml: {
    order: 'post',
    handler: (_, { bundle }) =>
      Object.keys(bundle ?? {})
        .filter((file) => /-latin-wght-(normal|italic)-[\w-]+\.woff2$/.test(file))
        .map((file) => ({
          tag: 'link',
          attrs: { rel: 'preload', href: `/${file}`, as: 'font', type: 'font/woff2', crossorigin: '' },
          injectTo: 'head-prepend' as const,
        })),
  },
};

/** `sw.js`: the worker of `web/offline/`, told which files were built together, and a version that is theirs alone. */
function keptAtHand(): Plugin {
  let folder = '';
  return {
    name: 'kept-at-hand',
    apply: 'build',
    configResolved({ root, build }) {
      folder = join(root, build.outDir);
    },
    closeBundle() {
      const files = readdirSync(folder, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && entry.name !== 'sw.js')
        .map((entry) => join(entry.parentPath, entry.name))
        .toSorted();
      const hash = createHash('sha256');
      for (const file of files) hash.update(readFileSync(file));
      const addresses = files.map((file) =>
        file
          .slice(folder.length)
          .replaceAll('\\', '/')
          .replace(/^\/index\.html$/, '/'),
      );
      const told = `const VERSION = '${hash.digest('base64url').slice(0, 12)}';\nconst FILES = ${JSON.stringify(addresses)};\n`;
      writeFileSync(join(folder, 'sw.js'), told + readFileSync(join(import.meta.dirname, 'web/offline/sw.js'), 'utf8'));
    },
  };
}

/**
 * What most views draw, list and type with; the Pairing view needs nearly all of it at once. In one piece, because
 * each piece more is a name more for the first one to carry.
 */
const TOOLS =
  /\/web\/(abreast\/named|charts\/(canvas|roles|scroll|subject-contrast|table)|fields\/(input|radios|typed)|figures\/|plates\/(dimensions|handle|path-scale|rows|silhouette|strokes|width)|share\/(file|pick-file|save-file)|state\/(field-point|slices))/;

/** The page: `web/` to `dist/web`. The server is bundled by `vite.server.config.ts`. */
export default defineConfig({
  root: 'web',
  plugins: [onlyReading, facesFirst, keptAtHand()],
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
      output: {
        codeSplitting: {
          groups: [
            { name: 'first', tags: ['$initial'], priority: 1 },
            { name: 'tools', test: TOOLS },
          ],
        },
      },
    },
  },
  worker: { format: 'es' },
  // The Host stays the page's own, so that the server sees page and request to be of one origin.
  server: { proxy: { '/api': { target: 'http://127.0.0.1:8787', changeOrigin: false } } },
});
