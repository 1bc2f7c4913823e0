import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { stockOf } from '../../api/catalogue.ts';
import { openDrawer } from '../../api/drawer/drawer.ts';
import { partsSchema, storedPartSchema } from '../../api/schemas/parts.ts';
import { drawerIn, newFolder, OBJECTIVE, RELAY, SENSOR, tidyUp } from './drawer-support.ts';
import { expectProblem } from './support.ts';

/** Parts of one's own over the API: put in, changed, taken out, used, and every way in which that is refused. */

tidyUp();

describe("a part of one's own", () => {
  test('goes in, is listed first, is changed and goes out; the file says so each time', async () => {
    const { add, put, remove, parts, file } = drawerIn();
    const before = partsSchema.parse(await parts());
    expect(before.drawer).toEqual({ state: 'open', revision: 0, parts: 0, file });

    const added = await add(RELAY);
    expect([added.status, added.headers.get('etag'), added.headers.get('location')]).toEqual([201, '"1"', '/api/parts/my-5-d']);
    expect(storedPartSchema.parse(added.json)).toEqual({ id: 'my-5-d', version: 1, ...RELAY });
    const listed = partsSchema.parse(await parts());
    expect(listed.drawer).toEqual({ state: 'open', revision: 1, parts: 1, file });
    expect(listed.relays[0]).toEqual({
      id: 'my-5-d',
      provenance: 'own',
      own: { owned: true, price: 120, notes: 'from the fair', version: 1 },
      ...RELAY.part,
    });
    expect(listed.relays.slice(1)).toEqual(before.relays);
    expect(listed.relays.filter((relay) => relay.own)).toHaveLength(1);
    expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual({
      pupilwalkDrawer: 1,
      revision: 1,
      parts: [{ id: 'my-5-d', version: 1, ...RELAY }],
    });
    expect(readFileSync(file, 'utf8')).toContain('\n      "id": "my-5-d",\n');

    const { price: _, ...cheaper } = RELAY;
    const changed = await put('my-5-d', cheaper, '"1"');
    expect([changed.status, changed.headers.get('etag')]).toEqual([200, '"2"']);
    expect(changed.json).toEqual({ id: 'my-5-d', version: 2, ...cheaper });
    expect((await parts()).relays[0].own).toEqual({ owned: true, notes: 'from the fair', version: 2 });

    const removed = await remove('my-5-d', '"2"');
    expect([removed.status, removed.text]).toEqual([204, '']);
    expect((await parts()).relays).toEqual(before.relays);
    expect((await parts()).drawer).toMatchObject({ revision: 3, parts: 0 });
  });

  test('stands for itself in every question that takes an id, as it is at that moment', async () => {
    const { add, put, ask } = drawerIn();
    await add({ ...RELAY, id: 'mine' });
    await add({ ...OBJECTIVE, id: 'ten' });
    await add({ ...SENSOR, id: 'cam' });
    const pairing = { objective: 'ten', relay: 'mine', sensor: 'cam', infinitySpaceMm: 60 };
    const asked = (path: string, body: unknown) => ask('POST', path, { body });
    const focal = async () => (await asked('/api/pairings/report', pairing)).json.figures.relayFocalLengthMm;
    expect(await focal()).toMatchObject({ value: 203.5, low: 203.1, high: 203.9, origin: 'measured' });
    const varied = await asked('/api/pairings/sweep', { pairing, vary: '/infinitySpaceMm', from: 50, to: 60, steps: 2 });
    expect(varied.status).toBe(200);
    const other = { ...pairing, relay: { from: 'mine', focalLengthMm: 180 } };
    const abreast = await asked('/api/pairings/compare', { pairings: [pairing, other] });
    expect(
      abreast.json.reports.map((r: { figures: { relayFocalLengthMm: { value: number } } }) => r.figures.relayFocalLengthMm.value),
    ).toEqual([203.5, 180]);
    await put('mine', { ...RELAY, part: { ...RELAY.part, focalLengthMm: 150 } }, '"1"');
    expect(await focal()).toMatchObject({ value: 150 });

    const glass = { radiiMm: [122, -89, -260], thicknessesMm: [9, 3], glasses: [1.5168, 1.6727] };
    await add({ kind: 'relay', owned: true, id: 'glassy', part: { name: 'With glass', kind: 'supplementary', glass } });
    const trace = { pupilDiameterMm: 10, pupilDistanceMm: 20, slopes: [0.05], wavelengthsNm: [550], focus: 'each-best' };
    const traced = await asked('/api/relays/trace', { relay: 'glassy', ...trace });
    const direct = await asked('/api/relays/trace', { relay: { kind: 'supplementary', glass }, ...trace });
    expect([traced.status, traced.text]).toEqual([200, direct.text]);
  });

  test('gets an id from its name that nothing else has or had', async () => {
    const { add, remove } = drawerIn();
    const named = async (name: string, kind = SENSOR) => (await add({ ...kind, part: { ...kind.part, name } })).json.id;
    expect(await named('Épreuve №1, 58 mm')).toBe('epreuve-no1-58-mm');
    expect(await named('Épreuve №1, 58 mm')).toBe('epreuve-no1-58-mm-2');
    expect(await named('鏡')).toBe('sensor');
    expect(await named('plan 10x 0.25 200')).toBe('plan-10x-0-25-200-2');
    expect(await named('x'.repeat(120))).toBe('x'.repeat(60));
    expect(await named('x'.repeat(120))).toBe(`${'x'.repeat(58)}-2`);
    await remove('sensor', '"1"');
    expect(await named('顕微鏡')).toBe('sensor-2');
  });

  test('put back after it was taken out goes on counting, so that an old version never fits a new part', async () => {
    const { add, put, remove, folder } = drawerIn();
    await add({ ...SENSOR, id: 'cam' });
    await remove('cam', '"1"');
    const back = await drawerIn(folder).add({ ...SENSOR, id: 'cam', notes: 'another' });
    expect([back.status, back.json.version]).toEqual([201, 2]);
    expectProblem(await put('cam', SENSOR, '"1"'), 412);
    expect((await put('cam', SENSOR, '"2"')).json.version).toBe(3);
  });

  test('a search may ask for all parts of a kind, and knows which are owned and what they cost', async () => {
    const { drawer, add } = drawerIn();
    const stock = stockOf(drawer);
    const count = stock.partsOf('relay').length;
    expect(stock.partsOf('relay').every(({ own, owned, price }) => !own && !owned && price === undefined)).toBe(true);
    const shelf = stock.shelf();
    expect(stock.shelf()).toBe(shelf);
    await add(RELAY);
    expect(stock.shelf()).not.toBe(shelf);
    expect(stock.partsOf('relay')).toHaveLength(count + 1);
    expect(stock.partsOf('relay')[0]).toEqual({ kind: 'relay', id: 'my-5-d', part: RELAY.part, owned: true, price: 120, own: true });
    expect(stock.partsOf('sensor').some(({ own }) => own)).toBe(false);
  });
});

