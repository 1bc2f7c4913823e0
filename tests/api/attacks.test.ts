import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildApp } from '../../api/app.ts';
import { HEADERS } from '../../api/guard.ts';
import type { Running } from '../../api/server.ts';
import { readPage } from '../../api/static.ts';
import { type Answered, ask, expectProblem, problemIn, raw, start } from './support.ts';

/** The server attacked: foreign names and pages, paths that climb, methods that are not there. */

let server: Running;
let folder: string;
const SECRET = 'not for the page';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'page-'));
  const page = join(folder, 'web');
  mkdirSync(join(page, 'assets'), { recursive: true });
  writeFileSync(join(folder, 'secret.txt'), SECRET);
  writeFileSync(join(page, 'index.html'), '<!doctype html><title>the page</title>');
  writeFileSync(join(page, 'mark.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  writeFileSync(join(page, 'assets', 'main-abc123.js'), `export const x = ${JSON.stringify('y'.repeat(5000))};`);
  writeFileSync(join(page, 'assets', 'face-abc123.woff2'), Buffer.from([0, 1, 2, 255]));
  symlinkSync(join(folder, 'secret.txt'), join(page, 'linked.txt'));
  symlinkSync(folder, join(page, 'linked'));
  symlinkSync('/etc', join(page, 'assets', 'etc'));
  server = await start({ page: readPage(page) });
});
afterAll(async () => {
  await server.stop();
  rmSync(folder, { recursive: true });
});

const at = (path: string): string => server.address + path;
const good = { objective: 'plan-10x-0-25-200', relay: 'close-up-5d-58', sensor: 'full-frame-45mp', infinitySpaceMm: 60 };

