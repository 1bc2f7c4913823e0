import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Running } from '../../api/server.ts';
import { circleInRectangle } from '../../core/index.ts';
import { firstUnfit } from '../data/finite.ts';
import reference from './reference-pairings.json' with { type: 'json' };
import { post, start } from './support.ts';

/** The six pairings of an independent brute-force program, through the API. */

let server: Running;
beforeAll(async () => {
  server = await start();
});
afterAll(() => server.stop());

const FIGURES = 1e-8;
const SHARES = 1e-6;
/** Shares and illumination come from counted areas: absolute, as a share of the whole. */
const COUNTED = new Set(['correctedShare', 'cornerIllumination']);

type Expected = Record<string, number> & { relativeIllumination: { radiusMm: number; value: number }[] };
const cases = reference.pairings as unknown as {
  id: string;
  pairing: { sensor: { widthMm: number; heightMm: number } };
  expected: Expected;
}[];
let compared = 0;

describe('the reference pairings through POST /api/pairings/report', () => {
  test.each(cases)('$id agrees', async ({ pairing, expected }) => {
    const { relativeIllumination: light, ...figures } = expected;
    const answer = await post(`${server.address}/api/pairings/report`, { ...pairing, radiiMm: light.map((p) => p.radiusMm) });
    expect(answer.status, answer.text).toBe(200);
    expect(firstUnfit(answer.json)).toBeUndefined();
    for (const [id, value] of Object.entries(figures)) {
      const figure = answer.json.figures[id];
      expect(figure?.state, id).toBe('known');
      const off = COUNTED.has(id) ? Math.abs(figure.value - value) / SHARES : Math.abs(figure.value / value - 1) / FIGURES;
      expect(off, `${id}: ${figure.value} for ${value}`).toBeLessThanOrEqual(1);
      compared++;
    }
    expect(answer.json.vignetting.curve.map((p: { radiusMm: number }) => p.radiusMm)).toEqual(light.map((p) => p.radiusMm));
    for (const [i, { radiusMm, value }] of light.entries()) {
      const got = answer.json.vignetting.curve[i].relativeIllumination;
      expect(Math.abs(got - value), `${radiusMm} mm: ${got} for ${value}`).toBeLessThanOrEqual(SHARES);
      compared++;
    }
  });

  test('were six, and 138 values of them', () => {
    expect(cases.length).toBe(6);
    expect(compared).toBe(6 * 17 + 6 * 6);
  });

  test('a circle and a rectangle share what the corrected share says', () => {
    for (const { pairing, expected } of cases) {
      const { widthMm, heightMm } = pairing.sensor;
      const area = circleInRectangle((expected.correctedCircleMm as number) / 2, widthMm, heightMm);
      expect(area / (widthMm * heightMm)).toBeCloseTo(expected.correctedShare as number, 6);
    }
  });
});
