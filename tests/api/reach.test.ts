import type { NetworkInterfaceInfo } from 'node:os';
import { describe, expect, test } from 'vitest';
import { addressHere, openingWords } from '../../api/addresses.ts';
import { buildApp } from '../../api/app.ts';
import { ENTRANCE, newKey } from '../../api/key.ts';
import { isFromHere, isOpen, isOurs, namesIn, type Reach } from '../../api/reach.ts';
import { drawerIn, RELAY, tidyUp } from './drawer-support.ts';

/** From where the server is reached, under which names it answers, and who may write. */

tidyUp();

describe('ALLOWED_HOSTS', () => {
  test.each<[string, string[]]>([
    ['', []],
    ['  ', []],
    ['bench.local', ['bench.local']],
    [' Bench.Local , rig,bench.local', ['bench.local', 'rig']],
    ['192.168.1.7,[fe80::1],fe80::2', ['192.168.1.7', 'fe80::1', 'fe80::2']],
    ['mikroskopiertisch-größe.local', ['xn--mikroskopiertisch-gre-l2b6z.local']],
  ])('%j is %j', (text, names) => {
    const read = namesIn(text);
    if (text.includes('ö')) expect(read.names?.[0]).toMatch(/^xn--[a-z0-9-]+\.local$/);
    else expect(read.names).toEqual(names);
  });
  test.each([
    ['http://bench.local', '"http://bench.local", which is no name'],
    ['bench.local:8787', '"bench.local:8787", which is no name'],
    ['bench.local,', 'an empty name'],
    [',', 'an empty name'],
    ['*.local', '"*.local", which is no name'],
    ['*', '"*", which is no name'],
    ['bench local', '"bench local", which is no name'],
    ['a/b', '"a/b", which is no name'],
    ['me@bench', '"me@bench", which is no name'],
    ['-bench', '"-bench", which is no name'],
    ['bench..local', '"bench..local", which is no name'],
    ['b%65nch', '"b%65nch", which is no name'],
    ['x'.repeat(64), 'which is no name'],
    [`${'x'.repeat(60)}.`.repeat(5), 'which is no name'],
  ])('%s: a sentence says what is wrong', (text, why) => {
    const { names, fault } = namesIn(text);
    expect(names).toBeUndefined();
    expect(fault).toContain(why);
    expect(fault).toMatch(/: give names such as bench\.local, without http:\/\/ and without a port, commas between them\.$/);
  });
});

describe('the name that is asked for', () => {
  const reach = (host: string, ...names: string[]): Reach => ({ host, names });
  test.each<[string, Reach, string | undefined, boolean]>([
    ['bench.local:8787', reach('0.0.0.0', 'bench.local'), undefined, true],
    ['BENCH.local', reach('0.0.0.0', 'bench.local'), undefined, true],
    ['bench.local.evil.example', reach('0.0.0.0', 'bench.local'), undefined, false],
    ['x.bench.local', reach('0.0.0.0', 'bench.local'), undefined, false],
    ['evil.example', reach('0.0.0.0', 'bench.local'), '192.168.1.7', false],
    ['bench.local', reach('127.0.0.1'), undefined, false],
    ['bench.local', reach('127.0.0.1', 'bench.local'), undefined, true],
    ['192.168.1.7', reach('bench.local'), '::ffff:192.168.1.7', true],
    ['192.168.1.8', reach('bench.local'), '192.168.1.7', false],
    ['[fd00::7]:8787', reach('fd00::7'), undefined, true],
    ['203.0.113.9', reach('0.0.0.0'), '192.168.1.7', true],
    ['203.0.113.9', reach('192.168.1.7', 'bench.local'), '192.168.1.7', false],
    ['192.168.1.7.nip.example', reach('0.0.0.0'), '192.168.1.7', false],
    ['0x7f.1', reach('0.0.0.0'), undefined, false],
    ['', reach('0.0.0.0'), undefined, false],
  ])('%s of a server at %o', (host, of, cameInAt, ours) => expect(isOurs(host, of, cameInAt)).toBe(ours));
});