/** A request with any Host and headers, which fetch does not allow. */
function asked(path: string, headers: Record<string, string>, method = 'GET', body?: string): Promise<Answered> {
  const { hostname, port } = new URL(server.address);
  return new Promise((resolve, reject) => {
    const length = body === undefined ? {} : { 'content-length': String(Buffer.byteLength(body)) };
    const sent = request({ hostname, port, path, method, headers: { ...headers, ...length } }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk) => chunks.push(chunk));
      response.on('end', () => {
        const text = Buffer.concat(chunks).toString();
        const got = new Headers(Object.entries(response.headers).map(([name, value]) => [name, String(value)]));
        const json = text.startsWith('{') ? JSON.parse(text) : undefined;
        resolve({ status: response.statusCode ?? 0, headers: got, text, json });
      });
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

function expectHeaders(headers: Headers): void {
  for (const [name, value] of Object.entries(HEADERS)) expect(headers.get(name), name).toBe(value);
}

describe('a foreign Host', () => {
  const FOREIGN = [
    'evil.example',
    'evil.example:8787',
    'localhost.evil.example',
    '127.0.0.1.evil.example',
    'evillocalhost',
    'localhost:8787:1',
    '10.0.0.7',
    '0.0.0.0',
    '[::2]',
    '127.0.0.1.',
  ];
  test.each(FOREIGN)('%s is refused, reading and writing', async (host) => {
    for (const answer of [
      await asked('/api/health', { host }),
      await asked('/', { host }),
      await asked('/api/pairings/report', { host, 'content-type': 'application/json' }, 'POST', JSON.stringify(good)),
    ]) {
      expect([400, 403]).toContain(answer.status);
      const { errors } = expectProblem(answer, answer.status);
      if (answer.status === 403)
        expect(errors[0]).toMatchObject({ code: 'foreignHost', given: host, expected: expect.stringMatching(/localhost/) });
      expectHeaders(answer.headers);
    }
  });
  test.each(['localhost', 'localhost:1', 'LOCALHOST:8787', '127.0.0.1', '[::1]:8787'])('%s is ours', async (host) => {
    expect((await asked('/api/health', { host })).status).toBe(200);
  });
  test('none at all is refused', async () => {
    expect(await raw(server.address, 'GET /api/health HTTP/1.0\r\n\r\n')).toMatch(/^HTTP\/1\.1 40[03] /);
    expect(await raw(server.address, 'GET /api/health HTTP/1.1\r\n\r\n')).toMatch(/^HTTP\/1\.1 400 /);
  });
  test('two of them are refused', async () => {
    const both = 'GET /api/health HTTP/1.1\r\nHost: localhost\r\nHost: evil.example\r\nConnection: close\r\n\r\n';
    const answer = await raw(server.address, both);
    expect(answer).toMatch(/^HTTP\/1\.1 (200|40[03]) /);
    expect(
      await raw(
        server.address,
        both.replace(/localhost|evil.example/g, (h) => (h === 'localhost' ? 'evil.example' : 'localhost')),
      ),
    ).toMatch(/^HTTP\/1\.1 40[03] /);
  });
  test('the configured name is ours, and with HOST open to all any address but no foreign name', async () => {
    const seen = async (host: string, header: string): Promise<number> =>
      (await buildApp({ host, page: new Map() }).request(`http://${header}/api/health`, { headers: { host: header } })).status;
    expect(await seen('bench.local', 'bench.local:8787')).toBe(200);
    expect(await seen('bench.local', 'other.local')).toBe(403);
    expect(await seen('0.0.0.0', '192.168.1.7:8787')).toBe(200);
    expect(await seen('::', '[fe80::1]:8787')).toBe(200);
    expect(await seen('0.0.0.0', 'evil.example')).toBe(403);
    expect(await seen('192.168.1.7', '192.168.1.8')).toBe(403);
  });
});

describe('a foreign page', () => {
  const writing = (headers: Record<string, string>, method = 'POST') =>
    asked(
      '/api/pairings/report',
      { host: new URL(server.address).host, 'content-type': 'application/json', ...headers },
      method,
      JSON.stringify(good),
    );
  const other = () => `http://localhost:${Number(new URL(server.address).port) + 1}`;
  test.each([
    ['another site', () => 'https://evil.example'],
    ['no origin that it admits', () => 'null'],
    ['another port', other],
    ['our name by another name', () => server.address.replace('127.0.0.1', 'localhost')],
    ['a name that begins like ours', () => `${server.address}.evil.example`],
    ['nothing', () => ''],
  ])('%s may not write', async (_, origin) => {
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH']) {
      const answer = await writing({ origin: origin() }, method);
      const { errors } = expectProblem(answer, 403);
      expect(errors[0]).toMatchObject({ code: 'foreignOrigin', expected: expect.stringMatching(server.address) });
      expectHeaders(answer.headers);
      expect([...answer.headers.keys()].filter((name) => name.startsWith('access-control-'))).toEqual([]);
    }
  });
  test.each(['cross-site', 'same-site'])('a request that the browser calls %s may not write', async (site) => {
    expect(expectProblem(await writing({ 'sec-fetch-site': site }), 403).errors[0]).toMatchObject({ code: 'foreignOrigin', given: site });
  });
  test.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', undefined])(
    'what a form can send is not read: %s',
    async (type) => {
      const part = JSON.stringify({
        kind: 'sensor',
        owned: true,
        part: { name: 'x', widthMm: 36, heightMm: 24, columns: 6000, rows: 4000 },
      });
      const host = new URL(server.address).host;
      for (const path of ['/api/parts', '/api/parts/drawer?replace=true', '/api/pairings/report']) {
        const answer = await asked(path, { host, ...(type ? { 'content-type': type } : {}) }, 'POST', part);
        expect(expectProblem(answer, 415).errors[0]).toMatchObject({ code: 'wrongContentType' });
      }
      expect((await ask(at('/api/parts'))).json.drawer.parts).toBe(0);
    },
  );
  test('the drawer is not written for another page, whatever it sends beside', async () => {
    const host = new URL(server.address).host;
    for (const foreign of [{ origin: 'https://evil.example' }, { origin: 'null' }, { 'sec-fetch-site': 'cross-site' }] as Record<
      string,
      string
    >[])
      for (const [method, path] of [
        ['POST', '/api/parts'],
        ['PUT', '/api/parts/x'],
        ['DELETE', '/api/parts/x'],
        ['POST', '/api/parts/drawer'],
      ] as const) {
        const headers = {
          host,
          'content-type': 'application/json',
          'if-match': '"1"',
          authorization: 'Bearer x',
          cookie: 'pupilwalk-key=x',
        };
        expect(expectProblem(await asked(path, { ...headers, ...foreign }, method, '{}'), 403).errors[0]?.code).toBe('foreignOrigin');
      }
  });
  test('our own page may, and so may the command line', async () => {
    expect((await writing({ origin: server.address, 'sec-fetch-site': 'same-origin' })).status).toBe(200);
    expect((await writing({ 'sec-fetch-site': 'none' })).status).toBe(200);
    expect((await writing({})).status).toBe(200);
  });
  test('reading says nothing that another page could read', async () => {
    const answer = await ask(at('/api/parts'), { headers: { origin: 'https://evil.example' } });
    expect(answer.headers.get('access-control-allow-origin')).toBeNull();
    expect(answer.headers.get('cross-origin-resource-policy')).toBe('same-origin');
  });
});