describe('two tabs', () => {
  test('never write over each other: the second is told, with the version that is there', async () => {
    const { add, put, remove, parts } = drawerIn();
    await add({ ...RELAY, id: 'mine' });
    expect((await put('mine', { ...RELAY, price: 1 }, '"1"')).status).toBe(200);
    for (const answer of [await put('mine', { ...RELAY, price: 2 }, '"1"'), await remove('mine', '"1"')]) {
      expect(expectProblem(answer, 412).errors).toEqual([
        { path: '', code: 'versionPassed', message: expect.stringMatching(/read the part anew/), given: '"1"', expected: '"2"' },
      ]);
      expect(answer.headers.get('etag')).toBe('"2"');
    }
    expect((await parts()).relays[0].own.price).toBe(1);
  });
  test('at the same moment: of twenty changes of one version one is done', async () => {
    const { add, put, parts } = drawerIn();
    await add({ ...RELAY, id: 'mine' });
    const answers = await Promise.all(Array.from({ length: 20 }, (_, i) => put('mine', { ...RELAY, price: i }, '"1"')));
    expect(answers.filter(({ status }) => status === 200)).toHaveLength(1);
    expect(answers.filter(({ status }) => status === 412)).toHaveLength(19);
    expect((await parts()).relays[0].own).toMatchObject({ version: 2, price: answers.findIndex(({ status }) => status === 200) });
  });
  test.each([
    ['nothing', undefined],
    ['anything', '*'],
    ['no version in marks', '1'],
    ['an empty list', ''],
  ])('If-Match with %s is not enough', async (_, ifMatch) => {
    const { add, put, remove, parts } = drawerIn();
    await add({ ...RELAY, id: 'mine' });
    for (const answer of [await put('mine', RELAY, ifMatch), await remove('mine', ifMatch)]) {
      expect(expectProblem(answer, 428).errors[0]).toMatchObject({ code: 'versionNeeded', expected: expect.stringMatching(/If-Match/) });
      expect(answer.headers.get('etag')).toBe('"1"');
    }
    expect((await parts()).relays[0].own.version).toBe(1);
  });
  test('If-Match may name several versions, and a weak one never fits', async () => {
    const { add, put } = drawerIn();
    await add({ ...RELAY, id: 'mine' });
    expectProblem(await put('mine', RELAY, 'W/"1"'), 412);
    expect((await put('mine', RELAY, '"7", "1"')).status).toBe(200);
  });
});

