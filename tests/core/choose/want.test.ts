import { describe, expect, it } from 'vitest';
import { subjectOf } from '../../../core/choose/want.ts';
import { marginOf, meets, wantSchema } from '../../../core/choosing.ts';

const passes = (want: unknown): boolean => wantSchema.safeParse(want).success;

describe('a wish', () => {
  it('is within these ends, both of them allowed', () => {
    const ends: [low: number, high: number, wish: (x: number) => unknown][] = [
      [0.01, 1, (x) => ({ minCoveredShare: x })],
      [0.01, 1, (x) => ({ minCornerIllumination: x })],
      [0.01, 1, (x) => ({ subject: { widthMm: 1, shareOfFrame: x } })],
      [0.001, 3000, (x) => ({ fieldWidthMm: [x, x] })],
      [0.01, 1000, (x) => ({ magnification: [x, x] })],
      [0.01, 100, (x) => ({ samplingRatio: [x, x] })],
      [0.05, 1000, (x) => ({ finestDetailUm: x })],
      [0, 90, (x) => ({ lightingClearance: { depthMm: 5, minConeDeg: x } })],
      [10, 9000, (x) => ({ maxLengthMm: x })],
      [0, 1e8, (x) => ({ maxPrice: x })],
    ];
    for (const [low, high, wish] of ends) {
      expect(
        [low, high].map((x) => passes(wish(x))),
        `${JSON.stringify(wish(low))}`,
      ).toEqual([true, true]);
      const beyond = [low === 0 ? -0.001 : low * 0.999, high * 1.001];
      expect(
        beyond.map((x) => passes(wish(x))),
        `${JSON.stringify(wish(low))}`,
      ).toEqual([false, false]);
    }
  });

  it('of two ends may have both alike, and begins with the smaller', () => {
    expect(passes({ magnification: [5, 5] })).toBe(true);
    const { error } = wantSchema.safeParse({ magnification: [5.1, 5] });
    expect(error?.issues[0]).toMatchObject({ params: { code: 'contradiction', expected: '[5, 5.1]' } });
  });

  it('has a subject as a pairing tells it: without what is left out, and without its share of the frame', () => {
    expect(subjectOf({})).toBeUndefined();
    const sides = subjectOf({ subject: { widthMm: 2, heightMm: undefined, depthMm: 1, shareOfFrame: 0.5 } });
    expect(sides).toEqual({ widthMm: 2, depthMm: 1 });
    expect(Object.keys(sides as object)).toEqual(['widthMm', 'depthMm']);
  });
});

describe('the margin of a limit', () => {
  it('is a part of the limit, of a limit of nothing the value itself', () => {
    expect(marginOf({ sense: 'least', limit: 0 }, 3)).toBe(3);
    expect(marginOf({ sense: 'most', limit: 0 }, 3)).toBe(-3);
    expect(marginOf({ sense: 'least', limit: 1 }, 3)).toBe(2);
    expect(marginOf({ sense: 'least', limit: 4 }, 3)).toBe(-0.25);
    expect(marginOf({ sense: 'least', limit: 4 }, Number.POSITIVE_INFINITY)).toBe(Number.POSITIVE_INFINITY);
  });
  it('is nothing where only rounding is between the value and its limit', () => {
    expect(marginOf({ sense: 'least', limit: 4 }, 4 - 1e-12)).toBe(0);
    expect(marginOf({ sense: 'most', limit: 4 }, 4 + 1e-12)).toBe(0);
    expect(marginOf({ sense: 'most', limit: 4 }, 4 - 1e-12)).toBe(0);
    expect(meets({ sense: 'least', limit: 4 }, 4 - 1e-10)).toBe(false);
    expect(marginOf({ sense: 'least', limit: 0 }, 1e-12)).toBe(1e-12);
  });
});
