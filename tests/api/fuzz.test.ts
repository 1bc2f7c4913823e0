import { expect, test } from 'vitest';
import { descriptionOf, knows, openObjects, type Schema } from '../fuzz/document.ts';
import { judgeOf } from '../fuzz/judge.ts';
import { fuzzed } from '../fuzz/run.ts';
import { ask, post, start } from './support.ts';

/** Some of the requests of `npm run fuzz`, by the same code; and that this code notices what is wrong. */

const REQUESTS = 2000;

test(`${REQUESTS} requests, good and bad, are answered as the description says`, async () => {
  const { found, operations } = await fuzzed(REQUESTS, Number(process.env.SEED ?? 7));
  const told = found.faults.map(
    ({ fault, sent, got }) => `${sent.method} ${sent.path} ${fault}\n${sent.body ?? ''}\n${got.text.slice(0, 500)}`,
  );
  expect(told).toEqual([]);
  expect(found.tallies.size).toBe(operations);
  // One that is refused whatever it asks proves nothing: most of what is meant well gets through.
  for (const [name, { kinds }] of found.tallies) {
    const { asked, through } = kinds.get('sound') ?? { asked: 0, through: 0 };
    if (asked >= 15) expect(through / asked, name).toBeGreaterThan(0.5);
  }
}, 180_000);

test('an answer that is not as described is noticed, whatever is wrong with it', async () => {
  const server = await start();
  const document = (await ask(`${server.address}/api/openapi.json`)).json as { components: { schemas: Record<string, Schema> } };
  const description = descriptionOf(document);
  expect(openObjects(description)).toEqual([expect.stringMatching(/^GET \/api\/openapi\.json 200/)]);
  const judge = judgeOf(description);
  const pairing = { objective: 'plan-10x-0-25-200', relay: 'close-up-5d-58', sensor: 'full-frame-45mp', infinitySpaceMm: 60 };
  const sent = { method: 'POST', path: '/api/pairings/report', headers: {}, body: Buffer.from(JSON.stringify(pairing)) };
  const faults = (status: number, type: string, value: unknown): string[] =>
    judge(sent, { status, headers: { 'content-type': type }, text: typeof value === 'string' ? value : JSON.stringify(value) });
  const good = (await post(server.address + sent.path, pairing)).json;
  const bad = (await post(server.address + sent.path, { ...pairing, infinitySpaceMm: -1 })).json;
  await server.stop();

  expect(faults(200, 'application/json', good)).toEqual([]);
  const { systemMagnification: m } = good.figures;
  for (const figure of [
    undefined,
    { ...m, value: null },
    { ...m, value: 'x' },
    { ...m, more: 1 },
    { ...m, unit: 'furlong' },
    { state: 'known' },
  ])
    expect(faults(200, 'application/json', { ...good, figures: { ...good.figures, systemMagnification: figure } })).not.toEqual([]);
  expect(faults(200, 'application/json', { ...good, more: 1 })).not.toEqual([]);
  expect(faults(200, 'application/json', JSON.stringify(good).replace(/"value":10,/, '"value":1e999,'))).toEqual([
    expect.stringContaining('Infinity'),
  ]);
  expect(faults(200, 'text/html', good)).toEqual([expect.stringContaining('not described')]);
  expect(faults(418, 'application/problem+json', { ...bad, status: 418 })).toEqual([expect.stringContaining('not described')]);

  const refused = (error: object, status = 422): string[] =>
    faults(status, 'application/problem+json', { ...bad, errors: [{ ...bad.errors[0], ...error }] });
  expect(refused({})).toEqual([]);
  expect(refused({ path: '/relay/fNumber' })).toEqual([]);
  for (const error of [
    { path: '/nowhere' },
    { path: 'relay' },
    { path: '/relay/from/x' },
    { given: '' },
    { expected: '' },
    { code: '' },
    { given: 'x'.repeat(81) },
    { message: 'must be undefined' },
  ])
    expect(refused(error), JSON.stringify(error)).toHaveLength(1);
  expect(refused({}, 500)).toEqual(['a fault of our own']);
  expect(faults(422, 'application/problem+json', { ...bad, errors: [] })).toHaveLength(1);
  expect(knows(description, document.components.schemas.Pairing as Schema, ['stops', '3', 'diameterMm', 'plusMinus'])).toBe(true);
  expect(knows(description, document.components.schemas.Pairing as Schema, ['stops', 'x'])).toBe(false);
});
