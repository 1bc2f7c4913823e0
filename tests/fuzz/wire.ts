import type { Random } from '../support/random.ts';
import type { Sent } from './client.ts';

/** Envelopes that no client of ours would send: wrong types, methods, paths, queries and headers. */

const TYPES = [
  'text/plain',
  'application/x-www-form-urlencoded',
  'multipart/form-data; boundary=x',
  'application/json; charset=latin1',
  'application/json;charset=utf-8',
  'APPLICATION/JSON',
  'application/json; charset="UTF-8"',
  '',
  'application/problem+json',
  'text/csv',
  'application/json, text/plain',
  'x'.repeat(400),
];
const METHODS = ['GET', 'HEAD', 'OPTIONS', 'PUT', 'DELETE', 'PATCH', 'POST', 'TRACE', 'PROPFIND', 'LOCK', 'SEARCH', 'PURGE'];
const PATHS = [
  '/api',
  '/api/',
  '/api//parts',
  '/API/parts',
  '/api/parts/',
  '/api/parts/__proto__',
  '/api/parts/constructor',
  '/api/parts/..%2f..%2fetc%2fpasswd',
  '/api/parts/%00',
  '/api/parts/%',
  '/api/parts/%ff',
  '/api/parts/%e2%98%82',
  '/api/parts/a/b',
  '/api/parts/drawer.json',
  '/api/parts/drawer',
  `/api/parts/${'x'.repeat(3000)}`,
  '/%2e%2e/%2e%2e/etc/passwd',
  '/%252e%252e%252fetc',
  '/..%5c..%5cx',
  '//evil.example/',
  '/api/pairings/report/',
  '/api/pairings/report%20',
  '/api/pairings/%72eport',
  '/api/pairings/toString',
  '/index.html',
  '/assets/',
  '/__proto__',
  '/api/openapi.json/',
  '/api/health;x=1',
  '/api/glasses.json',
  '/open',
  '/open?key=1',
];
const QUERIES = [
  '?',
  '?replace=maybe',
  '?replace=true&replace=false',
  '?replace',
  '?replace[]=true',
  '?__proto__[x]=1',
  '?constructor=1',
  '?a=%',
  '?a=%ff',
  `?${'q='.repeat(900)}`,
  '?replace=true%00',
  '#x',
  '?key=1',
];
const HEADERS: readonly Readonly<Record<string, string>>[] = [
  { host: 'evil.example' },
  { host: 'localhost:99999' },
  { host: '[::1]:1' },
  { host: 'localhost@evil.example' },
  { host: '' },
  { origin: 'http://evil.example' },
  { origin: 'null' },
  { origin: 'http://localhost' },
  { 'sec-fetch-site': 'cross-site' },
  { 'sec-fetch-site': 'x' },
  { 'content-encoding': 'gzip' },
  { 'content-encoding': 'identity' },
  { expect: '100-continue' },
  { accept: 'text/html' },
  { accept: 'x'.repeat(2000) },
  { 'if-match': '"1"' },
  { 'if-none-match': '*' },
  { range: 'bytes=0-1' },
  { cookie: '__proto__=1; a' },
  { authorization: 'Bearer x' },
  { 'x-http-method-override': 'DELETE' },
  { 'x-forwarded-for': '203.0.113.1' },
  { 'x-forwarded-host': 'evil.example' },
  { connection: 'close' },
  { upgrade: 'websocket', connection: 'upgrade' },
];

/** A sound request in a wrong envelope: its method, its path, its query, its type, another header. */
export function onTheWire(sound: Sent, r: Random): Sent {
  switch (r.integer(0, 4)) {
    case 0:
      return { ...sound, method: r.oneOf(METHODS) };
    case 1:
      return { ...sound, path: r.oneOf(PATHS) };
    case 2:
      return { ...sound, path: sound.path.split('?')[0] + r.oneOf(QUERIES) };
    case 3:
      return { ...sound, headers: { ...sound.headers, 'content-type': r.oneOf(TYPES) } };
    default:
      return { ...sound, headers: { ...sound.headers, ...r.oneOf(HEADERS) } };
  }
}
