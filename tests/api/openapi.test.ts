import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { buildApp } from '../../api/app.ts';
import type { Running } from '../../api/server.ts';
import { LIMIT_NAMES } from '../../core/choosing.ts';
import { FIGURE_IDS } from '../../core/index.ts';
import { descriptionOf } from '../fuzz/document.ts';
import { judgeOf } from '../fuzz/judge.ts';
import { drawerIn, OBJECTIVE, RELAY, SENSOR, tidyUp } from './drawer-support.ts';
import { ask, start } from './support.ts';

/** The description of the API, held to the OpenAPI 3.1 specification's structure and to the routes that are there. */

tidyUp();

let server: Running;
// biome-ignore lint/suspicious/noExplicitAny: a JSON document, walked freely
let document: any;
beforeAll(async () => {
  server = await start();
  document = (await ask(`${server.address}/api/openapi.json`)).json;
});
afterAll(() => server.stop());

/** What may come in lines as well. */
const SEARCHES = /^\/api\/choices(\/one-more)?$/;
const METHODS = ['get', 'put', 'post', 'delete', 'options', 'head', 'patch', 'trace'];
/** JSON Schema 2020-12 and its types; 3.1 dropped `nullable` and the boolean exclusive bounds of 3.0. */
const TYPES = ['null', 'boolean', 'object', 'array', 'number', 'string', 'integer'];
const SCHEMA_WORDS = new Set(
  `$ref type properties required additionalProperties items prefixItems minItems maxItems minLength maxLength minimum maximum
   exclusiveMinimum exclusiveMaximum enum const anyOf oneOf allOf discriminator description example pattern`.split(/\s+/),
);

