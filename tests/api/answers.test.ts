import fc from 'fast-check';
import { hc } from 'hono/client';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { z } from 'zod';
import type { App } from '../../api/app.ts';
import { figuresSchema } from '../../api/schemas/answer.ts';
import { partsSchema } from '../../api/schemas/parts.ts';
import { comparisonSchema, reportSchema, sweepSchema } from '../../api/schemas/report.ts';
import type { Running } from '../../api/server.ts';
import { FIGURE_IDS, type Pairing, RADIUS_IDS, report } from '../../core/index.ts';
import { TABLE_FIGURES } from '../../core/table.ts';
import { firstUnfit } from '../data/finite.ts';
import { benchPairing, boundsPairing } from './arbitrary-pairing.ts';
import { ask, post, start } from './support.ts';

/** Whatever the contract lets in is answered whole and finite, in the form that openapi.json describes. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const RUNS = Number(process.env.RUNS ?? 50);

async function answered<S extends z.ZodType>(name: string, body: unknown, schema: S): Promise<z.infer<S>> {
  const answer = await post(`${server.address}/api/pairings/${name}`, body);
  expect(answer.status, answer.text.slice(0, 500)).toBe(200);
  expect(answer.text).not.toMatch(/NaN|Infinity|null/);
  expect(firstUnfit(answer.json)).toBeUndefined();
  return schema.parse(answer.json);
}

const KINDS = { bench: benchPairing, 'anywhere in the bounds': boundsPairing };

describe.each(Object.entries(KINDS))('pairings on the %s', (_, pairings) => {
  const sample = fc.sample(pairings, { numRuns: RUNS, seed: 20261 });

  test(`${RUNS} reports`, async () => {
    const states = new Set<string>();
    for (const pairing of sample) {
      const got = await answered('report', pairing, reportSchema);
      // What JSON keeps of core's own report: the route adds and loses nothing.
      expect(got).toEqual(JSON.parse(JSON.stringify(report(pairing))));
      for (const figure of Object.values(got.figures)) states.add(figure.state);
      for (const { relativeIllumination, lossEv } of got.vignetting.curve) expect(lossEv === undefined).toBe(relativeIllumination === 0);
      for (const figure of [...Object.values(got.figures), ...RADIUS_IDS.map((id) => got.vignetting[id])]) {
        if (figure.state !== 'known') continue;
        if (figure.low !== undefined) expect(figure.low).toBeLessThanOrEqual(figure.value + 1e-9 * Math.abs(figure.value));
        if (figure.high !== undefined) expect(figure.high).toBeGreaterThanOrEqual(figure.value - 1e-9 * Math.abs(figure.value));
      }
    }
    expect([...states].sort()).toEqual(['known', 'none', 'unknown', 'unlimited']);
  }, 60_000);

  test('and every tenth of them beside its neighbour', async () => {
    let count = 0;
    for (let i = 0; i + 1 < sample.length; i += 10, count++) {
      const got = await answered('compare', { pairings: [sample[i], sample[i + 1]] }, comparisonSchema);
      expect(got.differences.map(({ from, of }) => [from, of])).toEqual([[0, 1]]);
    }
    expect(count).toBe(Math.ceil((RUNS - 1) / 10));
  }, 60_000);

  test('and every tenth of them varied', async () => {
    for (let i = 0; i < sample.length; i += 10) {
      const { objective } = sample[i] as Pairing;
      const at = typeof objective.magnification === 'number' ? objective.magnification : objective.magnification.value;
      const body = { pairing: sample[i], vary: '/objective/magnification', from: at, to: at, steps: 2 };
      const got = await answered('sweep', body, sweepSchema);
      for (const { figures } of got.reports) figuresSchema.parse(figures);
    }
  }, 60_000);
});

describe('what the reading routes list', () => {
  test('parts: each can be named at once', async () => {
    const { json } = await ask(`${server.address}/api/parts`);
    const parts = partsSchema.parse(json);
    expect([parts.objectives.length, parts.relays.length, parts.sensors.length]).toEqual([19, 23, 14]);
    const most = Math.max(parts.objectives.length, parts.relays.length, parts.sensors.length);
    for (let i = 0; i < most; i++) {
      const [objective, relay, sensor] = [parts.objectives[i % 19]?.id, parts.relays[i % 23]?.id, { from: parts.sensors[i % 14]?.id }];
      await answered('report', { objective, relay, sensor, infinitySpaceMm: 50 }, reportSchema);
    }
  });
  test('figures: every one of a report and of the table, each with unit, symbol, words and source', async () => {
    const { json } = await ask(`${server.address}/api/figures`);
    const list = json.figures as { id: string; unit: string; symbol: string; words: string; source: string; group: string }[];
    expect(list.map((f) => f.id)).toEqual([...FIGURE_IDS, ...RADIUS_IDS, ...TABLE_FIGURES.map(({ id }) => id)]);
    expect(new Set(list.map((f) => f.id)).size).toBe(list.length);
    for (const { id, ...rest } of list) for (const text of Object.values(rest)) expect(text.length, id).toBeGreaterThan(0);
    // The unit that is listed is the unit that is answered.
    const pairing = { objective: 'plan-10x-0-25-200', relay: 'tube-lens-180', sensor: 'full-frame-45mp', infinitySpaceMm: 90 };
    const { figures, vignetting } = await answered('report', pairing, reportSchema);
    const all: Record<string, unknown> = {
      ...figures,
      ...vignetting,
      ...Object.fromEntries(TABLE_FIGURES.map((figure) => [figure.id, figure])),
    };
    for (const { id, unit } of list) expect((all[id] as { unit: string }).unit, id).toBe(unit);
  });
});

test('a client that is typed from the app knows what each route takes and answers', async () => {
  const { api } = hc<App>(server.address);
  const json = {
    objective: 'plan-10x-0-25-200',
    relay: { from: 'close-up-5d-58', powerDioptre: 4 },
    sensor: 'full-frame-45mp',
    infinitySpaceMm: 60,
  };
  const answer = await api.pairings.report.$post({ json });
  if (answer.status !== 200) throw new Error('refused');
  const { figures } = await answer.json();
  expect(figures.systemMagnification.state === 'known' && figures.systemMagnification.value).toBeCloseTo(12.5, 12);
  // @ts-expect-error no figure of that name
  expect(figures.systemMagnificaton).toBeUndefined();
  // @ts-expect-error a pairing has a sensor
  const refused = await api.pairings.report.$post({ json: { ...json, sensor: undefined } });
  if (refused.status !== 422) throw new Error('answered');
  expect((await refused.json()).errors[0]?.path).toBe('/sensor');
});
