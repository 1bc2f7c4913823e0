import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Running } from '../../api/server.ts';
import { pairingSchema } from '../../core/index.ts';
import { closeUpClaims, closeUpSays, evaluateTable } from '../../core/table.ts';
import opening from '../../data/opening.json';
import { post, start } from './support.ts';

const OPENING_PAIRING = pairingSchema.parse(opening.pairing);

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

test('says what the page says, and holds claims against it', async () => {
  const settings = { cameraFocalLengthMm: 200, cameraMagnification: { value: 0.31, plusMinus: 0.01 }, cameraSubjectDistanceMm: 650 };
  const { json } = await post(`${server.address}/api/close-ups`, { pairing: OPENING_PAIRING, ...settings });
  const evaluation = evaluateTable(OPENING_PAIRING, settings);
  expect(json).toMatchObject({ says: closeUpSays(evaluation), claims: closeUpClaims(evaluation) });
});

test('refuses by the field that is wrong, saying what was given and what would do', async () => {
  const refused = async (body: object) => (await post(`${server.address}/api/close-ups`, { pairing: OPENING_PAIRING, ...body })).json;
  for (const [body, path] of [
    [{ cameraMagnification: 'half' }, '/cameraMagnification'],
    [{ cameraFocalLengthMm: 0 }, '/cameraFocalLengthMm'],
    [{ cameraMagnification: { value: 0.3, plusMinus: 0.5 } }, '/cameraMagnification/plusMinus'],
    [{ secondPowerDioptre: -2 }, '/secondPowerDioptre'],
  ] as const) {
    const answer = await refused(body);
    expect(answer).toMatchObject({ status: 422, errors: [{ path, expected: expect.any(String) }] });
  }
});
