import type { MiddlewareHandler } from 'hono';
import { refusal } from './problems.ts';
import { isOurs, type Reach } from './reach.ts';

/**
 * Who may ask. The server usually listens on loopback, but any page in the user's browser can send it requests
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

const READS = ['GET', 'HEAD'];

/** Refuses foreign names (DNS rebinding), and requests that write on behalf of a foreign page. */
export const guarded =
  (reach: Reach): MiddlewareHandler =>
  async (c, next) => {
    const host = c.req.header('host') ?? '';
    // A request may carry a whole address beside its Host: then that one counts too.
    const cameInAt: string | undefined = c.env?.incoming?.socket?.localAddress;
    const foreign = [host, new URL(c.req.url).host].find((name) => !isOurs(name, reach, cameInAt));
    if (foreign !== undefined)
      throw refusal(
        403,
        'foreignHost',
        'was sent to a name that is not this server',
        foreign,
        'localhost, 127.0.0.1 or [::1], what HOST says, or a name that ALLOWED_HOSTS lists',
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
