import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { tableAnswer } from '../../api/schemas/table.ts';
import type { Running } from '../../api/server.ts';
import { TABLE_PARTS } from '../../api/table/parts.ts';
import { pairingSchema } from '../../core/index.ts';
import { buildSheet, evaluateTable, KNOWN_THREADS } from '../../core/table.ts';
import opening from '../../data/opening.json';
import { firstUnfit } from '../data/finite.ts';
import { post, start } from './support.ts';

/** What to screw together, asked of the server: rings of the box go in, parts in order come out. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const pairing = pairingSchema.parse(opening.pairing);
const ask = (body: object) => post(`${server.address}/api/builds`, { pairing, ...body });
const answer = tableAnswer('build', TABLE_PARTS.build);

describe('the build sheet', () => {
  test('is the one that core makes of the same rings', async () => {
    const rings = {
      adapters: [
        {
          ends: [
            { thread: 'M25', sex: 'female' },
            { thread: '58', sex: 'male' },
          ],
          lengthMm: 6,
          clearMm: 23,
        },
      ],
      tubes: [{ thread: '58', lengthMm: 51 }],
      camera: { thread: 'M42 x 1' },
      preferOwned: true,
    } as const;
    const { status, json } = await ask(rings);
    expect(status).toBe(200);
    answer.parse(json);
    const { adapters, tubes, ...rest } = rings;
    const sheet = buildSheet(evaluateTable(pairing, {}), {
      ...rest,
      tubes: [...tubes],
      adapters: adapters.map((a) => ({ ...a, ends: [...a.ends] })),
    });
    expect(json).toMatchObject(JSON.parse(JSON.stringify(sheet)));
    expect(json.sentence).toMatch(/^Leave \d+ mm between the objective's shoulder and the close-up lens/);
    expect(sheet.parts.filter(({ standing }) => standing === 'owned').length).toBe(3);
  });

  test.each([
    [
      {
        adapters: [
          {
            ends: [
              { thread: 'M26', sex: 'male' },
              { thread: '58', sex: 'male' },
            ],
          },
        ],
      },
      '/adapters/0/ends/0/thread',
      /M26 x 36 TPI or M26 x 0.75/,
    ],
    [{ tubes: [{ thread: 'bayonet', lengthMm: 3 }] }, '/tubes/0/thread', /names no thread/],
    [{ camera: { thread: '60' } }, '/camera/thread', /pitch is needed/],
    [
      {
        adapters: [
          {
            ends: [
              { thread: '58', sex: 'both' },
              { thread: '52', sex: 'male' },
            ],
          },
        ],
      },
      '/adapters/0/ends/0/sex',
      /"male", "female"/,
    ],
    [{ adapters: [{ ends: [{ thread: '58', sex: 'male' }] }] }, '/adapters/0/ends', /at least 2|is missing|must/],
    [{ tubes: [{ thread: '58', lengthMm: -1 }] }, '/tubes/0/lengthMm', /at least 0/],
    [{ tubes: Array.from({ length: 25 }, () => ({ thread: '58', lengthMm: 1 })) }, '/tubes', /at most 24/],
  ])('refuses by its field what it cannot use: %j', async (body, path, message) => {
    const { status, json } = await ask(body);
    expect(status).toBe(422);
    const errors = json.errors as { path: string; message: string; given: string; expected: string }[];
    expect(errors[0]?.path.startsWith(path), errors[0]?.path).toBe(true);
    expect(errors[0]?.message).toMatch(message);
    expect(errors[0]?.expected.length).toBeGreaterThan(3);
  });

  test('is whole and finite whatever lies in the box', async () => {
    const thread = fc.constantFrom(...KNOWN_THREADS.map(({ label }) => label), '5 x 1', '300 x 4', 'W 60 x 1');
    const end = fc.record({ thread, sex: fc.constantFrom('male', 'female') });
    const length = fc.double({ min: 0, max: 500, noNaN: true });
    const box = fc.record(
      {
        adapters: fc.array(fc.record({ ends: fc.tuple(end, end), lengthMm: length, owned: fc.boolean() }, { requiredKeys: ['ends'] }), {
          maxLength: 24,
        }),
        tubes: fc.array(
          fc.record(
            { thread, lengthMm: length, reachMm: fc.double({ min: 0, max: 300, noNaN: true }) },
            { requiredKeys: ['thread', 'lengthMm'] },
          ),
          { maxLength: 24 },
        ),
        camera: fc.record(
          { thread, sex: fc.constantFrom('male', 'female'), fromSensorMm: fc.double({ min: 0, max: 300, noNaN: true }) },
          { requiredKeys: ['thread'] },
        ),
        relayFront: end,
        relayRear: end,
        ownedOnly: fc.boolean(),
        preferOwned: fc.boolean(),
      },
      { requiredKeys: [] },
    );
    for (const body of fc.sample(box, { numRuns: 15, seed: 92_001 })) {
      const { status, text, json } = await ask(body);
      expect(status, `${JSON.stringify(body)}: ${text.slice(0, 300)}`).toBe(200);
      expect(text).not.toMatch(/NaN|Infinity|null/);
      expect(firstUnfit(json)).toBeUndefined();
      answer.parse(json);
    }
  });
});
