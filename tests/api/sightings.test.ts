import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { sightingsAnswer } from '../../api/schemas/sightings.ts';
import type { Running } from '../../api/server.ts';
import { evaluate, type Pairing } from '../../core/index.ts';
import { sawOf } from '../../core/table.ts';
import opening from '../../data/opening.json' with { type: 'json' };
import { firstUnfit } from '../data/finite.ts';
import { benchPairing, boundsPairing } from './arbitrary-pairing.ts';
import { post, start } from './support.ts';

/** What was seen, over HTTP: as core tells it, refused by field, and whole and finite whatever is sent. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const OPENING = opening.pairing as unknown as Pairing;
const ask = (body: unknown) => post(`${server.address}/api/sightings`, body);
const RULER = { kind: 'ruler', acrossMm: { value: 2.31, plusMinus: 0.01 } } as const;

test('a ruler gives the magnification and the relay, as core has it', async () => {
  const { status, text, json } = await ask({ pairing: OPENING, sightings: [RULER] });
  expect(status, text.slice(0, 500)).toBe(200);
  const got = sightingsAnswer.parse(json);
  const saw = sawOf(OPENING, { sightings: [RULER] });
  expect(got.pairing).toEqual(JSON.parse(JSON.stringify(saw.pairing)));
  expect(got.results.map(({ path, value }) => [path, value])).toEqual([['/relay/focalLengthMm', saw.results[0]?.value]]);
  expect(got.results[0]?.says).toMatch(/^The relay's true focal length is 203\.5 ± 1\.0 mm, the objective's engraving taken as it stands/);
  expect(got.magnification?.says).toBe('You photograph at 10.173 ± 0.050×.');
  const m = got.figures.find(({ id }) => id === 'systemMagnification');
  expect(m?.before).toEqual(JSON.parse(JSON.stringify(evaluate(OPENING).answers.systemMagnification)));
  expect(m?.after).toEqual(JSON.parse(JSON.stringify(evaluate(saw.pairing).answers.systemMagnification)));
});

test('contradictions and nonsense are refused by their field', async () => {
  const refused = async (sightings: unknown, more: object = {}): Promise<string[]> => {
    const { status, json } = await ask({ pairing: OPENING, sightings, ...more });
    expect(status).toBe(422);
    return (json.errors as { path: string }[]).map(({ path }) => path);
  };
  const q = (value: number, plusMinus = 0.1) => ({ value, plusMinus });
  expect(await refused([])).toEqual(['/sightings']);
  expect(await refused(Array.from({ length: 13 }, () => RULER))).toEqual(['/sightings']);
  expect(await refused([{ kind: 'ruler', acrossMm: 2.31 }])).toEqual(['/sightings/0/acrossMm']);
  const bare = await ask({ pairing: OPENING, sightings: [{ kind: 'ruler', acrossMm: 2.31 }] });
  expect(bare.json.errors).toMatchObject([{ code: 'wrongType', given: '2.31', expected: expect.stringMatching(/value .*plusMinus/) }]);
  expect(await refused([{ kind: 'ruler', acrossMm: q(2.31, 0) }])).toEqual(['/sightings/0/acrossMm/plusMinus']);
  expect(await refused([RULER, { kind: 'glance' }])).toEqual(['/sightings/1/kind']);
  expect(await refused([{ kind: 'micrometer', divisions: 100, divisionUm: 10 }])).toEqual(['/sightings/0/divisions']);
  expect(await refused([{ kind: 'wall' }])).toEqual(['/sightings/0']);
  expect(await refused([{ kind: 'wall', cornerLossEv: q(1), cornerShare: q(0.5) }])).toEqual(['/sightings/0/cornerShare']);
  expect(await refused([{ kind: 'wall', halfRadiusMm: q(20) }])).toEqual(['/sightings/0/halfRadiusMm/value']);
  expect(await refused([{ kind: 'far', imageMm: q(900), thingMm: 800 }])).toEqual(['/sightings/0/thingMm']);
  expect(await refused([{ kind: 'extensions', firstAcrossMm: q(50), secondAcrossMm: q(60), apartMm: 20 }])).toEqual([
    '/sightings/0/secondAcrossMm',
  ]);
  expect(
    await refused([
      { ...RULER, gives: 'relay' },
      { ...RULER, gives: 'objective' },
    ]),
  ).toEqual(['/sightings/1/gives']);
  expect(await refused([{ kind: 'wall', cornerLossEv: q(1) }], { opening: '/stops/3/diameterMm' })).toEqual(['/opening']);
  expect(await refused([RULER], { pairing: { ...OPENING, infinitySpaceMm: -1 } })).toEqual(['/pairing/infinitySpaceMm']);
  expect(await refused([RULER], { pairing: { ...OPENING, relay: { kind: 'tube-lens' } } })).toEqual(['/pairing/relay/focalLengthMm']);
});

const value = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true, noDefaultInfinity: true });
const reading = (low: number, high: number) =>
  fc
    .tuple(value(low, high), value(1e-6, 1))
    .map(([v, share]) => ({ value: v, plusMinus: Math.max(1e-9, share * share * Math.min(high, Math.abs(v) + 0.01)) }));
const space = fc.option(value(0, 2000), { nil: undefined });
const wall = (name: string, low: number, high: number) =>
  fc
    .tuple(reading(low, high), space)
    .map(([r, infinitySpaceMm]) => ({ kind: 'wall', [name]: r, ...(infinitySpaceMm === undefined ? {} : { infinitySpaceMm }) }));
const sighting = fc.oneof(
  reading(0.001, 500).map((acrossMm) => ({ kind: 'ruler', acrossMm })),
  reading(2, 5000).map((pixels) => ({ kind: 'micrometer', divisions: 100, divisionUm: 10, pixels })),
  wall('cornerLossEv', 0, 12),
  wall('cornerShare', 0, 1),
  wall('onsetRadiusMm', 0.01, 30),
  wall('halfRadiusMm', 0.01, 30),
  reading(5, 500).map((imageMm) => ({ kind: 'far', imageMm, thingMm: 20_000 })),
  fc
    .tuple(reading(100, 500), reading(1, 99))
    .map(([firstAcrossMm, secondAcrossMm]) => ({ kind: 'extensions', firstAcrossMm, secondAcrossMm, apartMm: 30 })),
);

test('whatever is seen is answered whole and finite, or refused', async () => {
  const bodies = fc.record({
    pairing: fc.oneof(benchPairing, boundsPairing),
    sightings: fc.array(sighting, { minLength: 1, maxLength: 4 }),
  });
  let answered = 0;
  for (const body of fc.sample(bodies, { numRuns: 60, seed: 71_002 })) {
    const { status, text, json } = await ask(body);
    expect([200, 422], `${JSON.stringify(body)}: ${text.slice(0, 300)}`).toContain(status);
    expect(text).not.toMatch(/NaN|Infinity|null/);
    if (status !== 200) continue;
    answered++;
    expect(firstUnfit(json)).toBeUndefined();
    const { results, pairing } = sightingsAnswer.parse(json);
    for (const { low, value, high } of results) expect(low <= value && value <= high).toBe(true);
    // What is taken is a pairing like any other.
    evaluate(pairing as Pairing);
  }
  expect(answered).toBeGreaterThan(30);
});
