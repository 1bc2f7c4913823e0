import { describe, expect, it } from 'vitest';
import { LIMIT_NAMES, limitsOf, marginOf, meets, wantSchema } from '../../../core/choosing.ts';
import { WISH } from './wish.ts';

const WHOLE = { ...WISH, subject: { ...WISH.subject, heightMm: 1.6, depthMm: 0.4 } };

describe('a wish as limits', () => {
  it('asks of each figure what the wish says, and of nothing else', () => {
    const limits = limitsOf(wantSchema.parse(WHOLE)).map(({ name, figure, sense, limit }) => [name, figure, sense, limit]);
    expect(limits).toEqual([
      ['subjectFits', 'subjectFill', 'most', 1],
      ['subjectFills', 'subjectFill', 'least', 0.5],
      ['subjectCovered', 'goodFieldMm', 'least', 2],
      ['fieldNoNarrower', 'objectFieldWidthMm', 'least', 1],
      ['fieldNoWider', 'objectFieldWidthMm', 'most', 3],
      ['magnificationAtLeast', 'systemMagnification', 'least', 5],
      ['magnificationAtMost', 'systemMagnification', 'most', 12],
      ['finestDetail', 'resolvedDetailUm', 'most', 2],
      ['workingDistance', 'clearWorkingDistanceMm', 'least', 10],
      ['diffuser', 'clearWorkingDistanceMm', 'least', 12],
      ['lightCone', 'lightConeDeg', 'least', 30],
      ['cornerLight', 'cornerIllumination', 'least', 0.5],
      ['samplingAtLeast', 'samplingRatio', 'least', 1],
      ['samplingAtMost', 'samplingRatio', 'most', 2.5],
      ['length', 'totalLengthMm', 'most', 400],
    ]);
    expect(limitsOf({})).toEqual([]);
  });

  it('judges the frame in the place of the subject where the frame is asked for', () => {
    const names = limitsOf({ subject: { widthMm: 1 }, minCoveredShare: 0.9 }).map(({ name }) => name);
    expect(names).toEqual(['subjectFits', 'frameCovered']);
    expect(new Set([...limitsOf(wantSchema.parse(WHOLE)), ...limitsOf({ minCoveredShare: 1 })].map(({ name }) => name))).toEqual(
      new Set(LIMIT_NAMES),
    );
  });

  it('has a margin that is not negative exactly where it is met', () => {
    for (const sense of ['least', 'most'] as const)
      for (const limit of [0, 0.3, 7])
        for (const value of [0, 0.29, 0.3, 0.31, 6.9, 7, 7.1, Number.POSITIVE_INFINITY])
          expect(marginOf({ sense, limit }, value) >= 0, `${value} ${sense} ${limit}`).toBe(meets({ sense, limit }, value));
    // Two millimetres less a rounding are two millimetres.
    expect(meets({ sense: 'least', limit: 2 }, 2 - 2 ** -52)).toBe(true);
    expect(meets({ sense: 'most', limit: 0.3 }, 0.1 + 0.2)).toBe(true);
    expect(meets({ sense: 'least', limit: 2 }, 2 - 1e-9)).toBe(false);
    expect(marginOf({ sense: 'least', limit: 10 }, 12)).toBeCloseTo(0.2, 12);
    expect(marginOf({ sense: 'most', limit: 10 }, 12)).toBeCloseTo(-0.2, 12);
  });

  it('refuses a range that begins with its larger end, by its place', () => {
    const read = wantSchema.safeParse({ magnification: [12, 5] });
    expect(read.success).toBe(false);
    expect(read.error?.issues[0]).toMatchObject({ path: ['magnification'], message: expect.stringContaining('smaller end') });
  });
});
