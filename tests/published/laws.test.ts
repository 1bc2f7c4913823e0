import { describe, expect, it } from 'vitest';
import { judging } from '../../core/checked/judge.ts';
import { agrees } from '../../core/checked/printed.ts';
import { type Changes, told } from '../../core/checked/rig.ts';
import { CIRCLE_MTF, EQUAL_DISCS } from '../../core/checked/rows/diffraction.ts';
import { LAWS, SUBJECTS } from '../../core/checked/subjects.ts';
import { diffractionMtf, FIGURE_IDS, RADIUS_IDS } from '../../core/index.ts';
import { TABLE_FIGURES } from '../../core/table.ts';

describe('laws', () => {
  for (const law of LAWS)
    it(law.law, () => {
      const values = [...judging(law)];
      expect(values.length).toBeGreaterThan(0);
      for (const { holds, expected, computed, fault } of values) expect(holds, `${computed} is not ${expected} ${fault ?? ''}`).toBe(true);
      // A hundredth off, one side no longer equals the other.
      const off = { pairs: () => [...law.pairs()].map(([core, due]) => [core === 0 ? 0.01 : 1.01 * core, due] as const) };
      expect([...judging(off)].every(({ holds }) => !holds)).toBe(true);
    });
});

/** A corner at `v` of the way to the dark. */
const equalDiscs = (v: number): Changes => ({ ...EQUAL_DISCS, sensor: { widthMm: 1.6 * 20 * v, heightMm: 1.2 * 20 * v } });

describe('the published contrast of a round pupil, read as the light that a rim as wide as the pupil leaves (from memory)', () => {
  it.each(CIRCLE_MTF)('a corner at %d of the way to the dark keeps as much light as there is contrast', (v) => {
    expect(diffractionMtf(v)).toBeCloseTo(told(equalDiscs(v), 'cornerIllumination'), 12);
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
  const values = SUBJECTS.flatMap(({ checks }) => checks.flatMap((check) => check.values));
  it.each([...FIGURE_IDS, ...RADIUS_IDS, ...TABLE_FIGURES.map(({ id }) => id)])('%s', (id) => {
    const law = LAWS.some((l) => l.figures.includes(id));
    const value = values.some(
      (v) => v.figure === id && !agrees(1.01 * v.of(), v.printed, { cutOff: v.cutOff ?? false, slack: v.slack?.of() ?? 0 }),
    );
    expect(law || value).toBe(true);
  });
});
