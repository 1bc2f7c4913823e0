import { isIP } from 'node:net';
import type { MiddlewareHandler } from 'hono';
import { refusal } from './problems.ts';

/**
 * Who may ask. The server listens on loopback, but any page in the user's browser can send it requests
 * and a foreign name can be made to point at it: so the name that was asked for must be ours, and what
 * writes must come from our own page or from no page at all.
 */

/** On every answer. The page loads nothing from elsewhere and runs no inline script or style. */
export const HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "manifest-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; '),
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=()',
};

/** The security headers, whatever the answer; nothing under /api is kept by a cache. */
export const secured: MiddlewareHandler = async (c, next) => {
  await next();
  for (const [name, value] of Object.entries(HEADERS)) c.res.headers.set(name, value);
  if (c.req.path.startsWith('/api/')) c.res.headers.set('cache-control', 'no-store');
};

const LOOPBACK = ['localhost', '127.0.0.1', '[::1]'];
const ANYWHERE = ['0.0.0.0', '::'];

/** `name`, `name:port` or `[v6]:port` -> the name in lower case, or undefined where it is neither. */
const hostName = (host: string): string | undefined => host.toLowerCase().match(/^(\[[0-9a-f:.]+\]|[a-z0-9.-]+)(?::\d{1,5})?$/)?.[1];

/** An address cannot be pointed elsewhere, only a name can: with HOST open to all any address will do. */
function isOurs(name: string | undefined, configured: string): boolean {
  if (name === undefined) return false;
  const bare = name.replace(/^\[|\]$/g, '');
  if (LOOPBACK.includes(name) || bare === configured.toLowerCase()) return true;
  return ANYWHERE.includes(configured) && isIP(bare) > 0;
}

const READS = ['GET', 'HEAD'];

/** Refuses foreign names (DNS rebinding), and requests that write on behalf of a foreign page. */
export const guarded =
  (configured: string): MiddlewareHandler =>
  async (c, next) => {
    const host = c.req.header('host') ?? '';
    // A request may carry a whole address beside its Host: then that one counts too.
    const foreign = [host, new URL(c.req.url).host].find((name) => !isOurs(hostName(name), configured));
    if (foreign !== undefined)
      throw refusal(
        403,
        'foreignHost',
        'was sent to a name that is not this server',
        foreign,
        `one of ${LOOPBACK.join(', ')}, or what HOST says`,
      );
    if (!READS.includes(c.req.method)) {
      const origin = c.req.header('origin');
      if (origin !== undefined && origin !== `http://${host}` && origin !== `https://${host}`)
        throw refusal(403, 'foreignOrigin', 'comes from a page of another origin', origin, `http://${host}, or no Origin at all`);
      const site = c.req.header('sec-fetch-site');
      if (site !== undefined && site !== 'same-origin' && site !== 'none')
        throw refusal(403, 'foreignOrigin', 'comes from a page of another site', site, 'same-origin, or none');
    }
    await next();
  };
