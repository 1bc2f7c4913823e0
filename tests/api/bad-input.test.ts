import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Running } from '../../api/server.ts';
import { firstUnfit } from '../data/finite.ts';
import { CASES, type Case, good, objective, relay } from './spoiled.ts';
import { type Answered, expectProblem, post, start } from './support.ts';

/** What must not come in, sent over real HTTP: each gets a problem that names the field, what was given, what would do. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const route = (name: string): string => `${server.address}/api/pairings/${name}`;

function expectNamed(answer: Answered, { path, code, given, expected }: Omit<Case, 'name' | 'body'>, prefix = ''): void {
  const { errors } = expectProblem(answer, 422);
  const found = errors.find((e) => e.path === prefix + path && e.code === code);
  expect(found, `${prefix + path} ${code} among ${JSON.stringify(errors)}`).toBeDefined();
  expect(found?.given.startsWith(given), `given ${found?.given}`).toBe(true);
  if (typeof expected === 'string') expect(found?.expected).toBe(expected);
  else expect(found?.expected).toMatch(expected);
}

test('the pairing that the cases spoil is good', async () => {
  expect((await post(route('report'), good)).status).toBe(200);
});

describe('a report refuses', () => {
  test.each(CASES)('$name', async ({ body, ...problem }) => expectNamed(await post(route('report'), body), problem));
  test('and nothing has been polluted', () => {
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
    expect(CASES.length).toBe(54);
  });
});

/** The same cases inside the other two bodies, where they are JSON values at all. */
const VALUES = CASES.filter((c) => typeof c.body !== 'string');

describe('the other routes name the same fields from where the pairing stands', () => {
  test.each(VALUES)('vary: $name', async ({ body, ...problem }) => {
    const answer = await post(route('sweep'), { pairing: body, vary: '/objective/referenceFocalLengthMm', from: 180, to: 200, steps: 2 });
    expectNamed(answer, problem, '/pairing');
  });
  test.each(VALUES)('compare: $name', async ({ body, ...problem }) => {
    expectNamed(await post(route('compare'), { pairings: [good, body] }), problem, '/pairings/1');
  });
});

describe('varying refuses', () => {
  const sweep = (change: object) =>
    post(route('sweep'), { pairing: good, vary: '/infinitySpaceMm', from: 10, to: 100, steps: 5, ...change });
  const problem = (path: string, code: string, given: string, expected: string | RegExp) => ({ path, code, given, expected });
  test.each([
    ['one step', { steps: 1 }, problem('/steps', 'tooSmall', '1', 'at least 2')],
    ['401 steps', { steps: 401 }, problem('/steps', 'tooBig', '401', 'at most 400')],
    ['half a step', { steps: 2.5 }, problem('/steps', 'wrongType', '2.5', 'a whole number')],
    ['no ends', { from: undefined }, problem('/from', 'missing', 'nothing', 'a number')],
    ['an end as text', { to: 'far' }, problem('/to', 'wrongType', '"far"', 'a number')],
    ['an endless end', { to: 1e308 }, problem('/to', 'tooBig', '1e+308', 'at most 10000')],
    ['an end outside the bounds', { to: 9000 }, problem('/to', 'tooBig', '9000', 'at most 2000')],
    ['a first value outside the bounds', { from: -5 }, problem('/from', 'tooSmall', '-5', 'at least 0')],
    ['nothing to vary', { vary: '' }, problem('/vary', 'tooSmall', '""', 'at least 1')],
    ['a pointer to a part', { vary: '/objective' }, problem('/vary', 'notANumber', '"/objective"', /JSON Pointer/)],
    ['a pointer to text', { vary: '/relay/kind' }, problem('/vary', 'notANumber', '"/relay/kind"', /JSON Pointer/)],
    ['a pointer to nowhere', { vary: '/no/such' }, problem('/vary', 'notANumber', '"/no/such"', /JSON Pointer/)],
    ['a pointer without a slash', { vary: 'infinitySpaceMm' }, problem('/vary', 'notANumber', '"infinitySpaceMm"', /JSON Pointer/)],
    ['a pointer to the prototype', { vary: '/__proto__/x' }, problem('/vary', 'notANumber', '"/__proto__/x"', /JSON Pointer/)],
    [
      'a pointer to a constructor',
      { vary: '/constructor/length' },
      problem('/vary', 'notANumber', '"/constructor/length"', /JSON Pointer/),
    ],
    ['a pointer too long', { vary: `/${'x'.repeat(200)}` }, problem('/vary', 'tooBig', '"/xx', 'at most 200')],
    ['an unknown figure', { figures: ['sharpness'] }, problem('/figures/0', 'notOneOf', '"sharpness"', /"systemMagnification"/)],
    ['no figures', { figures: [] }, problem('/figures', 'tooSmall', '[]', 'at least 1')],
    ['an unknown name', { step: 5 }, problem('', 'unknownName', '{"pairing"', /names of the contract/)],
    ['no pairing', { pairing: undefined }, problem('/pairing', 'missing', 'nothing', 'an object')],
    [
      'an aperture that reaches the index',
      { vary: '/objective/na', from: 0.5, to: 1.2 },
      problem('/to', 'contradiction', '1.2', /less than 1/),
    ],
  ])('%s', async (_, change, told) => expectNamed(await sweep(change), told));
});

