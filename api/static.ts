import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, extname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Context } from 'hono';

/**
 * The built page. Its files are read once, when the server starts; a request is looked up among them
 * by its whole path and never becomes a path on the disk.
 */
interface PageFile {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly gzip: Uint8Array<ArrayBuffer> | undefined;
  readonly type: string;
  readonly tag: string;
  readonly cache: string;
}
export type Page = ReadonlyMap<string, PageFile>;

const TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
};
const PACKS = new Set(['.html', '.js', '.css', '.json', '.svg', '.txt', '.webmanifest']);

/** `dist/web`, from `dist/server.js` and from `api/static.ts`. */
export function builtPage(here = dirname(fileURLToPath(import.meta.url))): string | undefined {
  return [join(here, 'web'), join(here, '..', 'dist', 'web')].find((folder) => existsSync(join(folder, 'index.html')));
}

/** Every file of the page by its address; empty where the page has not been built. */
export function readPage(folder: string | undefined): Page {
  if (folder === undefined) return new Map();
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return new Map(
    files.map((entry) => {
      const path = join(entry.parentPath, entry.name);
      const address = `/${relative(folder, path).split(sep).join('/')}`;
      return [address === '/index.html' ? '/' : address, pageFile(address, readFileSync(path))];
    }),
  );
}

function pageFile(address: string, bytes: Uint8Array<ArrayBuffer>): PageFile {
  const kind = extname(address);
  return {
    bytes,
    gzip: PACKS.has(kind) ? gzipSync(bytes) : undefined,
    type: TYPES[kind] ?? 'application/octet-stream',
    tag: `"${createHash('sha256').update(bytes).digest('base64url').slice(0, 22)}"`,
    // The names of built assets carry a hash of what is in them; all else may change under its name.
    cache: address.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
  };
}

/** The file at the address that was asked for, or undefined. */
export function servePage(page: Page, c: Context): Response | undefined {
  const file = page.get(c.req.path);
  if (!file) return undefined;
  const headers: Record<string, string> = {
    'content-type': file.type,
    'cache-control': file.cache,
    etag: file.tag,
    vary: 'accept-encoding',
  };
  const held = c.req
    .header('if-none-match')
    ?.split(',')
    .map((tag) => tag.trim().replace(/^W\//, ''));
  if (held?.includes(file.tag)) return new Response(null, { status: 304, headers });
  const packed = file.gzip && /\bgzip\b(?!\s*;\s*q=0(?:\.0*)?\s*(?:,|$))/.test(c.req.header('accept-encoding') ?? '');
  if (packed) headers['content-encoding'] = 'gzip';
  return new Response(packed ? file.gzip : file.bytes, { headers });
}