test('from here comes what comes over loopback, to a name of loopback, from no one who hands it on', () => {
  const from = (remoteAddress: string | undefined, headers: Record<string, string>) =>
    isFromHere({ remoteAddress }, (name) => headers[name]);
  for (const address of ['127.0.0.1', '127.8.9.1', '::1', '::ffff:127.0.0.1']) expect(from(address, { host: 'localhost:8787' })).toBe(true);
  for (const address of ['192.168.1.9', '::ffff:192.168.1.9', 'fe80::1', '128.0.0.1', '1270.0.0.1', '::ffff:10.0.0.127', '', undefined])
    expect(from(address, { host: 'localhost' })).toBe(false);
  expect(isFromHere(undefined, () => 'localhost')).toBe(true);
  expect(from('127.0.0.1', { host: 'bench.local' })).toBe(false);
  expect(from('127.0.0.1', {})).toBe(false);
  for (const header of ['forwarded', 'x-forwarded-for', 'x-real-ip', 'via'])
    expect(from('127.0.0.1', { host: 'localhost', [header]: 'x' })).toBe(false);
});

/** One who asks from elsewhere, of a server that is open. */
function open(key: string | undefined = newKey()) {
  const { drawer, ask: atHome } = drawerIn();
  const app = buildApp({ host: '0.0.0.0', names: ['bench.local'], page: new Map(), drawer, ...(key ? { key } : {}) });
  const asking =
    (from: string) =>
    (method: string, path: string, body?: unknown, headers: Record<string, string> = {}): Promise<Response> => {
      const host = headers.host ?? 'bench.local:8787';
      const sent = body === undefined ? {} : { body: JSON.stringify(body) };
      const all = { host, ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers };
      const incoming = { socket: { remoteAddress: from, localAddress: '192.168.1.7' } };
      return Promise.resolve(app.request(`http://${host}${path}`, { method, headers: all, ...sent }, { incoming }));
    };
  return { key, app, atHome, phone: asking('192.168.1.9'), here: asking('127.0.0.1') };
}

