import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Running } from '../../api/server.ts';
import { firstUnfit } from '../data/finite.ts';
import { type Answered, ask, expectProblem, post, start } from './support.ts';

/** What must not come in, sent over real HTTP: each gets a problem that names the field, what was given, what would do. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const route = (name: string): string => `${server.address}/api/pairings/${name}`;
const good = {
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, fieldNumberMm: 22 },
  relay: { kind: 'supplementary', powerDioptre: 5, clearApertureMm: 54 } as Record<string, unknown>,
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 } as Record<string, unknown>,
  infinitySpaceMm: 60,
};
const objective = (change: object) => ({ ...good, objective: { ...good.objective, ...change } });
const relay = (change: object) => ({ ...good, relay: { kind: 'supplementary', clearApertureMm: 54, ...change } });
const sensor = (change: object) => ({ ...good, sensor: { widthMm: 36, heightMm: 24, ...change } });
const stops = (...list: object[]) => ({ ...good, stops: list });

/** A named case: the body, and the problem that must be among those told. */
interface Case {
  name: string;
  body: unknown;
  path: string;
  code: string;
  given: string;
  expected: string | RegExp;
}

const CASES: Case[] = [
  { name: 'negative', body: objective({ na: -0.25 }), path: '/objective/na', code: 'tooSmall', given: '-0.25', expected: 'at least 0.001' },
  {
    name: 'negative inside a quantity',
    body: objective({ na: { value: -0.25 } }),
    path: '/objective/na/value',
    code: 'tooSmall',
    given: '-0.25',
    expected: 'at least 0.001',
  },
  {
    name: 'a negative ±',
    body: objective({ na: { value: 0.25, plusMinus: -1 } }),
    path: '/objective/na/plusMinus',
    code: 'tooSmall',
    given: '-1',
    expected: 'at least 0',
  },
  {
    name: 'a ± that leaves the bounds',
    body: objective({ na: { value: 0.25, plusMinus: 0.25 } }),
    path: '/objective/na/plusMinus',
    code: 'tooBig',
    given: '0.25',
    expected: 'at most 0.249',
  },
  {
    name: 'zero',
    body: objective({ magnification: 0 }),
    path: '/objective/magnification',
    code: 'tooSmall',
    given: '0',
    expected: 'at least 0.1',
  },
  {
    name: 'zero width',
    body: sensor({ widthMm: 0, pixelPitchUm: 4 }),
    path: '/sensor/widthMm',
    code: 'tooSmall',
    given: '0',
    expected: 'at least 0.1',
  },
  {
    name: '5e-324',
    body: relay({ focalLengthMm: 5e-324 }),
    path: '/relay/focalLengthMm',
    code: 'tooSmall',
    given: '5e-324',
    expected: 'at least 5',
  },
  {
    name: '1e308',
    body: relay({ focalLengthMm: 1e308 }),
    path: '/relay/focalLengthMm',
    code: 'tooBig',
    given: '1e+308',
    expected: 'at most 5000',
  },
  {
    name: 'a number beyond all doubles',
    body: JSON.stringify(good).replace('60', '1e999'),
    path: '/infinitySpaceMm',
    code: 'wrongType',
    given: 'Infinity',
    expected: /number/,
  },
  {
    name: 'NaN as text',
    body: objective({ magnification: 'NaN' }),
    path: '/objective/magnification',
    code: 'wrongType',
    given: '"NaN"',
    expected: 'a number or an object',
  },
  {
    name: 'a string',
    body: { ...good, infinitySpaceMm: '60' },
    path: '/infinitySpaceMm',
    code: 'wrongType',
    given: '"60"',
    expected: 'a number or an object',
  },
  {
    name: 'null',
    body: { ...good, infinitySpaceMm: null },
    path: '/infinitySpaceMm',
    code: 'wrongType',
    given: 'null',
    expected: /a number/,
  },
  {
    name: 'a list for an object',
    body: { ...good, objective: [10] },
    path: '/objective',
    code: 'wrongType',
    given: '[10]',
    expected: /object/,
  },
  { name: 'a list for a pairing', body: [good], path: '', code: 'wrongType', given: '[{', expected: 'an object' },
  { name: 'a bare number', body: 5, path: '', code: 'wrongType', given: '5', expected: 'an object' },
  {
    name: 'a missing number',
    body: { ...good, infinitySpaceMm: undefined },
    path: '/infinitySpaceMm',
    code: 'missing',
    given: 'nothing',
    expected: /number/,
  },
  {
    name: 'a missing part',
    body: { ...good, sensor: undefined },
    path: '/sensor',
    code: 'missing',
    given: 'nothing',
    expected: 'an object',
  },
  {
    name: 'a missing aperture',
    body: objective({ na: undefined }),
    path: '/objective/na',
    code: 'missing',
    given: 'nothing',
    expected: /number/,
  },
  {
    name: 'an unknown id',
    body: { ...good, relay: 'no-such' },
    path: '/relay',
    code: 'unknownPart',
    given: '"no-such"',
    expected: /GET \/api\/parts/,
  },
  {
    name: 'an unknown id to differ from',
    body: { ...good, sensor: { from: 'no-such', widthMm: 30 } },
    path: '/sensor/from',
    code: 'unknownPart',
    given: '"no-such"',
    expected: /GET \/api\/parts/,
  },
  {
    name: 'an id of another kind',
    body: { ...good, relay: 'plan-10x-0-25-200' },
    path: '/relay',
    code: 'unknownPart',
    given: '"plan-10x-0-25-200"',
    expected: /an id/,
  },
  {
    name: 'an id that is a number',
    body: { ...good, relay: { from: 7 } },
    path: '/relay/from',
    code: 'unknownPart',
    given: '7',
    expected: /an id/,
  },
  {
    name: 'an id that every object answers to',
    body: { ...good, relay: 'constructor' },
    path: '/relay',
    code: 'unknownPart',
    given: '"constructor"',
    expected: /an id/,
  },
  {
    name: 'NA at the immersion index',
    body: objective({ na: 1 }),
    path: '/objective/na',
    code: 'contradiction',
    given: '1',
    expected: /less than 1/,
  },
  {
    name: 'NA above the immersion index',
    body: objective({ na: 1.4, immersionIndex: 1.33 }),
    path: '/objective/na',
    code: 'contradiction',
    given: '1.4',
    expected: /less than 1.33/,
  },
  {
    name: 'NA that its ± lifts to the immersion index',
    body: objective({ na: { value: 0.95, plusMinus: 0.05 } }),
    path: '/objective/na',
    code: 'contradiction',
    given: '{"value":0.95,"plusMinus":0.05}',
    expected: /less than 1/,
  },
  {
    name: 'a stop of no diameter',
    body: stops({ diameterMm: 0, fromShoulderMm: 10 }),
    path: '/stops/0/diameterMm',
    code: 'tooSmall',
    given: '0',
    expected: 'at least 0.1',
  },
  {
    name: 'a stop without a diameter',
    body: stops({ fromShoulderMm: 10 }),
    path: '/stops/0/diameterMm',
    code: 'missing',
    given: 'nothing',
    expected: /number/,
  },
  {
    name: 'a stop without a place',
    body: stops({ diameterMm: 9 }),
    path: '/stops/0/fromShoulderMm',
    code: 'missing',
    given: 'nothing',
    expected: /sensor/,
  },
  {
    name: 'a stop in two places',
    body: stops({ diameterMm: 9, fromShoulderMm: 1, fromSensorMm: 1 }),
    path: '/stops/0/fromSensorMm',
    code: 'contradiction',
    given: '1',
    expected: /only one/,
  },
  {
    name: 'a stop beyond the relay',
    body: stops({ diameterMm: 9, fromShoulderMm: 61 }),
    path: '/stops/0/fromShoulderMm',
    code: 'contradiction',
    given: '61',
    expected: /at most 60/,
  },
  {
    name: 'a relay with neither focal length nor power',
    body: relay({}),
    path: '/relay/focalLengthMm',
    code: 'missing',
    given: 'nothing',
    expected: /focal length.*or.*dioptres/,
  },
  {
    name: 'a relay with both contradicting',
    body: relay({ focalLengthMm: 190, powerDioptre: 5 }),
    path: '/relay/focalLengthMm',
    code: 'contradiction',
    given: '190',
    expected: /^200/,
  },
  {
    name: 'a relay of no kind',
    body: { ...good, relay: { kind: 'mirror', focalLengthMm: 200 } },
    path: '/relay/kind',
    code: 'notOneOf',
    given: '"mirror"',
    expected: /"supplementary"/,
  },
  {
    name: 'a zoom set outside its range',
    body: relay({ kind: 'camera-lens', focalLengthMm: 210, focalLengthRangeMm: [70, 200] }),
    path: '/relay/focalLengthMm',
    code: 'contradiction',
    given: '210',
    expected: 'between 70 and 200',
  },
  {
    name: 'pitch and columns contradicting',
    body: sensor({ pixelPitchUm: 4.35, columns: 6000, rows: 4000 }),
    path: '/sensor/pixelPitchUm',
    code: 'contradiction',
    given: '4.35',
    expected: /^6,/,
  },
  {
    name: 'rows and pitch contradicting',
    body: sensor({ pixelPitchUm: 6, columns: 6000, rows: 5000 }),
    path: '/sensor/rows',
    code: 'contradiction',
    given: '5000',
    expected: 'about 4000',
  },
  {
    name: 'columns without rows',
    body: sensor({ columns: 6000 }),
    path: '/sensor/rows',
    code: 'missing',
    given: 'nothing',
    expected: /pixels/,
  },
  {
    name: 'half a pixel',
    body: sensor({ columns: 6000.5, rows: 4000 }),
    path: '/sensor/columns',
    code: 'wrongType',
    given: '6000.5',
    expected: 'a whole number',
  },
  { name: 'no pixels at all', body: sensor({}), path: '/sensor/pixelPitchUm', code: 'missing', given: 'nothing', expected: /pitch/ },
  {
    name: 'an unknown name',
    body: objective({ NA: 0.25 }),
    path: '/objective',
    code: 'unknownName',
    given: '{"magnification',
    expected: /names of the contract/,
  },
  {
    name: 'a name that is nearly right',
    body: { ...good, 'infinitySpaceMm ': 60 },
    path: '',
    code: 'unknownName',
    given: '{"objective',
    expected: /names of the contract/,
  },
  {
    name: 'names that differ in case',
    body: { ...good, InfinitySpaceMm: 60 },
    path: '',
    code: 'unknownName',
    given: '{"objective',
    expected: /names of the contract/,
  },
  {
    name: 'an unknown name beside an id',
    body: { ...good, relay: { from: 'close-up-5d-58', power: 5 } },
    path: '/relay',
    code: 'unknownName',
    given: '{"name"',
    expected: /names/,
  },
  {
    name: 'a prototype in the body',
    body: `{"__proto__":{"infinitySpaceMm":60},${JSON.stringify(good).slice(1)}`,
    path: '',
    code: 'unknownName',
    given: '{"__proto__"',
    expected: /names of the contract/,
  },
  {
    name: 'a prototype instead of a field',
    body: JSON.stringify({ ...good, infinitySpaceMm: undefined }).replace('{', '{"__proto__":{"infinitySpaceMm":60},'),
    path: '/infinitySpaceMm',
    code: 'missing',
    given: 'nothing',
    expected: /number/,
  },
  {
    name: 'a prototype in a part that differs',
    body: JSON.stringify({ ...good, relay: { from: 'close-up-5d-58' } }).replace('"from"', '"__proto__":{"powerDioptre":1},"from"'),
    path: '/relay',
    code: 'unknownName',
    given: '{',
    expected: /names of the contract/,
  },
  {
    name: 'a constructor to pollute',
    body: { ...good, constructor: { prototype: { polluted: true } } },
    path: '',
    code: 'unknownName',
    given: '{"objective',
    expected: /names of the contract/,
  },
  {
    name: 'nine stops',
    body: stops(...Array.from({ length: 9 }, () => ({ diameterMm: 30, fromShoulderMm: 5 }))),
    path: '/stops',
    code: 'tooBig',
    given: '[{',
    expected: 'at most 8',
  },
  {
    name: '513 radii',
    body: { ...good, radiiMm: Array.from({ length: 513 }, (_, i) => i / 100) },
    path: '/radiiMm',
    code: 'tooBig',
    given: '[0,',
    expected: 'at most 512',
  },
  { name: 'no radii', body: { ...good, radiiMm: [] }, path: '/radiiMm', code: 'tooSmall', given: '[]', expected: 'at least 1' },
  {
    name: 'a radius below zero',
    body: { ...good, radiiMm: [1, -1] },
    path: '/radiiMm/1',
    code: 'tooSmall',
    given: '-1',
    expected: 'at least 0',
  },
  {
    name: 'a name too long',
    body: objective({ name: 'x'.repeat(121) }),
    path: '/objective/name',
    code: 'tooBig',
    given: '"xxxx',
    expected: 'at most 120',
  },
  {
    name: 'a sensor at the image of the exit pupil',
    body: { ...good, infinitySpaceMm: 300, sensorOffsetMm: 400 },
    path: '/sensorOffsetMm',
    code: 'contradiction',
    given: '400',
    expected: /smaller distance/,
  },
];

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