describe('paths that climb', () => {
  test.each([
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/%2e%2e%2fsecret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/assets/../../secret.txt',
    '/..\\secret.txt',
    '/..%5csecret.txt',
    '/assets/..%5c..%5csecret.txt',
    '//secret.txt',
    '/../secret.txt',
    '/etc/passwd',
    '//etc/passwd',
    '/file:///etc/passwd',
    '/%00',
    '/index.html%00.js',
    '/%',
    '/%c0%ae%c0%ae/secret.txt',
    '/%252e%252e%252fsecret.txt',
    '/assets/%252e%252e/%252e%252e/secret.txt',
    '/..%255csecret.txt',
    '/....//secret.txt',
    '/.%2e/secret.txt',
    '/assets/..;/..;/secret.txt',
    '/secret.txt%00.js',
    '/linked.txt',
    '/linked/secret.txt',
    '/assets/etc/passwd',
    '/assets/',
    '/assets',
    '/.',
    '/web/index.html',
    '/server.js',
    '/package.json',
  ])('%s', async (path) => {
    const answer = await raw(server.address, `GET ${path} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`);
    expect(answer).not.toContain(SECRET);
    expect(answer).not.toContain('root:');
    const status = Number(answer.match(/^HTTP\/1\.1 (\d+)/)?.[1]);
    // Dots that the address grammar itself removes may come out at the page; nothing else does.
    if (path === '/.') expect(status).toBe(200);
    else {
      expect([400, 404]).toContain(status);
      expect(answer).toContain('application/problem+json');
    }
    for (const name of Object.keys(HEADERS)) expect(answer.toLowerCase()).toContain(`${name}: `);
  });
  test.each(['http://evil.example/api/health', 'http://localhost/secret.txt', 'secret.txt', '*', '../secret.txt'])(
    'a request for %s is refused',
    async (target) => {
      const answer = await raw(server.address, `GET ${target} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`);
      expect(answer).toMatch(/^HTTP\/1\.1 4\d\d /);
      expect(answer).not.toContain(SECRET);
    },
  );
  test('what is not HTTP at all', async () => {
    const answer = await raw(server.address, 'HELLO\r\n\r\n');
    expect(answer).toMatch(/^HTTP\/1\.1 400 Bad Request\r\n/);
    expect(problemIn(answer).errors[0]).toMatchObject({ code: 'notHttp' });
    for (const name of Object.keys(HEADERS)) expect(answer).toContain(`${name}: `);
  });
  test('headers without end', async () => {
    const answer = await raw(server.address, `GET / HTTP/1.1\r\nHost: localhost\r\nX: ${'x'.repeat(100_000)}\r\n\r\n`);
    expect(answer).toMatch(/^HTTP\/1\.1 431 /);
    expect(problemIn(answer)).toMatchObject({ status: 431, errors: [{ code: 'headersTooLarge', expected: 'at most 16 kB of headers' }] });
  });
  test('the server still answers', async () => expect((await ask(at('/api/health'))).json).toEqual({ status: 'ok' }));
});

describe('every answer carries the security headers', () => {
  test.each([
    ['the page', 'GET', '/', 200],
    ['a script', 'GET', '/assets/main-abc123.js', 200],
    ['health', 'GET', '/api/health', 200],
    ['an unknown address', 'GET', '/api/nothing', 404],
    ['an unknown page', 'GET', '/nothing', 404],
    ['a wrong method', 'DELETE', '/api/health', 405],
    ['a body of the wrong type', 'POST', '/api/pairings/report', 415],
  ])('%s', async (_, method, path, status) => {
    const answer = await ask(at(path), { method });
    expect(answer.status).toBe(status);
    expectHeaders(answer.headers);
    if (path.startsWith('/api/')) expect(answer.headers.get('cache-control')).toBe('no-store');
    if (status >= 400) expectProblem(answer, status);
  });
  test('the policy allows no inline script or style, no frame, nothing from elsewhere', () => {
    const policy = HEADERS['content-security-policy'] ?? '';
    expect(policy).toMatch(/^default-src 'none';/);
    expect(policy).not.toMatch(/unsafe-|\*|https?:/);
    for (const part of ["script-src 'self'", "style-src 'self'", "frame-ancestors 'none'", "base-uri 'none'", "form-action 'none'"])
      expect(policy.split('; ')).toContain(part);
  });
});