describe('from another device', () => {
  const pairing = { objective: 'plan-10x-0-25-200', relay: 'close-up-5d-58', sensor: 'full-frame-45mp', infinitySpaceMm: 60 };

  test('all that reads and works out is answered', async () => {
    const { phone, atHome } = open();
    await atHome('POST', '/api/parts', { body: RELAY });
    for (const path of ['/api/health', '/api/parts', '/api/parts/drawer.json', '/api/parts/drawer.csv', '/api/openapi.json'])
      expect((await phone('GET', path)).status, path).toBe(200);
    expect((await phone('POST', '/api/pairings/report', pairing)).status).toBe(200);
    expect((await phone('POST', '/api/pairings/report', pairing, { host: '192.168.1.7:8787' })).status).toBe(200);
    expect((await phone('GET', '/api/health', undefined, { host: 'evil.example' })).status).toBe(403);
  });

  test('each operation that is described as writing is refused without the key, and no other is', async () => {
    const { phone } = open();
    const { paths } = (await (await phone('GET', '/api/openapi.json')).json()) as {
      paths: Record<string, Record<string, { responses: object }>>;
    };
    const writing: string[] = [];
    for (const [path, item] of Object.entries(paths))
      for (const [method, { responses }] of Object.entries(item)) {
        const answer = await phone(method.toUpperCase(), path.replace('{id}', 'my-5-d'), method === 'get' ? undefined : {});
        expect(answer.status === 401, `${method} ${path}`).toBe('507' in responses);
        expect('401' in responses, `${method} ${path}`).toBe('507' in responses);
        if ('507' in responses) writing.push(`${method} ${path}`);
      }
    expect(writing.sort()).toEqual(['delete /api/parts/{id}', 'post /api/parts', 'post /api/parts/drawer', 'put /api/parts/{id}']);
  });

  test('a write is refused in words that say what would do, whatever is brought in place of the key', async () => {
    const { key = '', phone, atHome } = open();
    const others = ['', `${key}x`, key.slice(1), key.toUpperCase(), newKey(), 'undefined'];
    const brought = [
      {},
      { host: 'localhost:8787' },
      { host: '127.0.0.1' },
      { 'x-forwarded-for': '127.0.0.1' },
      ...others.map((other) => ({ authorization: `Bearer ${other}` })),
      ...others.map((other) => ({ cookie: `pupilwalk-key=${other}` })),
      { authorization: `Basic ${key}` },
      { cookie: `another=${key}` },
    ];
    for (const headers of brought) {
      const answer = await phone('POST', '/api/parts', RELAY, headers as never);
      expect(answer.status, JSON.stringify(headers)).toBe(401);
      expect(answer.headers.get('www-authenticate')).toBe('Bearer');
      expect(answer.headers.get('content-type')).toBe('application/problem+json');
      const told = (await answer.json()) as { errors: object[] };
      expect(told.errors).toEqual([
        {
          path: '',
          code: 'readOnly',
          message: 'comes from a device that may only read the drawer',
          given: 'no key, or another one',
          expected: 'Authorization: Bearer with the key that the server printed when it last started',
        },
      ]);
      expect(JSON.stringify(told)).not.toContain(key);
    }
    const page = await phone('POST', '/api/parts', RELAY, { origin: 'http://bench.local:8787' });
    expect(((await page.json()) as { errors: { expected: string }[] }).errors[0]?.expected).toBe(
      'opening the address with a key, which the server printed when it last started, once in this browser',
    );
    expect((await atHome('GET', '/api/parts')).json.drawer.parts).toBe(0);
  });

  test('with the key it writes, by header and by cookie, and even then no foreign page does', async () => {
    const { key = '', phone, atHome } = open();
    const bearer = { authorization: `Bearer ${key}` };
    const cookie = { cookie: `other=1; pupilwalk-key=${key}` };
    const made = await phone('POST', '/api/parts', RELAY, bearer);
    expect(made.status).toBe(201);
    const { id } = (await made.json()) as { id: string };
    const changed = await phone('PUT', `/api/parts/${id}`, { ...RELAY, price: 1 }, { ...cookie, 'if-match': '"1"' });
    expect(changed.status).toBe(200);
    for (const foreign of [{ origin: 'http://evil.example' }, { origin: 'http://bench.local:8788' }, { 'sec-fetch-site': 'same-site' }])
      expect((await phone('DELETE', `/api/parts/${id}`, undefined, { ...cookie, ...foreign, 'if-match': '"2"' } as never)).status).toBe(
        403,
      );
    const own = { origin: 'http://bench.local:8787', 'sec-fetch-site': 'same-origin' };
    expect((await phone('DELETE', `/api/parts/${id}`, undefined, { ...cookie, ...own, 'if-match': '"2"' })).status).toBe(204);
    expect((await atHome('GET', '/api/parts')).json.drawer.parts).toBe(0);
  });

  test('this machine writes without it, unless what hands requests on stands between', async () => {
    const { here } = open();
    expect((await here('POST', '/api/parts', RELAY, { host: 'localhost:8787' })).status).toBe(201);
    expect((await here('POST', '/api/parts', RELAY, { host: 'bench.local' })).status).toBe(401);
    expect((await here('POST', '/api/parts', RELAY, { host: 'localhost', 'x-forwarded-for': '192.168.1.9' })).status).toBe(401);
  });

  test('without any key nobody from elsewhere writes, and no address gives one', async () => {
    const { drawer } = drawerIn();
    const app = buildApp({ host: '0.0.0.0', page: new Map(), drawer });
    const env = { incoming: { socket: { remoteAddress: '192.168.1.9', localAddress: '192.168.1.7' } } };
    for (const brought of ['', 'undefined', 'null']) {
      const headers = { host: '192.168.1.7', authorization: `Bearer ${brought}`, 'content-type': 'application/json' };
      expect(
        (await app.request('http://192.168.1.7/api/parts', { method: 'POST', headers, body: JSON.stringify(RELAY) }, env)).status,
      ).toBe(401);
      expect((await app.request(`http://192.168.1.7/open?key=${brought}`, { headers: { host: '192.168.1.7' } }, env)).status).toBe(401);
    }
  });
});