describe('refused', () => {
  const one = drawerIn();
  beforeAll(() => one.add({ ...RELAY, id: 'mine' }));
  const named = (name: string, body: unknown, status: number, path: string, code: string) => ({ name, body, status, path, code });
  test.each([
    named('an id that is taken', { ...RELAY, id: 'mine' }, 409, '', 'idTaken'),
    named("an id of the catalogue's", { ...RELAY, id: 'plan-10x-0-25-200' }, 409, '', 'catalogueId'),
    named('an id with a slash', { ...RELAY, id: '../mine' }, 422, '/id', 'wrongId'),
    named('an id that is a number', { ...RELAY, id: 5 }, 422, '/id', 'wrongId'),
    named('an id that every object has', { ...RELAY, id: '__proto__' }, 422, '/id', 'wrongId'),
    named('no kind', { owned: true, part: SENSOR.part }, 422, '/kind', 'missing'),
    named('another kind', { ...RELAY, kind: 'lens' }, 422, '/kind', 'notOneOf'),
    named('a kind that every object has', { ...RELAY, kind: 'constructor' }, 422, '/kind', 'notOneOf'),
    named('a part of another kind', { ...RELAY, part: SENSOR.part }, 422, '/part/kind', 'missing'),
    named('no name', { ...SENSOR, part: { ...SENSOR.part, name: undefined } }, 422, '/part/name', 'missing'),
    named('an empty name', { ...SENSOR, part: { ...SENSOR.part, name: '' } }, 422, '/part/name', 'tooSmall'),
    named('not said whether owned', { ...SENSOR, owned: undefined }, 422, '/owned', 'missing'),
    named('a price below nothing', { ...SENSOR, price: -1 }, 422, '/price', 'tooSmall'),
    named('a price in words', { ...SENSOR, price: '12' }, 422, '/price', 'wrongType'),
    named('endless notes', { ...SENSOR, notes: 'x'.repeat(2001) }, 422, '/notes', 'tooBig'),
    named('half a letter', { ...SENSOR, notes: 'a\ud800b' }, 422, '/notes', 'brokenText'),
    named('a version of its own', { ...SENSOR, version: 9 }, 422, '', 'unknownName'),
    named('a number out of bounds', { ...OBJECTIVE, part: { ...OBJECTIVE.part, na: -1 } }, 422, '/part/na', 'tooSmall'),
    named('a relay of no strength', { ...RELAY, part: { name: 'x', kind: 'tube-lens' } }, 422, '/part/focalLengthMm', 'missing'),
    named('a part that contradicts itself', { ...OBJECTIVE, part: { ...OBJECTIVE.part, na: 1.2 } }, 422, '/part/na', 'contradiction'),
    named('pixels that are not square', { ...SENSOR, part: { ...SENSOR.part, rows: 5000 } }, 422, '/part/rows', 'contradiction'),
    named('a list', [RELAY], 422, '', 'wrongType'),
    named('nothing', 'null', 422, '', 'wrongType'),
    named('a prototype', `{"__proto__":{"owned":true},"kind":"sensor","part":${JSON.stringify(SENSOR.part)}}`, 422, '/owned', 'missing'),
    named('a prototype in the part', JSON.stringify(SENSOR).replace('"name"', '"__proto__":{"x":1},"name"'), 422, '/part', 'unknownName'),
    named(
      'a constructor',
      JSON.stringify(SENSOR).replace('"owned"', '"constructor":{"prototype":{"x":1}},"owned"'),
      422,
      '',
      'unknownName',
    ),
    named('no JSON', '{"kind":', 400, '', 'notJson'),
    named('too much', { ...SENSOR, notes: 'x'.repeat(300_000) }, 413, '', 'tooLarge'),
  ])('$name', async ({ body, status, path, code }) => {
    const { errors } = expectProblem(await one.add(body), status);
    expect(errors).toContainEqual(expect.objectContaining({ path, code }));
    expect(one.drawer.now()).toMatchObject({ state: 'open', contents: { revision: 1 } });
    expect(({} as { x?: number }).x).toBeUndefined();
  });
  test("a part that is not there, the catalogue's, or of another kind", async () => {
    const { add, put, remove, ask } = drawerIn();
    await add({ ...RELAY, id: 'mine' });
    expect(expectProblem(await put('none', RELAY, '"1"'), 404).errors[0]).toMatchObject({ code: 'unknownPart', given: 'none' });
    expectProblem(await remove('none', '"1"'), 404);
    expectProblem(await put('constructor', RELAY, '"1"'), 404);
    expect(expectProblem(await put('tube-lens-180', RELAY, '"1"'), 409).errors[0]).toMatchObject({ code: 'catalogueId' });
    expectProblem(await remove('tube-lens-180', '"1"'), 409);
    expect(expectProblem(await put('mine', SENSOR, '"1"'), 422).errors).toMatchObject([
      { path: '/kind', code: 'kindChanged', given: '"sensor"' },
    ]);
    expectProblem(await ask('PUT', '/api/parts/mine', { body: RELAY, type: 'text/csv', ifMatch: '"1"' }), 415);
    expect(expectProblem(await ask('GET', '/api/parts/mine'), 405).errors[0]?.expected).toBe('PUT, DELETE, OPTIONS');
  });
  test('one part more than a drawer holds', async () => {
    const { takeIn, add } = drawerIn();
    const parts = Array.from({ length: 2000 }, (_, i) => ({ ...SENSOR, id: `s-${i}` }));
    expect((await takeIn({ pupilwalkDrawer: 1, revision: 0, parts })).json).toEqual({
      added: 2000,
      replaced: 0,
      unchanged: 0,
      refused: [],
    });
    expect(expectProblem(await add(SENSOR), 409).errors[0]).toMatchObject({ code: 'drawerFull', expected: expect.stringMatching(/2000/) });
    const more = await takeIn({ pupilwalkDrawer: 1, parts: [{ ...SENSOR, id: 'one-more' }] });
    expect(more.json.refused).toMatchObject([{ line: 1, id: 'one-more', problems: [{ code: 'drawerFull' }] }]);
  });
  test('markup is text like any other, and is given back as JSON', async () => {
    const { add, ask } = drawerIn();
    const name = '<img src=x onerror=alert(1)>"\'';
    const { json } = await add({ ...SENSOR, part: { ...SENSOR.part, name } });
    expect([json.id, json.part.name]).toEqual(['img-src-x-onerror-alert-1', name]);
    for (const path of ['/api/parts', '/api/parts/drawer.json', '/api/parts/drawer.csv'])
      expect((await ask('GET', path)).headers.get('content-type')).toMatch(/^(application\/json|text\/csv; charset=utf-8)$/);
  });
  test('a foreign page may neither change nor take out', async () => {
    const { drawer, add } = drawerIn();
    await add({ ...RELAY, id: 'mine' });
    const { buildApp } = await import('../../api/app.ts');
    const app = buildApp({ page: new Map(), drawer });
    for (const [method, path] of [
      ['PUT', '/mine'],
      ['DELETE', '/mine'],
      ['POST', ''],
      ['POST', '/drawer'],
    ] as const) {
      const headers = { host: 'localhost', origin: 'https://evil.example', 'if-match': '"1"', 'content-type': 'application/json' };
      const body = method === 'DELETE' ? {} : { body: JSON.stringify(RELAY) };
      expect((await app.request(`http://localhost/api/parts${path}`, { method, headers, ...body })).status).toBe(403);
    }
    expect(drawer.now()).toMatchObject({ contents: { revision: 1 } });
  });
});

