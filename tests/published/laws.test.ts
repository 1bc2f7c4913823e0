import { describe, expect, it } from 'vitest';
import { diffractionMtf, FIGURE_IDS, RADIUS_IDS } from '../../core/index.ts';
import { TABLE_FIGURES } from '../../core/table.ts';
import { EQUAL_DISCS, LAWS } from './laws.ts';
import { agrees } from './printed.ts';
import { type Changes, told } from './rig.ts';
import { CIRCLE_MTF } from './rows/diffraction.ts';
import { ROWS } from './rows/index.ts';

describe('laws', () => {
  for (const { law, pairs } of LAWS)
    it(law, () => {
      for (const [core, due] of pairs()) expect(Math.abs(core - due), `${core} is not ${due}`).toBeLessThanOrEqual(1e-9 * Math.max(1, due));
    });
});

/** A corner at `v` of the way to the dark. */
const equalDiscs = (v: number): Changes => ({ ...EQUAL_DISCS, sensor: { widthMm: 1.6 * 20 * v, heightMm: 1.2 * 20 * v } });

describe('the published contrast of a round pupil, read as the light that a rim as wide as the pupil leaves (from memory)', () => {
  it.each(CIRCLE_MTF)('a corner at %d of the way to the dark keeps %s', (v, text) => {
    expect(diffractionMtf(v)).toBeCloseTo(told(equalDiscs(v), 'cornerIllumination'), 12);
    expect(agrees(told(equalDiscs(v), 'cornerIllumination'), text)).toBe(true);
  });
  it.each(CIRCLE_MTF)('and backward: at %d of the way %s is left, by circle and by focal length', (v, text) => {
    const half = 0.0005;
    const inside = { ...equalDiscs(v), litThreshold: Number(text) + half };
    const outside = { ...equalDiscs(v), litThreshold: Number(text) - half };
    expect(told(inside, 'litCircleMm')).toBeLessThanOrEqual(40 * v);
    expect(told(outside, 'litCircleMm')).toBeGreaterThanOrEqual(40 * v);
    expect(told(inside, 'shortestCoveringFocalLengthMm')).toBeGreaterThanOrEqual(200);
    expect(told(outside, 'shortestCoveringFocalLengthMm')).toBeLessThanOrEqual(200);
  });
});

describe('every figure is held by a law, or by a published number that it misses when it is 1 % off', () => {
  it.each([...FIGURE_IDS, ...RADIUS_IDS, ...TABLE_FIGURES.map(({ id }) => id)])('%s', (id) => {
    const law = LAWS.find((l) => l.figures.includes(id));
    const row = ROWS.find(({ values }) =>
      values.some((v) => v.figure === id && !agrees(1.01 * v.of(), v.printed, { cutOff: v.cutOff ?? false, slack: v.slack ?? 0 })),
    );
    expect(law?.law ?? row?.id).toBeDefined();
  });
});