describe('the address with the key', () => {
  test('gives a browser the key and sends it on to the page without it', async () => {
    const { key, phone } = open();
    const answer = await phone('GET', `${ENTRANCE}?key=${key}`);
    expect([answer.status, answer.headers.get('location'), await answer.text()]).toEqual([303, '/', '']);
    expect(answer.headers.get('set-cookie')).toBe(`pupilwalk-key=${key}; Path=/api/parts; HttpOnly; SameSite=Strict`);
    expect(answer.headers.get('cache-control')).toBe('no-store');
    expect(answer.headers.get('referrer-policy')).toBe('no-referrer');
  });
  test.each(['', '?key=', '?key=1', '?key', '?KEY=1', `?key=${newKey()}`])(
    'with %s it is refused, and nothing of the key is said',
    async (query) => {
      const { key = '', phone } = open();
      const answer = await phone('GET', ENTRANCE + query);
      expect([answer.status, answer.headers.get('set-cookie')]).toEqual([401, null]);
      const text = await answer.text();
      expect(JSON.parse(text).errors[0].code).toBe('wrongKey');
      expect(text).not.toContain(key);
    },
  );
  test('a key is 128 bits, another each time', () => {
    const keys = Array.from({ length: 50 }, newKey);
    expect(new Set(keys).size).toBe(50);
    for (const key of keys) expect(Buffer.from(key, 'base64url')).toHaveLength(16);
  });
});

describe('what is said at the start', () => {
  const net = (address: string, family: 'IPv4' | 'IPv6' = 'IPv4', internal = false) =>
    ({ address, family, internal }) as NetworkInterfaceInfo;
  const interfaces = { lo: [net('127.0.0.1', 'IPv4', true)], wifi: [net('192.168.1.7'), net('fe80::5', 'IPv6'), net('fd00::7', 'IPv6')] };
  const said = (host: string, names: string[], bound = host, list: NodeJS.Dict<NetworkInterfaceInfo[]> = interfaces) =>
    openingWords({ host, names }, bound, 8787, list, 'THE-KEY');

  test('nothing where it is not open', () => {
    for (const host of ['127.0.0.1', '::1', 'localhost', '127.0.0.2']) {
      expect(isOpen({ host, names: [] })).toBe(false);
      expect(said(host, [])).toEqual([]);
    }
    expect(addressHere({ host: '127.0.0.1', names: [] }, '127.0.0.1', 1)).toBe('http://127.0.0.1:1');
  });
  test('open everywhere, without and with a name', () => {
    expect(said('0.0.0.0', [])).toEqual([
      'Other devices may read it at http://192.168.1.7:8787.',
      'It answers to any address in digits, and to no name but localhost: ALLOWED_HOSTS=bench.local would add that one.',
      'A device that shall write as well opens this once: http://192.168.1.7:8787/open?key=THE-KEY',
      'Whoever has this key can change the drawer, and in the network it can be read on its way. The next start makes another.',
    ]);
    expect(said('0.0.0.0', ['bench.local'])[0]).toBe('Other devices may read it at http://192.168.1.7:8787 and http://bench.local:8787.');
    expect(said('::', [])[0]).toBe('Other devices may read it at http://192.168.1.7:8787 and http://[fd00::7]:8787.');
    expect(said('0.0.0.0', [], '0.0.0.0', { lo: interfaces.lo })[0]).toMatch(/^No other device reaches it now/);
    expect(addressHere({ host: '0.0.0.0', names: [] }, '0.0.0.0', 1)).toBe('http://127.0.0.1:1');
    expect(addressHere({ host: '::', names: [] }, '::', 1)).toBe('http://[::1]:1');
  });
  test('open at one address, by a name of it, or by names alone', () => {
    expect(said('192.168.1.7', [])[0]).toBe('Other devices may read it at http://192.168.1.7:8787.');
    expect(said('bench.local', [], '192.168.1.7')[0]).toBe('Other devices may read it at http://192.168.1.7:8787.');
    expect(said('127.0.0.1', ['bench.local']).slice(0, 2)).toEqual([
      'Other devices may read it at http://bench.local:8787.',
      'It listens on this machine alone, and answers to those names only through what hands requests on here: HOST=0.0.0.0 opens it.',
    ]);
  });
});
