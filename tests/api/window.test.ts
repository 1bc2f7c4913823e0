import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { windowSchema } from '../../api/schemas/window.ts';
import type { Running } from '../../api/server.ts';
import { limitsOf, windowOf } from '../../core/choosing.ts';
import { pairingSchema } from '../../core/index.ts';
import { type Answered, expectProblem, post, start } from './support.ts';

/** Between which values of one quantity a wish is met. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const send = (body: unknown): Promise<Answered> => post(`${server.address}/api/choices/window`, body);
const pairing = {
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, fieldNumberMm: 22 },
  relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 40 },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
  infinitySpaceMm: 60,
  subject: { widthMm: 9, index: 1.33 },
};
const ask = async (body: object) => {
  const answer = await send({ pairing, ...body });
  expect(answer.status, answer.text).toBe(200);
  return windowSchema.parse(answer.json);
};

describe('a window', () => {
  test('is the one that core finds, before the subject wished for, to the last digit', async () => {
    const want = { subject: { widthMm: 1.5 }, magnification: [8, 12], minCornerIllumination: 0.5 } as const;
    const answer = await ask({ want });
    const before = pairingSchema.parse({ ...pairing, subject: { widthMm: 1.5, index: 1.33 } });
    expect(answer).toEqual(windowOf({ pairing: before, vary: '/relay/focalLengthMm', limits: limitsOf(want as never) }));
    expect(answer).toMatchObject({ vary: '/relay/focalLengthMm', from: 50, to: 600, now: 200, window: [[160, 240]] });
    expect(answer.says).toMatch(/^Any relay between 160 and 240 mm; below it the magnification is too low, above it/);
    expect(answer.limits.find(({ name }) => name === 'subjectFits')?.intervals).toEqual([[50, 320]]);
  });
  test('of the space and of the opening, in a range asked for, from parts by their ids', async () => {
    const named = { objective: 'plan-4x-0-1-200', relay: 'tube-lens-200', sensor: 'aps-c-23-5-24mp', infinitySpaceMm: 60 };
    const light = { minCornerIllumination: 0.8 };
    const space = await ask({ pairing: named, want: light, vary: '/infinitySpaceMm', from: 0, to: 500 });
    expect(space.ends).toMatchObject([{ side: 'above', limits: ['cornerLight'] }]);
    const opening = await ask({ pairing: named, want: light, vary: '/relay/clearApertureMm', to: 100 });
    expect(opening).toMatchObject({ to: 100, ends: [{ side: 'below', limits: ['cornerLight'] }] });
  });
  test('with glass that is traced at each space, while others are answered', async () => {
    const traced = { ...pairing, sensor: { ...pairing.sensor, widthMm: 23.5, heightMm: 15.6 } };
    const listed = (await (await fetch(`${server.address}/api/parts`)).json()) as { relays: { id: string; glass?: object }[] };
    const id = listed.relays.find((relay) => relay.glass !== undefined)?.id;
    let done = false;
    const slow = ask({ pairing: { ...traced, relay: id }, want: { minCoveredShare: 0.5 }, vary: '/infinitySpaceMm', to: 100 }).finally(
      () => {
        done = true;
      },
    );
    let others = 0;
    while (!done) {
      expect((await fetch(`${server.address}/api/health`)).status).toBe(200);
      others++;
    }
    expect(others).toBeGreaterThan(3);
    expect((await slow).limits[0]).toMatchObject({ how: 'roots', intervals: [[0, expect.any(Number)]] });
    const varied = await ask({ pairing: { ...traced, relay: id }, want: { minCoveredShare: 0.5 } });
    expect(varied.held.at(-1)).toBe('but not its glass: another focal length is another lens');
    expect(varied.limits[0]?.without).toContain('sharp');
  });
});

describe('what cannot be asked', () => {
  test.each([
    ['no wish', { want: undefined }, '/want', 'missing'],
    ['a wish that means nothing', { want: { colour: 1 } }, '/want', 'unknownName'],
    ['a wish that begins with its larger end', { want: { magnification: [9, 3] } }, '/want/magnification', 'contradiction'],
    ['another quantity', { vary: '/objective/na' }, '/vary', 'notOneOf'],
    ['a range that is none', { from: 300, to: 200 }, '/from', 'contradiction'],
    ['a range beyond all relays', { to: 1e9 }, '/to', 'tooBig'],
    ['no pairing', { pairing: undefined }, '/pairing', 'missing'],
    ['a part that is not there', { pairing: { ...pairing, relay: 'nothing' } }, '/pairing/relay', 'unknownPart'],
    ['a number out of bounds', { pairing: { ...pairing, infinitySpaceMm: -1 } }, '/pairing/infinitySpaceMm', 'tooSmall'],
    [
      'a pairing that contradicts itself',
      { pairing: { ...pairing, objective: { ...pairing.objective, na: 1.2 } } },
      '/pairing/objective/na',
      'contradiction',
    ],
    ['a name that means nothing', { steps: 3 }, '', 'unknownName'],
  ])('%s', async (_, change, path, code) => {
    const { errors } = expectProblem(await send({ pairing, want: { finestDetailUm: 2 }, ...change }), 422);
    expect(errors[0]).toMatchObject({ path, code });
  });
});