function checkSchema(schema: Record<string, unknown>, where: string): void {
  expect(typeof schema, where).toBe('object');
  for (const [word, value] of Object.entries(schema)) {
    const at = `${where}/${word}`;
    expect(SCHEMA_WORDS.has(word), at).toBe(true);
    if (word === '$ref') {
      expect(value, at).toMatch(/^#\/components\/schemas\/\w+$/);
      expect(document.components.schemas[String(value).split('/')[3] as string], at).toBeDefined();
    }
    if (word === 'type') for (const type of [value].flat()) expect(TYPES, at).toContain(type);
    if (word === 'properties') for (const [name, inner] of Object.entries(value as object)) checkSchema(inner, `${at}/${name}`);
    if (word === 'items' || (word === 'additionalProperties' && typeof value === 'object')) checkSchema(value as never, at);
    if (['anyOf', 'oneOf', 'allOf', 'prefixItems'].includes(word))
      for (const [i, inner] of (value as never[]).entries()) checkSchema(inner, `${at}/${i}`);
    if (word === 'required')
      for (const name of value as string[]) expect(Object.keys(schema.properties as object), `${at} ${name}`).toContain(name);
    if (/^(min|max|exclusive)/.test(word)) expect(typeof value, at).toBe('number');
  }
}

describe('openapi.json', () => {
  test('is OpenAPI 3.1 in structure, every schema and reference sound', () => {
    expect(document.openapi).toMatch(/^3\.1\.\d+$/);
    expect(document.info).toMatchObject({ title: expect.any(String), version: expect.any(String) });
    let operations = 0;
    for (const [path, item] of Object.entries<Record<string, never>>(document.paths)) {
      expect(path).toMatch(/^\//);
      for (const [method, operation] of Object.entries<{ responses: object; requestBody?: { content: object } }>(item)) {
        operations++;
        expect(METHODS).toContain(method);
        expect(Object.keys(operation.responses).length).toBeGreaterThan(0);
        for (const [status, response] of Object.entries<{ description: string; content: object }>(operation.responses as never)) {
          expect(status).toMatch(/^[1-5]\d\d$/);
          expect(response.description.length).toBeGreaterThan(0);
          expect(response.content === undefined).toBe(status === '204');
          for (const [type, media] of Object.entries<{ schema: never }>((response.content ?? {}) as never)) {
            const good = path.endsWith('.csv')
              ? ['text/csv']
              : ['application/json', ...(SEARCHES.test(path) ? ['application/x-ndjson'] : [])];
            expect(status.startsWith('2') ? good : ['application/problem+json']).toContain(type);
            checkSchema(media.schema, `${method} ${path} ${status}`);
          }
        }
        const bodies = path === '/api/parts/drawer' ? ['application/json', 'text/csv'] : ['application/json'];
        if (method === 'post' || method === 'put') expect(Object.keys(operation.requestBody?.content ?? {})).toEqual(bodies);
        for (const media of Object.values<{ schema: never }>((operation.requestBody?.content ?? {}) as never))
          checkSchema(media.schema, `${method} ${path} body`);
      }
    }
    expect(operations).toBe(27);
    for (const [name, schema] of Object.entries<never>(document.components.schemas)) checkSchema(schema, name);
  });

  test('lists every route that is there, and no other', () => {
    const served = buildApp({ page: new Map() }).routes.filter((r) => r.method !== 'ALL');
    const there = new Set(served.map((r) => `${r.method.toLowerCase()} ${r.path.replace(/:(\w+)/, '{$1}')}`));
    const told = new Set(Object.entries<object>(document.paths).flatMap(([path, item]) => Object.keys(item).map((m) => `${m} ${path}`)));
    expect([...told].sort()).toEqual([...there].sort());
    expect([...told].sort()).toEqual([
      'delete /api/parts/{id}',
      'get /api/checks',
      'get /api/figures',
      'get /api/glasses',
      'get /api/health',
      'get /api/openapi.json',
      'get /api/parts',
      'get /api/parts/drawer.csv',
      'get /api/parts/drawer.json',
      'post /api/builds',
      'post /api/choices',
      'post /api/choices/one-more',
      'post /api/choices/window',
      'post /api/close-ups',
      'post /api/infinity',
      'post /api/lighting',
      'post /api/pairings/compare',
      'post /api/pairings/report',
      'post /api/pairings/sweep',
      'post /api/parts',
      'post /api/parts/drawer',
      'post /api/relays/class',
      'post /api/relays/trace',
      'post /api/sightings',
      'post /api/stacks',
      'post /api/stillness',
      'put /api/parts/{id}',
    ]);
  });

  test('what the reading routes list fits its own description, own parts among it', async () => {
    const { ask: asked, add } = drawerIn();
    for (const own of [RELAY, SENSOR, OBJECTIVE]) expect((await add(own)).status).toBe(201);
    const judge = judgeOf(descriptionOf(document));
    for (const path of Object.keys(document.paths).filter((path) => document.paths[path].get)) {
      const { status, headers, text } = await asked('GET', path);
      const got = { status, headers: Object.fromEntries(headers), text };
      expect(judge({ method: 'GET', path, headers: {} }, got), path).toEqual([]);
    }
  });

  test('the counts of what stops a search are closed too', () => {
    const { stopped } = document.components.schemas.Choices.properties;
    expect(stopped.additionalProperties).toBe(false);
    expect(Object.keys(stopped.properties)).toEqual([...LIMIT_NAMES, 'price']);
    expect(stopped.required).toBeUndefined();
  });

  test('it is made once, however often it is asked for', async () => {
    const app = buildApp({ page: new Map() });
    const making = vi.spyOn(app, 'getOpenAPI31Document');
    const texts = await Promise.all(
      [1, 2, 3].map(async () => (await app.request('http://localhost/api/openapi.json', { headers: { host: 'localhost' } })).text()),
    );
    expect(new Set(texts).size).toBe(1);
    expect(making).toHaveBeenCalledTimes(1);
  });

  test('a figure stands in the answer exactly as in the registry', () => {
    const { Figures } = document.components.schemas;
    expect(Object.keys(Figures.properties)).toEqual(FIGURE_IDS);
    expect(Figures.required).toEqual(FIGURE_IDS);
    expect(Figures.additionalProperties).toBe(false);
  });

  test('a part of a request may stand in three ways', () => {
    const { Pairing, RelayFrom, Relay } = document.components.schemas;
    expect(Pairing.properties.relay.anyOf).toEqual([
      { $ref: '#/components/schemas/PartId' },
      { $ref: '#/components/schemas/RelayFrom' },
      { $ref: '#/components/schemas/Relay' },
    ]);
    expect(RelayFrom.required).toEqual(['from']);
    expect(Object.keys(RelayFrom.properties).sort()).toEqual([...Object.keys(Relay.properties), 'from'].sort());
    expect(Relay.required).toEqual(['kind']);
    expect(Pairing.required).toEqual(['objective', 'relay', 'sensor', 'infinitySpaceMm']);
  });

  test('bounds stand in the description as in core', () => {
    const [bare, story] = document.components.schemas.Objective.properties.na.anyOf;
    expect(bare).toMatchObject({ type: 'number', minimum: 0.001, maximum: 1.7 });
    expect(story.properties.value).toEqual(bare);
    expect(document.components.schemas.SweepRequest.properties.steps).toMatchObject({ minimum: 2, maximum: 400 });
    expect(document.components.schemas.CompareRequest.properties.pairings).toMatchObject({ minItems: 2, maxItems: 12 });
    expect(document.components.schemas.Pairing.properties.stops).toMatchObject({ maxItems: 8 });
    const { wavelengthsNm, slopes, relay } = document.components.schemas.TraceRequest.properties;
    expect([wavelengthsNm, slopes]).toMatchObject([{ maxItems: 12 }, { maxItems: 16 }]);
    expect(relay.anyOf).toEqual(document.components.schemas.Pairing.properties.relay.anyOf);
  });
});
