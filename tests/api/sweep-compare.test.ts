import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { comparisonSchema, sweepSchema } from '../../api/schemas/report.ts';
import type { Running } from '../../api/server.ts';
import { FIGURE_IDS } from '../../core/index.ts';
import { type Answered, post, start } from './support.ts';

/** One number varied, and pairings side by side. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const send = (name: string, body: unknown): Promise<Answered> => post(`${server.address}/api/pairings/${name}`, body);
const pairing = {
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, fieldNumberMm: { value: 22, plusMinus: 2, origin: 'assumed' } },
  relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 40 },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
  infinitySpaceMm: 60,
};

describe('varying', () => {
  const sweep = async (change: object) => {
    const answer = await send('sweep', { pairing, vary: '/relay/focalLengthMm', from: 100, to: 400, steps: 7, ...change });
    expect(answer.status, answer.text).toBe(200);
    return sweepSchema.parse(answer.json);
  };
  const value = (answer: { state: string; value?: number } | undefined): number | undefined => answer?.value;

  test('gives evenly spaced values, both ends among them, and a report for each', async () => {
    const { vary, values, reports } = await sweep({});
    expect(vary).toBe('/relay/focalLengthMm');
    expect(values).toEqual([100, 150, 200, 250, 300, 350, 400]);
    expect(reports.length).toBe(7);
    reports.forEach(({ figures }, i) => {
      expect(Object.keys(figures)).toEqual(FIGURE_IDS);
      expect(value(figures.systemMagnification)).toBeCloseTo((values[i] as number) / 20, 12);
      expect(value(figures.correctedCircleMm)).toBeCloseTo((22 * (values[i] as number)) / 200, 12);
    });
  });
  test('says at each value what a report of that pairing says', async () => {
    const { values, reports } = await sweep({ steps: 4 });
    for (const [i, at] of values.entries()) {
      const { json } = await send('report', { ...pairing, relay: { ...pairing.relay, focalLengthMm: at } });
      expect(reports[i]?.figures).toEqual(json.figures);
      expect(reports[i]?.coverage).toEqual(json.coverage);
    }
  });
  test('finds the focal length at which the field reaches the corners', async () => {
    const covering = (Math.hypot(36, 24) / 22) * 200;
    const { reports } = await sweep({
      pairing: { ...pairing, objective: { ...pairing.objective, fieldNumberMm: 22 }, relay: { ...pairing.relay, imageCircleMm: 60 } },
      from: covering * 0.999,
      to: covering * 1.001,
      steps: 2,
    });
    expect(reports.map((r) => r.coverage.verdict)).toEqual(['crops', 'covers']);
    expect(value(reports[0]?.figures.shortestCoveringFocalLengthMm)).toBeCloseTo(covering, 6);
  });
  test('only the figures asked for', async () => {
    const { reports } = await sweep({ figures: ['systemMagnification', 'cornerIllumination'] });
    for (const { figures } of reports) expect(Object.keys(figures)).toEqual(['systemMagnification', 'cornerIllumination']);
  });
  test('backward, and 400 values', async () => {
    expect((await sweep({ from: 400, to: 100, steps: 3 })).values).toEqual([400, 250, 100]);
    const { values, reports } = await sweep({ steps: 400, figures: ['systemMagnification'] });
    expect([values.length, reports.length, values[0], values.at(-1)]).toEqual([400, 400, 100, 400]);
  }, 20_000);
  test('a ring, a quantity with its story, and a power that is not there yet', async () => {
    const ringed = { ...pairing, stops: [{ diameterMm: 20, fromShoulderMm: 30 }] };
    const rings = await sweep({ pairing: ringed, vary: '/stops/0/diameterMm', from: 5, to: 20, steps: 2 });
    expect(rings.reports.map((r) => value(r.figures.systemNa))).toEqual([0.125, 0.25]);
    const field = await sweep({ vary: '/objective/fieldNumberMm', from: 18, to: 22, steps: 2, figures: ['correctedCircleMm'] });
    expect(field.reports[0]?.figures.correctedCircleMm).toMatchObject({ value: 18, low: 16, high: 20, origin: 'assumed' });
    const power = await sweep({ vary: '/relay/powerDioptre', from: 4, to: 5, steps: 2 });
    expect(power.reports.map((r) => value(r.figures.relayFocalLengthMm))).toEqual([250, 200]);
  });
  test('parts by their ids', async () => {
    const named = { objective: 'plan-4x-0-1-200', relay: 'tube-lens-200', sensor: 'aps-c-23-5-24mp', infinitySpaceMm: 60 };
    const { reports } = await sweep({ pairing: named, vary: '/infinitySpaceMm', from: 0, to: 120, steps: 3 });
    const light = reports.map((r) => value(r.figures.cornerIllumination) as number);
    expect(light.toSorted((a, b) => b - a)).toEqual(light);
    expect(light[0]).toBeGreaterThan(light[2] as number);
  });
  test('a pairing whose own numbers contradict is blamed itself', async () => {
    const answer = await send('sweep', {
      pairing: { ...pairing, objective: { ...pairing.objective, na: 1.2 } },
      vary: '/infinitySpaceMm',
      from: 1,
      to: 2,
      steps: 2,
    });
    expect(answer.json.errors.map((e: { path: string }) => e.path)).toEqual(['/pairing/objective/na']);
  });
});

describe('comparing', () => {
  const compare = async (...pairings: object[]) => {
    const answer = await send('compare', { pairings });
    expect(answer.status, answer.text).toBe(200);
    return comparisonSchema.parse(answer.json);
  };
  const withRelay = (focalLengthMm: unknown) => ({ ...pairing, relay: { ...pairing.relay, focalLengthMm } });

  test('gives a report each, as the report route does, and each less the first', async () => {
    const three = [pairing, withRelay(250), withRelay(300)];
    const { reports, differences } = await compare(...three);
    for (const [i, one] of three.entries()) expect(reports[i]).toEqual((await send('report', one)).json);
    expect(differences.map((d) => [d.from, d.of])).toEqual([
      [0, 1],
      [0, 2],
    ]);
    expect(differences.map((d) => d.figures.systemMagnification)).toMatchObject([{ value: 2.5 }, { value: 5 }]);
  });
  test('what both share cancels: a pairing less itself is nothing, without ±', async () => {
    const { differences } = await compare(pairing, pairing);
    for (const [id, figure] of Object.entries(differences[0]?.figures ?? {}))
      if (figure.state === 'known') expect([figure.value, figure.low, figure.high], id).toEqual([0, 0, 0]);
    expect(differences[0]?.figures.correctedCircleMm).toMatchObject({ state: 'known', value: 0 });
  });
  test('the shared field number moves both circles: the difference keeps the ± that differs', async () => {
    const { reports, differences } = await compare(pairing, withRelay(250));
    // Circles 22 ± 2 and 27.5 ± 2.5 mm, of one and the same field number: their difference is FN/4, 5.5 ± 0.5.
    expect(reports[0]?.figures.correctedCircleMm).toMatchObject({ value: 22, low: 20, high: 24 });
    const shared = differences[0]?.figures.correctedCircleMm;
    expect(shared).toMatchObject({ value: 5.5, origin: 'assumed' });
    if (shared?.state !== 'known') throw new Error('unknown');
    expect(shared.low).toBeCloseTo(5, 9);
    expect(shared.high).toBeCloseTo(6, 9);
    // The magnification rests on nothing that is assumed: no ± at all.
    expect(differences[0]?.figures.systemMagnification).toMatchObject({ value: 2.5, low: 2.5, high: 2.5 });
  });
  test('on the same relay focal length nothing of the ± is left, whatever else differs', async () => {
    const { differences } = await compare(pairing, { ...pairing, infinitySpaceMm: 100 });
    expect(differences[0]?.figures.correctedCircleMm).toMatchObject({ value: 0, low: 0, high: 0 });
  });
  test('two objectives of one kind that are not the same one keep both their ±', async () => {
    const { differences } = await compare(pairing, { ...pairing, objective: { ...pairing.objective, name: 'another' } });
    const apart = differences[0]?.figures.correctedCircleMm;
    if (apart?.state !== 'known') throw new Error('unknown');
    expect(apart.value).toBe(0);
    expect(apart.high).toBeCloseTo(2 * Math.SQRT2, 9);
    expect(apart.low).toBeCloseTo(-2 * Math.SQRT2, 9);
  });
  test('twelve abreast', async () => {
    const { reports, differences } = await compare(...Array.from({ length: 12 }, (_, i) => withRelay(150 + 10 * i)));
    expect([reports.length, differences.length]).toEqual([12, 11]);
  });
});
