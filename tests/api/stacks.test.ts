import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Running } from '../../api/server.ts';
import opening from '../../data/opening.json' with { type: 'json' };
import { post, start } from './support.ts';

/** What the stack's route answers beside its figures, and how it refuses. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const ask = (more: object) => post(`${server.address}/api/stacks`, { pairing: opening.pairing, ...more });
const objective = opening.pairing.objective;

describe('POST /api/stacks', () => {
  test('takes the subject that is sent along for the one in the pairing', async () => {
    const { json } = await ask({ subject: { depthMm: 0.8 }, overlap: 0.2, exposureS: 0.5, settlingS: 1.5 });
    const { stackFrames, frameStepUm, stackTimeS } = json.figures as Record<string, { value: number }>;
    const depth = (json.conventions as { chosen: boolean; depthUm: number }[]).find(({ chosen }) => chosen)?.depthUm ?? Number.NaN;
    expect(frameStepUm?.value).toBeCloseTo(0.8 * depth, 12);
    expect(stackFrames?.value).toBe(1 + Math.ceil((800 - depth) / (0.8 * depth)));
    expect(stackTimeS?.value).toBe(2 * (stackFrames?.value ?? 0));
    expect(json.sentence).toContain(`${stackFrames?.value} frames`);
  });

  test('names each convention with its depth, up to four times apart in the wave term alone', async () => {
    const { json } = await ask({ pairing: { ...opening.pairing, depth: { convention: 'high-aperture', blurUm: 0.01 } } });
    const all = json.conventions as { convention: string; chosen: boolean; depthUm: number; frames: number }[];
    const of = (name: string) => all.find(({ convention }) => convention === name)?.depthUm ?? Number.NaN;
    expect(all.filter(({ chosen }) => chosen).map(({ convention }) => convention)).toEqual(['high-aperture']);
    expect(of('double-wave-term') / of('half-wave-term')).toBeCloseTo(4, 1);
    expect(json.sentence).toContain('high apertures');
    for (const { frames, depthUm } of all) expect(frames).toBe(1 + Math.ceil((400 - depthUm) / (0.8 * depthUm)));
  });

  test('tells a table for ids, parts, what is owned and all, the weakest first, in which the same part has the same stack', async () => {
    const { json } = await ask({ objectives: ['plan-20x-0-4-200', objective, { from: 'plan-20x-0-4-200', na: 0.3 }], exposureS: 1 });
    const table = json.table as { name: string; frames: number; timeS: number; magnification: number }[];
    expect(table).toHaveLength(3);
    expect(table[0]).toMatchObject({
      name: objective.name,
      frames: (json.figures as Record<string, { value: number }>).stackFrames?.value,
    });
    expect(table.map(({ magnification }) => magnification)).toEqual([10, 20, 20]);
    expect((await ask({ objectives: 'all' })).json.table).not.toHaveLength(0);
    expect((await ask({ objectives: 'owned' })).json.table).toEqual([]);
    expect((await ask({})).json.table).toBeUndefined();
  });

  test('tells of an objective that cannot stand there why', async () => {
    const { json } = await ask({ objectives: [{ ...objective, na: 1.2 }] });
    const [row] = json.table as { name: string; why: string }[];
    expect(Object.keys(row ?? {})).toEqual(['name', 'why']);
    expect(row?.why).toContain('refractive index');
  });

  test('refuses objectives by their field, and more than a table holds', async () => {
    const paths = async (objectives: unknown): Promise<string[]> => {
      const { status, json } = await ask({ objectives });
      expect(status).toBe(422);
      return (json.errors as { path: string }[]).map(({ path }) => path);
    };
    expect(await paths(['no-such-thing'])).toEqual(['/objectives/0']);
    expect(await paths([objective, { ...objective, na: -1 }])).toEqual(['/objectives/1/na']);
    expect(await paths([objective, { from: 'no-such-thing' }])).toEqual(['/objectives/1/from']);
    expect(await paths(Array(61).fill(objective))).toEqual(['/objectives']);
    expect(await paths([])).toEqual(['/objectives']);
    expect(await paths('mine')).toEqual(['/objectives']);
    expect(await paths(3)).toEqual(['/objectives']);
    expect(await paths([{ magnification: 10 }])).toEqual(['/objectives/0/na', '/objectives/0/referenceFocalLengthMm']);
  });

  test('counts no further than 100,000 frames, says so, and stays finite', async () => {
    const { text, json } = await ask({ subject: { depthMm: 1000 }, overlap: 0.95 });
    const { stackFrames } = json.figures as Record<string, { state: string; why: string }>;
    expect(stackFrames).toMatchObject({ state: 'none' });
    expect(stackFrames?.why).toContain('100,000');
    expect(text).not.toMatch(/NaN|Infinity|null/);
  });
});

describe('POST /api/lighting', () => {
  test('says how high light comes in, and whether the diffuser fits', async () => {
    const { json } = await post(`${server.address}/api/lighting`, {
      pairing: { ...opening.pairing, objective: { ...objective, workingDistanceMm: 10, noseDiameterMm: 20 } },
      diffuserDiameterMm: 20,
      diffuserHeightMm: 8,
    });
    expect(json.sentence).toContain('up to 45°');
    expect(json.sentence).toContain('a diffuser of 20 mm fits with 2 mm to spare');
  });
});