describe('a file of the drawer', () => {
  const filled = async () => {
    const drawer = drawerIn();
    for (const part of [RELAY, SENSOR, OBJECTIVE]) await drawer.add(part);
    return drawer;
  };
  test.each([
    ['drawer.json', 'application/json', 'application/json'],
    ['drawer.csv', 'text/csv; charset=utf-8', 'text/csv'],
  ])('%s goes out and comes in elsewhere', async (name, type, sent) => {
    const one = await filled();
    const out = await one.ask('GET', `/api/parts/${name}`);
    expect([out.status, out.headers.get('content-type'), out.headers.get('content-disposition')]).toEqual([
      200,
      type,
      `attachment; filename="${name}"`,
    ]);
    if (name === 'drawer.json') expect(out.text).toBe(readFileSync(one.file, 'utf8'));
    const other = drawerIn();
    expect((await other.takeIn(out.text, sent)).json).toEqual({ added: 3, replaced: 0, unchanged: 0, refused: [] });
    expect(readFileSync(other.file, 'utf8').replace('"revision": 1', '"revision": 3')).toBe(readFileSync(one.file, 'utf8'));
    expect((await other.takeIn(out.text, sent)).json).toEqual({ added: 0, replaced: 0, unchanged: 3, refused: [] });
    expect((await other.parts()).drawer.revision).toBe(1);
  });
  test('bad parts are told by their place, the good ones come in by one write; replacing is asked for', async () => {
    const { takeIn, parts } = await filled();
    const file = {
      pupilwalkDrawer: 1,
      revision: 77,
      parts: [
        { ...SENSOR, id: 'my-camera', version: 4, owned: false },
        { ...OBJECTIVE, id: 'new' },
        { ...OBJECTIVE, id: 'bad', part: { ...OBJECTIVE.part, na: 'x' } },
        7,
        { ...OBJECTIVE, id: 'Bad id' },
      ],
    };
    const first = await takeIn(file);
    expect(first.json).toMatchObject({ added: 1, replaced: 0, unchanged: 0 });
    expect(
      first.json.refused.map((r: { line: number; id?: string; problems: { code: string }[] }) => [r.line, r.id, r.problems[0]?.code]),
    ).toEqual([
      [1, 'my-camera', 'idTaken'],
      [3, 'bad', 'wrongType'],
      [4, undefined, 'wrongType'],
      [5, 'Bad id', 'wrongId'],
    ]);
    expect((await parts()).drawer).toMatchObject({ revision: 4, parts: 4 });
    expect((await takeIn(file, 'application/json', '?replace=true')).json).toMatchObject({ added: 0, replaced: 1, unchanged: 1 });
    expect((await parts()).sensors[0]).toMatchObject({ id: 'my-camera', own: { owned: false, version: 2 } });
  });
  test('where all is bad nothing is written', async () => {
    const { takeIn, drawer } = drawerIn();
    expect((await takeIn({ pupilwalkDrawer: 1, parts: [{}, { id: 'x' }] })).json).toMatchObject({
      added: 0,
      refused: [{ line: 1 }, { line: 2, id: 'x' }],
    });
    expect((await takeIn('kind,owned,name\r\nlens,yes,x', 'text/csv')).json).toMatchObject({ added: 0, refused: [{ line: 2 }] });
    expect(drawer.now()).toMatchObject({ contents: { revision: 0 } });
  });
  test.each([
    ['of a later version', { pupilwalkDrawer: 2, drawers: [] }, 422, 'laterVersion', /later version/],
    ['of a version before the first', { pupilwalkDrawer: 0, parts: [] }, 422, 'notADrawer', /never was/],
    ['of something else', { parts: [] }, 422, 'notADrawer', /no drawer of this program/],
    ['that is a list', [RELAY], 422, 'notADrawer', /no drawer of this program/],
    ['without a list', { pupilwalkDrawer: 1, parts: {} }, 422, 'wrongType', /a list/],
    ['with more to it', { pupilwalkDrawer: 1, parts: [], bench: 1 }, 422, 'unknownName', /bench/],
    ['with too many parts', { pupilwalkDrawer: 1, parts: Array.from({ length: 2001 }, () => 0) }, 422, 'tooBig', /more parts/],
    ['that is no JSON', '{"pupilwalkDrawer":1', 400, 'notJson', /not JSON/],
  ] as const)('one %s is refused in words', async (_, body, status, code, message) => {
    const { takeIn } = drawerIn();
    const { errors } = expectProblem(await takeIn(body), status);
    expect(errors[0]).toMatchObject({ code, message: expect.stringMatching(message) });
  });
  test('what it is sent as, how large it is and how it shall be taken are looked at', async () => {
    const { takeIn, ask } = drawerIn();
    expect(expectProblem(await takeIn('x', 'text/plain'), 415).errors[0]?.expected).toBe('Content-Type: application/json or text/csv');
    expect(expectProblem(await takeIn('x', 'text/csv; charset=latin1'), 415).errors).toHaveLength(1);
    expectProblem(await takeIn(`"${'x'.repeat(8 * 1024 * 1024)}"`), 413);
    expectProblem(await takeIn('x'.repeat(8 * 1024 * 1024 + 1), 'text/csv'), 413);
    expect((await takeIn(`{"pupilwalkDrawer":1,"parts":[]}${' '.repeat(3_000_000)}`)).status).toBe(200);
    expect(expectProblem(await takeIn('{}', 'application/json', '?replace=perhaps'), 422).errors[0]?.given).toBe('perhaps');
    expectProblem(await ask('POST', '/api/parts', { body: 'kind\nrelay', type: 'text/csv' }), 415);
  });
});

test('the drawer starts empty where there is no folder yet, and reading makes none', async () => {
  const { existsSync } = await import('node:fs');
  const folder = `${newFolder()}/a/b`;
  const drawer = openDrawer({ folder });
  expect(drawer.now()).toMatchObject({ state: 'open', contents: { revision: 0 } });
  expect(existsSync(folder)).toBe(false);
  expect((await drawerIn(folder).add(RELAY)).status).toBe(201);
  expect(drawer.now()).toMatchObject({ contents: { revision: 1 } });
});