describe('methods', () => {
  test('HEAD answers as GET does, without a body', async () => {
    for (const path of ['/', '/api/health', '/api/parts']) {
      const head = await ask(at(path), { method: 'HEAD' });
      expect(head.status).toBe(200);
      expect(head.text).toBe('');
      expect(head.headers.get('content-type')).toBe((await ask(at(path))).headers.get('content-type'));
    }
    expect((await ask(at('/api/nothing'), { method: 'HEAD' })).status).toBe(404);
  });
  test('OPTIONS tells the methods and allows no foreign page', async () => {
    const answer = await ask(at('/api/pairings/report'), { method: 'OPTIONS' });
    expect([answer.status, answer.headers.get('allow')]).toEqual([204, 'POST, OPTIONS']);
    expect((await ask(at('/api/health'), { method: 'OPTIONS' })).headers.get('allow')).toBe('GET, HEAD, OPTIONS');
    expect((await ask(at('/'), { method: 'OPTIONS' })).headers.get('allow')).toBe('GET, HEAD, OPTIONS');
    expect((await ask(at('/api/nothing'), { method: 'OPTIONS' })).status).toBe(404);
    expectHeaders(answer.headers);
  });
  test('a wrong method is told the right ones', async () => {
    const wrong: [string, string, string][] = [
      ['GET', '/api/pairings/report', 'POST, OPTIONS'],
      ['PUT', '/api/parts', 'GET, POST, HEAD, OPTIONS'],
      ['GET', '/api/parts/some-part', 'PUT, DELETE, OPTIONS'],
      ['PUT', '/api/pairings/report', 'POST, OPTIONS'],
      ['POST', '/', 'GET, HEAD, OPTIONS'],
      ['DELETE', '/assets/main-abc123.js', 'GET, HEAD, OPTIONS'],
    ];
    for (const [method, path, allow] of wrong) {
      const answer = await ask(at(path), { method });
      expect(expectProblem(answer, 405).errors[0]).toMatchObject({ code: 'wrongMethod', given: method, expected: allow });
      expect(answer.headers.get('allow')).toBe(allow);
    }
  });
});

describe('the page', () => {
  test('its index is asked for anew each time, and not sent twice', async () => {
    const first = await ask(at('/'));
    expect(first.text).toContain('the page');
    expect(first.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(first.headers.get('cache-control')).toBe('no-cache');
    const again = await ask(at('/'), { headers: { 'if-none-match': `W/${first.headers.get('etag')}` } });
    expect([again.status, again.text]).toEqual([304, '']);
    expectHeaders(again.headers);
    expect((await ask(at('/'), { headers: { 'if-none-match': '"other"' } })).status).toBe(200);
  });
  test('hashed assets are kept for good', async () => {
    const asset = await ask(at('/assets/main-abc123.js'));
    expect(asset.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    expect(asset.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    expect((await ask(at('/mark.svg'))).headers.get('cache-control')).toBe('no-cache');
    expect((await ask(at('/assets/face-abc123.woff2'))).headers.get('content-type')).toBe('font/woff2');
  });
  test('text is packed for those who can unpack it', async () => {
    const { hostname, port } = new URL(server.address);
    const bytes = (accept: string): Promise<{ packed: string | undefined; data: Buffer }> =>
      new Promise((resolve) => {
        request({ hostname, port, path: '/assets/main-abc123.js', headers: { 'accept-encoding': accept } }, (response) => {
          const chunks: Buffer[] = [];
          response.on('data', (chunk) => chunks.push(chunk));
          response.on('end', () => resolve({ packed: response.headers['content-encoding'], data: Buffer.concat(chunks) }));
        }).end();
      });
    const [packed, plain, refused] = [await bytes('br, gzip'), await bytes('identity'), await bytes('gzip;q=0, br')];
    expect(packed.packed).toBe('gzip');
    expect(packed.data.length).toBeLessThan(plain.data.length / 10);
    expect(gunzipSync(packed.data)).toEqual(plain.data);
    expect([plain.packed, refused.packed]).toEqual([undefined, undefined]);
    expect(refused.data).toEqual(plain.data);
  });
  test('that is not built says what to do', async () => {
    const answer = await buildApp({ page: new Map() }).request('http://localhost/', { headers: { host: 'localhost' } });
    expect(answer.status).toBe(404);
    expect(await answer.text()).toContain('npm run build');
  });
});

test('a fault of our own tells no cause and is told to the one who runs the server', async () => {
  const faults: unknown[] = [];
  const app = buildApp({ page: new Map(), onFault: (error) => faults.push(error) });
  app.get('/fault', () => {
    throw new Error('a secret cause');
  });
  const answer = await app.request('http://localhost/fault', { headers: { host: 'localhost' } });
  expect(answer.status).toBe(500);
  const text = await answer.text();
  expect(text).not.toMatch(/secret|\bat\b.*:\d+/);
  expect(JSON.parse(text)).toMatchObject({ status: 500, title: 'Internal Server Error', errors: [{ code: 'fault' }] });
  expect(faults).toEqual([new Error('a secret cause')]);
});
