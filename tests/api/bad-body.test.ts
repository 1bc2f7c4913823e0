import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Running } from '../../api/server.ts';
import { good, objective } from './spoiled.ts';
import { ask, expectProblem, post, start } from './support.ts';

/** Bodies that are no JSON, too long, too deep or of the wrong kind, sent over real HTTP. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const route = (name: string): string => `${server.address}/api/pairings/${name}`;

describe('what is no JSON body', () => {
  const ROUTES = ['report', 'sweep', 'compare'];
  test.each(ROUTES)('3 MB to %s', async (name) => {
    const { errors } = expectProblem(await post(route(name), { ...good, name: 'x'.repeat(3_000_000) }), 413);
    expect(errors).toEqual([
      {
        path: '',
        code: 'tooLarge',
        message: 'is too large',
        given: expect.stringMatching(/^30\d{5} bytes$/),
        expected: 'at most 262144 bytes',
      },
    ]);
  });
  test('256 kB are read, one byte more is not', async () => {
    const padded = (length: number): string => JSON.stringify(good).padEnd(length);
    expect((await post(route('report'), padded(262_144))).status).toBe(200);
    expectProblem(await post(route('report'), padded(262_145)), 413);
  });
  test.each([
    ['malformed', '{"objective":'],
    ['cut short', JSON.stringify(good).slice(0, -1)],
    ['empty', ''],
    ['NaN', JSON.stringify(good).replace('60', 'NaN')],
    ['Infinity', JSON.stringify(good).replace('60', '-Infinity')],
    ['a comment', `// a pairing\n${JSON.stringify(good)}`],
    ['a trailing comma', JSON.stringify(good).replace(/}$/, ',}')],
    ['two values', `${JSON.stringify(good)}{}`],
    ['a form', 'objective=10x'],
  ])('%s', async (_, body) => {
    for (const name of ROUTES) {
      const { errors } = expectProblem(await post(route(name), body), 400);
      expect(errors[0]).toMatchObject({ path: '', code: 'notJson', expected: expect.stringMatching(/JSON/) });
      expect((body || 'nothing').startsWith((errors[0]?.given ?? '').replace(/…$/, ''))).toBe(true);
    }
  });
  test('bytes that are no text', async () => {
    const answer = await ask(route('report'), {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: new Uint8Array([0x22, 0xff, 0xfe, 0x22]),
    });
    expect(expectProblem(answer, 400).errors[0]?.expected).toBe('JSON in UTF-8');
  });
  test.each([
    'text/plain',
    'application/x-www-form-urlencoded',
    'multipart/form-data; boundary=x',
    'application/jsonp',
    'application/json; charset=utf-16',
    'json',
  ])('content type %s', async (type) => {
    for (const name of ROUTES) {
      const { errors } = expectProblem(await post(route(name), good, { 'content-type': type }), 415);
      expect(errors).toEqual([
        {
          path: '',
          code: 'wrongContentType',
          message: 'has the wrong content type',
          given: type,
          expected: 'Content-Type: application/json',
        },
      ]);
    }
  });
  test('no content type', async () => {
    const answer = await ask(route('report'), { method: 'POST', body: new Uint8Array(Buffer.from(JSON.stringify(good))) });
    expect(expectProblem(answer, 415).errors[0]?.given).toBe('no Content-Type');
  });
  test('a packed body', async () => {
    expect(expectProblem(await post(route('report'), good, { 'content-encoding': 'gzip' }), 415).errors[0]?.given).toBe('gzip');
  });
  test.each(['application/json', 'Application/JSON; charset=UTF-8', 'application/json;charset="utf-8"'])('%s is read', async (type) => {
    expect((await post(route('report'), good, { 'content-type': type })).status).toBe(200);
  });
});

describe('deep nesting', () => {
  const deep = (open: string, close: string, levels: number): string => open.repeat(levels) + close.repeat(levels);
  test.each([
    ['100,000 lists', deep('[', ']', 100_000)],
    ['40,000 objects', `${'{"a":'.repeat(40_000)}1${'}'.repeat(40_000)}`],
    ['100,000 lists in a field', JSON.stringify(good).replace('60', deep('[', ']', 100_000))],
    ['100,000 lists that never end', '['.repeat(100_000)],
    ['33 lists', deep('[', ']', 33)],
  ])('%s', async (_, body) => {
    for (const name of ['report', 'sweep', 'compare']) {
      const { errors } = expectProblem(await post(route(name), body), 422);
      expect(errors[0]).toMatchObject({ code: 'tooDeep', given: expect.stringMatching(/^\d+ levels$/), expected: 'at most 32 levels' });
    }
  });
  test('brackets in text do not count', async () => {
    expect((await post(route('report'), objective({ name: `${'['.repeat(60)}\\"{{{{` }))).status).toBe(200);
  });
});
