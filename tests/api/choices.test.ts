import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { choicesSchema, oneMoreSchema } from '../../api/schemas/choices.ts';
import type { Running } from '../../api/server.ts';
import { choosing } from '../../core/choosing.ts';
import { glassworks } from '../../core/glassworks.ts';
import { OBJECTIVES, RELAYS, SENSORS } from '../core/choose/catalogue.ts';
import { firstUnfit } from '../data/finite.ts';
import { ask, expectProblem, post, start } from './support.ts';

/** From what is wanted to pairings, over HTTP. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const choose = (body: unknown, headers: Record<string, string> = {}) => post(`${server.address}/api/choices`, body, headers);

const WISH = {
  want: { subject: { widthMm: 1, heightMm: 1.3, depthMm: 0.3 }, finestDetailUm: 1.5, maxLengthMm: 350 },
  sensor: 'aps-c-23-5-26mp',
  from: {
    objectives: ['lwd-apo-10x-0-28', 'plan-10x-0-25-200', 'plan-4x-0-1-200'],
    relays: ['close-up-5d-58', 'tele-200-f4', 'tube-lens-200'],
  },
  infinitySpacesMm: [40, 90],
};

const named = <P>(list: readonly { id: string; part: P }[], ids: readonly string[]) =>
  ids.map((id) => list.find((one) => one.id === id) as { id: string; part: P });

describe('POST /api/choices', () => {
  test('answers what core finds, whole and finite, in the form that openapi.json describes', async () => {
    const answer = await choose(WISH);
    expect(answer.status, answer.text.slice(0, 300)).toBe(200);
    expect(answer.text).not.toMatch(/NaN|Infinity|null/);
    expect(firstUnfit(answer.json)).toBeUndefined();
    const got = choicesSchema.parse(answer.json);
    const search = choosing(
      {
        want: WISH.want,
        sensor: named(SENSORS, [WISH.sensor])[0]?.part as (typeof SENSORS)[number]['part'],
        objectives: named(OBJECTIVES, WISH.from.objectives),
        relays: named(RELAYS, WISH.from.relays),
        infinitySpacesMm: WISH.infinitySpacesMm,
        sort: { by: 'resolvedDetailUm', first: 'least' },
        frontier: ['resolvedDetailUm', 'objectFieldWidthMm'],
        most: 24,
      },
      glassworks(),
    );
    let step = search.next();
    while (!step.done) step = search.next();
    expect(got).toEqual(JSON.parse(JSON.stringify(step.value)));
    expect(got.considered).toBe(18);
    expect(got.feasible).toBeGreaterThan(0);
    expect(got.nearMisses.length).toBeGreaterThan(0);
    // Each can be sent on as it stands.
    const report = await post(`${server.address}/api/pairings/report`, got.choices[0]?.pairing);
    expect(report.status).toBe(200);
    expect(report.json.figures).toEqual(got.choices[0]?.figures);
  });

  test('takes parts by id, with what differs, and written out', async () => {
    const { json } = await choose({
      ...WISH,
      from: {
        objectives: [
          { from: 'plan-10x-0-25-200', na: 0.3 },
          { magnification: 10, na: 0.25, referenceFocalLengthMm: 180 },
        ],
        relays: [{ kind: 'supplementary', powerDioptre: 5, clearApertureMm: 50 }],
      },
      want: {},
    });
    const { choices, feasible, considered } = choicesSchema.parse(json);
    expect([considered, feasible]).toEqual([4, 4]);
    expect(choices.map(({ pairing }) => pairing.objective.na)).toEqual([0.3, 0.3, 0.25, 0.25]);
    expect(choices.every(({ ids }) => Object.keys(ids).length === 0)).toBe(true);
  });

  test('comes in lines where it is asked for so, the answer last', async () => {
    const { text, headers } = await choose({ ...WISH, from: undefined }, { accept: 'application/x-ndjson' });
    expect(headers.get('content-type')).toBe('application/x-ndjson');
    const lines = text
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    const last = choicesSchema.parse(lines.pop());
    expect(last.considered).toBe(OBJECTIVES.length * RELAYS.length * 2);
    let before = -1;
    for (const { done, of } of lines) {
      expect(of).toBe(last.considered);
      expect(done).toBeGreaterThanOrEqual(before);
      before = done;
    }
    expect(lines.length).toBeGreaterThan(0);
  });

  test.each([
    ['no body at all of a wish', {}, '/want', 'missing'],
    ['a range the wrong way round', { ...WISH, want: { magnification: [10, 5] } }, '/want/magnification', 'contradiction'],
    ['a subject without a width', { ...WISH, want: { subject: { heightMm: 1 } } }, '/want/subject/widthMm', 'missing'],
    ['a number out of bounds', { ...WISH, want: { minCornerIllumination: 1.5 } }, '/want/minCornerIllumination', 'tooBig'],
    ['a wish that means nothing here', { ...WISH, want: { bestLens: true } }, '/want', 'unknownName'],
    ['no camera', { ...WISH, sensor: undefined }, '/sensor', 'missing'],
    ['an unknown camera', { ...WISH, sensor: 'nothing-here' }, '/sensor', 'unknownPart'],
    ['a camera without pixels of any size', { ...WISH, sensor: { widthMm: -1, heightMm: 10 } }, '/sensor/widthMm', 'tooSmall'],
    ['an unknown objective', { ...WISH, from: { objectives: ['plan-10x-0-25-200', 'nope'] } }, '/from/objectives/1', 'unknownPart'],
    ['a relay of no kind', { ...WISH, from: { relays: [{ focalLengthMm: 200 }] } }, '/from/relays/0/kind', 'missing'],
    [
      'an aperture above the index in front of it',
      { ...WISH, from: { objectives: [{ magnification: 10, na: 1.2, referenceFocalLengthMm: 200 }] } },
      '/from/objectives/0/na',
      'contradiction',
    ],
    ['no relays', { ...WISH, from: { relays: [] } }, '/from/relays', 'tooSmall'],
    ['a source that is none', { ...WISH, from: { relays: 'mine' } }, '/from/relays', 'wrongType'],
    ['a frontier of one', { ...WISH, frontier: ['resolvedDetailUm'] }, '/frontier', 'tooSmall'],
    ['a frontier of the same twice', { ...WISH, frontier: ['resolvedDetailUm', 'resolvedDetailUm'] }, '/frontier', 'contradiction'],
    ['a frontier of what has no better', { ...WISH, frontier: ['resolvedDetailUm', 'systemMagnification'] }, '/frontier/1', 'notOneOf'],
    ['a sort by nothing', { ...WISH, sort: { by: 'beauty', first: 'least' } }, '/sort/by', 'notOneOf'],
    ['a space out of bounds', { ...WISH, infinitySpacesMm: [60, -1] }, '/infinitySpacesMm/1', 'tooSmall'],
    [
      'more pairings than are considered',
      {
        ...WISH,
        from: { objectives: Array(510).fill('plan-10x-0-25-200'), relays: Array(500).fill('tele-200-f4') },
        infinitySpacesMm: [10],
      },
      '/from',
      'tooBig',
    ],
  ])('refuses %s, by its place', async (_, body, path, code) => {
    const { errors } = expectProblem(await choose(body), 422);
    expect(errors.map((error) => [error.path, error.code])).toContainEqual([path, code]);
  });
});

test('POST /api/choices/one-more tells what the catalogue would open to what is owned, and owns what the drawer owns', async () => {
  const own = async (id: string, kind: string, part: object) =>
    ask(`${server.address}/api/parts`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ id, kind, owned: true, price: 100, part }),
    });
  expect((await own('my-tele', 'relay', { name: 'My telephoto', kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 })).status).toBe(201);
  const { status, json, text } = await post(`${server.address}/api/choices/one-more`, { ...WISH, from: undefined });
  expect(status, text.slice(0, 300)).toBe(200);
  const { owned, openings } = oneMoreSchema.parse(json);
  expect(owned).toEqual({ objectives: 0, relays: 1, feasible: 0 });
  expect(openings.length).toBeGreaterThan(0);
  for (const { kind, best } of openings) {
    expect(kind).toBe('objective');
    expect(best.ids.relay).toBe('my-tele');
  }
  const alone = choicesSchema.parse((await choose({ ...WISH, want: {}, from: { objectives: 'all', relays: 'owned' } })).json);
  expect(alone.considered).toBe(OBJECTIVES.length * 2);
  expect(new Set(alone.choices.map(({ ids }) => ids.relay))).toEqual(new Set(['my-tele']));
  // The telephoto is there; what it is paired with has no price.
  expect(alone.choices[0]).toMatchObject({ priceMissing: ['objective'] });
});
