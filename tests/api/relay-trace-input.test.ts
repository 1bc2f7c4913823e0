import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Running } from '../../api/server.ts';
import { firstUnfit } from '../data/finite.ts';
import { ask, expectProblem, post, start } from './support.ts';

/** What must not go into POST /api/relays/trace: each problem names its field, what was given, what would do. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const GLASS = { radiiMm: [1000, -54, -91], thicknessesMm: [11, 4], glasses: ['N-BK7', 'N-SF5'] };
const good: Record<string, unknown> = {
  relay: { kind: 'supplementary', glass: GLASS },
  pupilDiameterMm: 11.2,
  pupilDistanceMm: 85,
  fieldRadiiMm: [0, 10.8, 21.6],
  wavelengthsNm: [587.56, 480],
  focus: 'one-frame',
};
const glass = (change: object) => ({ ...good, relay: { kind: 'supplementary', glass: { ...GLASS, ...change } } });
const trace = (body: unknown) => post(`${server.address}/api/relays/trace`, body);
const without = (name: string) => Object.fromEntries(Object.entries(good).filter(([key]) => key !== name));

type Case = [name: string, body: unknown, path: string, code: string, given: string | RegExp, expected: string | RegExp];
const CASES: Case[] = [
  ['a negative thickness', glass({ thicknessesMm: [11, -4] }), '/relay/glass/thicknessesMm/1', 'tooSmall', '-4', 'at least 0'],
  ['a radius of 0', glass({ radiiMm: [1000, 0, -91] }), '/relay/glass/radiiMm/1', 'tooSmall', '0', /"plane"/],
  [
    'a radius smaller than its semi-aperture',
    glass({ radiiMm: [1000, -24, -91], semiAperturesMm: [20, 25, 20] }),
    '/relay/glass/radiiMm/1',
    'contradiction',
    '-24',
    /at least 25 mm/,
  ],
  [
    'edges that touch',
    glass({ semiAperturesMm: [40, 40, 40] }),
    '/relay/glass/thicknessesMm/0',
    'contradiction',
    '11',
    /semi-apertures of at most 3\d/,
  ],
  [
    'surfaces that pass through each other',
    glass({ radiiMm: [50, -50], thicknessesMm: [0], glasses: ['F2'] }),
    '/relay/glass/thicknessesMm/0',
    'contradiction',
    '0',
    /at least/,
  ],
  [
    'an unknown glass',
    glass({ glasses: ['N-BK7', 'XSF5'] }),
    '/relay/glass/glasses/1',
    'unknownGlass',
    '"XSF5"',
    /SF5.*GET \/api\/glasses/,
  ],
  ['an index that nothing has', glass({ glasses: [0.5, 1.6] }), '/relay/glass/glasses/0', 'tooSmall', '0.5', 'at least 1'],
  ['a list too short', glass({ glasses: ['N-BK7'] }), '/relay/glass/glasses', 'wrongCount', '["N-BK7"]', /^2 entries/],
  [
    '17 surfaces',
    glass({ radiiMm: Array(17).fill(80), thicknessesMm: Array(15).fill(2), glasses: Array(15).fill(1.5) }),
    '/relay/glass/radiiMm',
    'tooBig',
    /^\[80/,
    'at most 16',
  ],
  [
    'a plane plate',
    glass({ radiiMm: ['plane', 'plane'], thicknessesMm: [3], glasses: ['F2'] }),
    '/relay/glass',
    'noPower',
    /^\{/,
    /from 5 to 5000 mm/,
  ],
  [
    'a lens that spreads light',
    glass({ radiiMm: [-90, 90], thicknessesMm: [3], glasses: ['F2'] }),
    '/relay/glass',
    'noPower',
    /^\{/,
    /from 5 to 5000 mm/,
  ],
  [
    'a lens with next to no power',
    glass({ radiiMm: [1e6, 'plane'], thicknessesMm: [3], glasses: ['F2'] }),
    '/relay/glass',
    'noPower',
    /^\{/,
    /from 5 to/,
  ],
  ['no glass', { ...good, relay: { kind: 'supplementary', focalLengthMm: 200 } }, '/relay/glass', 'missing', 'nothing', /surfaces/],
  ['a relay of the catalogue without glass', { ...good, relay: 'close-up-5d-58' }, '/relay/glass', 'missing', 'nothing', /surfaces/],
  ['an unknown relay', { ...good, relay: 'x' }, '/relay', 'unknownPart', '"x"', /GET \/api\/parts/],
  [
    'an unknown relay to start from',
    { ...good, relay: { from: 'x', glass: GLASS } },
    '/relay/from',
    'unknownPart',
    '"x"',
    /GET \/api\/parts/,
  ],
  [
    'a class without a focal length',
    { ...good, relay: { kind: 'supplementary', clearApertureMm: 40, glass: { class: 'singlet' } } },
    '/relay/focalLengthMm',
    'missing',
    'nothing',
    /focal length/,
  ],
  ['no relay', without('relay'), '/relay', 'missing', 'nothing', /object/],
  ['a wavelength beyond a glass', { ...good, wavelengthsNm: [587.56, 300] }, '/wavelengthsNm/1', 'outOfRange', '300', '370 to 2500 nm'],
  ['a wavelength beyond all', { ...good, wavelengthsNm: [99] }, '/wavelengthsNm/0', 'tooSmall', '99', 'at least 100'],
  ['13 wavelengths', { ...good, wavelengthsNm: Array(13).fill(550) }, '/wavelengthsNm', 'tooBig', /^\[550/, 'at most 12'],
  ['no wavelength', { ...good, wavelengthsNm: [] }, '/wavelengthsNm', 'tooSmall', '[]', 'at least 1'],
  ['17 fields', { ...good, fieldRadiiMm: Array(17).fill(1) }, '/fieldRadiiMm', 'tooBig', /^\[1/, 'at most 16'],
  ['no field', without('fieldRadiiMm'), '/fieldRadiiMm', 'missing', 'nothing', /slopes/],
  ['the field told twice', { ...good, slopes: [0] }, '/slopes', 'contradiction', '[0]', 'only one of the two'],
  ['a radius on the other side', { ...good, fieldRadiiMm: [0, -3] }, '/fieldRadiiMm/1', 'tooSmall', '-3', 'at least 0'],
  ['a slope beyond sense', { ...without('fieldRadiiMm'), slopes: [1e9] }, '/slopes/0', 'tooBig', '1000000000', 'at most 2'],
  ['no pupil', { ...good, pupilDiameterMm: 0 }, '/pupilDiameterMm', 'tooSmall', '0', 'at least 0.01'],
  ['a pupil of text', { ...good, pupilDiameterMm: '11' }, '/pupilDiameterMm', 'wrongType', '"11"', 'a number'],
  ['a pupil of null', { ...good, pupilDiameterMm: null }, '/pupilDiameterMm', 'wrongType', 'null', 'a number'],
  ['a pupil a mile away', { ...good, pupilDistanceMm: 1.6e6 }, '/pupilDistanceMm', 'tooBig', '1600000', 'at most 2300'],
  ['another focus', { ...good, focus: 'best' }, '/focus', 'notOneOf', '"best"', /"paraxial", "one-frame", "each-best"/],
  ['no focus', without('focus'), '/focus', 'missing', 'nothing', /one of/],
  ['a name that means nothing', { ...good, aperture: 3 }, '', 'unknownName', /^\{/, /contract/],
  ['a list', [good], '', 'wrongType', /^\[/, 'an object'],
];

describe('422 for', () => {
  test.each(CASES)('%s', async (_, body, path, code, given, expected) => {
    const { errors } = expectProblem(await trace(body), 422);
    const found = errors.find((e) => e.path === path);
    const text = (wanted: string | RegExp) => (typeof wanted === 'string' ? wanted : expect.stringMatching(wanted));
    expect(found, JSON.stringify(errors)).toMatchObject({ path, code, given: text(given), expected: text(expected) });
  });
  test('a glass and its range by name', async () => {
    const { errors } = expectProblem(await trace({ ...good, wavelengthsNm: [587.56, 300, 2600] }), 422);
    expect(errors.map((e) => e.path)).toEqual(['/wavelengthsNm/1', '/wavelengthsNm/2']);
    expect(errors[0]?.message).toContain('N-SF5');
  });
  test('a wavelength in which the power is gone', async () => {
    // 5000 mm at the most: f = R / (n - 1), with 1.85 in blue and 1.76 in the infrared.
    const weak = glass({ radiiMm: ['plane', -4040], thicknessesMm: [3], glasses: ['N-SF6'] });
    expect((await trace({ ...weak, wavelengthsNm: [450] })).status).toBe(200);
    const { errors } = expectProblem(await trace({ ...weak, wavelengthsNm: [450, 2000] }), 422);
    expect(errors[0]).toMatchObject({ path: '/wavelengthsNm/1', code: 'noPower', given: '2000' });
  });
  test('several faults at once, each at its place', async () => {
    const { errors } = expectProblem(await trace({ ...glass({ radiiMm: ['x', -54, -91] }), focus: 7, pupilDiameterMm: -1 }), 422);
    expect(errors.map((e) => e.path).sort()).toEqual(['/focus', '/pupilDiameterMm', '/relay/glass/radiiMm/0']);
  });
  test('never more than 20 of them', async () => {
    expectProblem(await trace({ ...good, fieldRadiiMm: Array(16).fill(-1), wavelengthsNm: Array(12).fill(1), focus: 0 }), 422);
    expectProblem(await trace(glass({ radiiMm: Array(16).fill(0), thicknessesMm: Array(15).fill(1), glasses: Array(15).fill('x') })), 422);
  });
});

test('what is not JSON, and what is asked in another way', async () => {
  expectProblem(await trace('{"relay": NaN}'), 400);
  expectProblem(await post(`${server.address}/api/relays/trace`, good, { 'content-type': 'text/plain' }), 415);
  expectProblem(await trace({ ...good, padding: 'x'.repeat(300_000) }), 413);
  expectProblem(await ask(`${server.address}/api/relays/trace`), 405);
});

describe('hostile numbers are answered with numbers or refused', () => {
  const steep = (r: number) => ({ radiiMm: [r, -r], thicknessesMm: [r], glasses: [4] });
  test.each<[string, object]>([
    ['a grain of glass', { ...glass({ radiiMm: [2.6, 'plane'], thicknessesMm: [0.05], glasses: [1.5] }) }],
    [
      '16 balls in a row',
      glass({
        radiiMm: Array.from({ length: 16 }, (_, i) => (i % 2 ? -9 : 9)),
        thicknessesMm: Array(15).fill(9),
        glasses: Array.from({ length: 15 }, (_, i) => (i % 2 ? 'air' : 4)),
      }),
    ],
    ['steep and dense', glass(steep(30))],
    ['a pupil wider than all', { ...good, pupilDiameterMm: 500 }],
    ['a pupil behind the glass', { ...good, pupilDistanceMm: -500 }],
    ['a pupil far away', { ...good, pupilDistanceMm: 2300, pupilDiameterMm: 0.01 }],
    ['steep beams', { ...without('fieldRadiiMm'), slopes: [2, -2, 1.5, 1e-300, 0] }],
    ['the farthest radii', { ...good, fieldRadiiMm: [500, 1e-300] }],
    ['light at the ends of its range', { ...good, wavelengthsNm: [370, 2500] }],
    ['the same wavelength twelve times', { ...good, wavelengthsNm: Array(12).fill(550) }],
    ['a pinhole of a lens', glass({ semiAperturesMm: [0.05, 0.05, 0.05] })],
    ['a lens with its focus in it', glass({ radiiMm: [20, 'plane'], thicknessesMm: [60], glasses: [1.5] })],
    ['a lens with its focus on its last face', glass({ radiiMm: [20, 'plane'], thicknessesMm: [60 - 1e-12], glasses: [1.5] })],
    [
      'planes only, but one',
      glass({ radiiMm: [...Array(15).fill('plane'), -100], thicknessesMm: Array(15).fill(0), glasses: Array(15).fill(1.7) }),
    ],
  ])('%s', async (_, body) => {
    for (const focus of ['paraxial', 'one-frame', 'each-best']) {
      const answer = await trace({ ...body, focus });
      expect([200, 422], answer.text).toContain(answer.status);
      expect(firstUnfit(answer.json)).toBeUndefined();
      expect(answer.text).not.toMatch(/null|NaN|Infinity/);
      if (answer.status === 422) expectProblem(answer, 422);
    }
  });
});
