import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Running } from '../../api/server.ts';
import { ask, expectProblem, post, start } from './support.ts';

/** Names that every object has must mean nothing where a name is sent. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const at = (path: string): string => server.address + path;
const good = { objective: 'plan-10x-0-25-200', relay: 'close-up-5d-58', sensor: 'full-frame-45mp', infinitySpaceMm: 60 };

describe('names that every object has', () => {
  const names = ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty'];
  const evil = '{"polluted":true,"prototype":{"polluted":true}}';
  const unpolluted = (): void => {
    for (const one of [{}, [], () => {}, 'x', 1]) expect((one as { polluted?: unknown }).polluted).toBeUndefined();
    expect(Object.keys(Object.prototype)).toEqual([]);
  };
  test.each(names)('%s in a body is a name that means nothing, wherever it stands', async (name) => {
    const text = JSON.stringify({ ...good, relay: { from: good.relay }, sensor: { from: good.sensor }, subject: {} });
    for (const [path, wrap] of [
      ['/api/pairings/report', (body: string) => body],
      ['/api/pairings/sweep', (body: string) => `{"pairing":${body},"vary":"/infinitySpaceMm","from":50,"to":60,"steps":2}`],
      ['/api/pairings/compare', (body: string) => `{"pairings":[${body},${body}]}`],
      ['/api/stillness', (body: string) => `{"pairing":${body}}`],
    ] as const)
      for (const place of ['{', '"relay":{', '"subject":{']) {
        const body = wrap(text.replace(place, `${place}"${name}":${evil}${place === '"subject":{' ? '' : ','}`));
        const { errors } = expectProblem(await post(at(path), body), 422);
        expect(errors[0], body).toMatchObject({ code: 'unknownName', message: expect.stringContaining(`"${name}"`) });
        unpolluted();
      }
  });
  test.each(names)('%s is no part, no way to vary, no id, no column and no query', async (name) => {
    for (const part of [
      { ...good, relay: name },
      { ...good, relay: { from: name } },
    ])
      expect(expectProblem(await post(at('/api/pairings/report'), part), 422).errors[0]?.code).toBe('unknownPart');
    for (const vary of [`/${name}`, `/relay/${name}`, `/objective/${name}/${name}`])
      expect(
        expectProblem(await post(at('/api/pairings/sweep'), { pairing: good, vary, from: 1, to: 2, steps: 2 }), 422).errors[0],
      ).toMatchObject({ path: '/vary', code: 'notANumber' });
    const put = { method: 'PUT', headers: { 'content-type': 'application/json', 'if-match': '"1"' } };
    const own = { kind: 'sensor', owned: true, part: { name: 'x', widthMm: 36, heightMm: 24, columns: 6000, rows: 4000 } };
    expectProblem(await ask(at(`/api/parts/${name}`), { ...put, body: JSON.stringify(own) }), 404);
    expectProblem(await post(at('/api/parts'), JSON.stringify({ id: 'ID', ...own }).replace('"ID"', `"${name.toUpperCase()}"`)), 422);
    expectProblem(await post(at('/api/parts/drawer'), `kind,owned,name,${name}\nsensor,yes,x,1`, { 'content-type': 'text/csv' }), 422);
    expect((await ask(at(`/api/health?${name}[polluted]=1&${name}.polluted=1`))).status).toBe(200);
    unpolluted();
  });
});
