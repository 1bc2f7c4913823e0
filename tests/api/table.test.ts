import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { tableAnswer } from '../../api/schemas/table.ts';
import type { Running } from '../../api/server.ts';
import { TABLE_PARTS } from '../../api/table/parts.ts';
import { evaluateTable, planOf, SETTINGS, TABLE_GROUP_NAMES, TABLE_GROUPS, tableFigureById } from '../../core/table.ts';
import { fullPairing } from '../core/support/full-pairing.ts';
import { fullSettings } from '../core/table/full-settings.ts';
import { firstUnfit } from '../data/finite.ts';
import { random } from '../support/random.ts';
import { benchPairing, boundsPairing } from './arbitrary-pairing.ts';
import { post, start } from './support.ts';

/** Each group of the table's figures has a route: every figure of it is there, whole and finite, as core has it. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const RUNS = 12;

describe.each(TABLE_GROUP_NAMES)('the group %s', (group) => {
  const part = TABLE_PARTS[group];
  const answerSchema = tableAnswer(group, part);
  const keys: readonly string[] = TABLE_GROUPS[group].settings.map(({ key }) => key);

  test('answers every figure of it with its unit, as core has it', async () => {
    const draw = random(91_001);
    for (let i = 0; i < 5; i++) {
      const pairing = fullPairing(draw);
      const settings = Object.fromEntries(Object.entries(fullSettings(draw)).filter(([key]) => keys.includes(key)));
      const { status, text, json } = await post(`${server.address}${part.path}`, { pairing, ...settings });
      expect(status, text.slice(0, 500)).toBe(200);
      const { figures, ...rest } = answerSchema.parse(json) as { figures: Record<string, { unit: string }>; assumptions: unknown };
      expect(Object.keys(figures)).toEqual(TABLE_GROUPS[group].figures.map(({ id }) => id));
      for (const { id } of TABLE_GROUPS[group].figures) expect(figures[id]?.unit).toBe(tableFigureById(id).unit);
      expect(figures).toEqual(JSON.parse(JSON.stringify(evaluateTable(pairing, settings, undefined, planOf(group)).answers)));
      expect(rest.assumptions).toBeInstanceOf(Array);
    }
  });

  test('answers whatever the contract lets in, whole and finite', async () => {
    const numbers = Object.fromEntries(
      SETTINGS.filter(({ key }) => keys.includes(key)).map((one) => [
        one.key,
        fc.option(fc.double({ min: one.bounds[0], max: one.bounds[1], noNaN: true, noDefaultInfinity: true }), { nil: undefined }),
      ]),
    );
    const bodies = fc.tuple(fc.oneof(benchPairing, boundsPairing), fc.record(numbers));
    for (const [pairing, settings] of fc.sample(bodies, { numRuns: RUNS, seed: 91_002 })) {
      const { status, text, json } = await post(`${server.address}${part.path}`, { pairing, ...settings });
      expect(status, `${JSON.stringify({ pairing, ...settings })}: ${text.slice(0, 500)}`).toBe(200);
      expect(text).not.toMatch(/NaN|Infinity|null/);
      expect(firstUnfit(json)).toBeUndefined();
      answerSchema.parse(json);
    }
  });

  test('refuses by field what is no setting, or out of bounds', async () => {
    const pairing = fullPairing(random(91_003));
    const refused = async (body: object): Promise<string[]> => {
      const { status, json } = await post(`${server.address}${part.path}`, body);
      expect(status).toBe(422);
      return (json.errors as { path: string }[]).map(({ path }) => path);
    };
    expect(await refused({ pairing, nothingOfTheKind: 1 })).toEqual(['']);
    expect(await refused({})).toEqual(['/pairing']);
    expect(await refused({ pairing: { ...pairing, infinitySpaceMm: -1 } })).toEqual(['/pairing/infinitySpaceMm']);
    for (const one of SETTINGS.filter(({ key }) => keys.includes(key)))
      expect(await refused({ pairing, [one.key]: 2 * one.bounds[1] + 1 })).toEqual([`/${one.key}`]);
  });
});
