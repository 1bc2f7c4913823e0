import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import type { Socket } from 'node:net';
import type { Context, MiddlewareHandler } from 'hono';
import { refusal } from './problems.ts';
import { isFromHere } from './reach.ts';

/**
 * The key that lets a device other than this machine write. The server prints it when it starts and forgets it
 * when it ends. A browser is given it by an address that is opened once, and keeps it in a cookie that no
 * script can read; what else asks sends it in Authorization.
 */

/** 128 bits, in letters that an address holds as they are. */
export const newKey = (): string => randomBytes(16).toString('base64url');

/** Where a browser is given the key. */
export const ENTRANCE = '/open';
const COOKIE = 'pupilwalk-key';

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
/** In the same time whatever is given. */
const isKey = (given: string | undefined, key: string | undefined): boolean =>
  given !== undefined && key !== undefined && timingSafeEqual(digest(given), digest(key));

const inCookie = (c: Context): string | undefined =>
  c.req
    .header('cookie')
    ?.split(';')
    .map((pair) => pair.trim())
    .find((pair) => pair.startsWith(`${COOKIE}=`))
    ?.slice(COOKIE.length + 1);

const inAuthorization = (c: Context): string | undefined => c.req.header('authorization')?.match(/^bearer +(\S+)$/i)?.[1];

/** A page of ours tells where it comes from; nothing else has to. */
const wouldDo = (c: Context): string =>
  c.req.header('origin') === undefined
    ? 'Authorization: Bearer with the key that the server printed when it last started'
    : 'opening the address with a key, which the server printed when it last started, once in this browser';
const BEARER = { 'www-authenticate': 'Bearer' };

/** Gives a browser the key that it brings, for as long as it stays open, and takes the key out of its address. */
export const entrance =
  (key: string | undefined): MiddlewareHandler =>
  async (c) => {
    if (!isKey(c.req.query('key'), key))
      throw refusal(
        401,
        'wrongKey',
        'does not bring the key of this server',
        'another key, or none',
        'the address as the server printed it when it last started',
        BEARER,
      );
    // Not Secure: over plain http, which is what there is in a home network, such a cookie would be dropped.
    const cookie = `${COOKIE}=${key}; Path=/api/parts; HttpOnly; SameSite=Strict`;
    return new Response(null, { status: 303, headers: { location: '/', 'set-cookie': cookie, 'cache-control': 'no-store' } });
  };

const READS = ['GET', 'HEAD', 'OPTIONS'];

/** Before the routes that write: whoever is not at this machine may only read, unless they have the key. */
export const keptFromOthers =
  (key: string | undefined): MiddlewareHandler =>
  async (c, next) => {
    const connection: Socket | undefined = c.env?.incoming?.socket;
    const may = READS.includes(c.req.method) || isFromHere(connection, (name) => c.req.header(name));
    if (!may && !isKey(inAuthorization(c), key) && !isKey(inCookie(c), key))
      throw refusal(401, 'readOnly', 'comes from a device that may only read the drawer', 'no key, or another one', wouldDo(c), BEARER);
    await next();
  };