describe('comparing refuses', () => {
  const problem = (path: string, code: string, given: string, expected: string | RegExp) => ({ path, code, given, expected });
  test.each([
    ['thirteen pairings', { pairings: Array.from({ length: 13 }, () => good) }, problem('/pairings', 'tooBig', '[{', 'at most 12')],
    ['one pairing', { pairings: [good] }, problem('/pairings', 'tooSmall', '[{', 'at least 2')],
    ['no list', { pairings: good }, problem('/pairings', 'wrongType', '{', 'a list')],
    ['a number among them', { pairings: [good, 7] }, problem('/pairings/1', 'wrongType', '7', 'an object')],
    ['an unknown name', { pairings: [good, good], of: 1 }, problem('', 'unknownName', '{"pairings"', /names of the contract/)],
  ])('%s', async (_, body, told) => expectNamed(await post(route('compare'), body), told));
  test('two faults in two pairings are both told', async () => {
    const { errors } = expectProblem(await post(route('compare'), { pairings: [objective({ na: 0 }), relay({})] }), 422);
    expect(errors.map((e) => e.path)).toEqual(['/pairings/0/objective/na', '/pairings/1/relay/focalLengthMm']);
  });
});

describe('what is odd but answered', () => {
  test('a beam cut whole: zero light, in words', async () => {
    const cut = { ...good, infinitySpaceMm: 200, relay: { kind: 'supplementary', focalLengthMm: 100, clearApertureMm: 12 } };
    const answer = await post(route('report'), { ...cut, objective: { ...good.objective, exitPupilFromShoulderMm: 0 } });
    expect(answer.status, answer.text).toBe(200);
    expect(firstUnfit(answer.json)).toBeUndefined();
    const { figures, vignetting, sentence } = answer.json;
    expect(figures.cornerIllumination).toMatchObject({ state: 'known', value: 0 });
    expect(figures.cornerLossEv.state).toBe('unlimited');
    expect(figures.systemMagnification.value).toBeCloseTo(5, 12);
    const dark = vignetting.curve.at(-1);
    expect(dark).toEqual({ radiusMm: expect.any(Number), relativeIllumination: 0 });
    expect(sentence).toMatch(/no light/);
  });
  test('every part named in each of the three ways', async () => {
    for (const relayGiven of [
      'close-up-5d-58',
      { from: 'close-up-5d-58', powerDioptre: 4 },
      { kind: 'supplementary', focalLengthMm: 250 },
    ]) {
      const answer = await post(route('report'), {
        objective: 'plan-10x-0-25-200',
        relay: relayGiven,
        sensor: { from: 'full-frame-45mp', pixelPitchUm: 6 },
        infinitySpaceMm: 60,
      });
      expect(answer.status, answer.text).toBe(200);
      expect(answer.json.figures.systemMagnification.value).toBeCloseTo(relayGiven === 'close-up-5d-58' ? 10 : 12.5, 12);
      expect(answer.json.figures.nyquistLpPerMm.value).toBeCloseTo(500 / 6, 9);
    }
  });
  test('what differs unsays what the catalogue says of the same thing', async () => {
    const pairing = {
      objective: 'plan-10x-0-25-200',
      relay: { from: 'close-up-5d-58', focalLengthMm: 300 },
      sensor: 'full-frame-45mp',
      infinitySpaceMm: 60,
    };
    const answer = await post(route('report'), pairing);
    expect(answer.json.figures.relayFocalLengthMm.value).toBe(300);
  });
});
