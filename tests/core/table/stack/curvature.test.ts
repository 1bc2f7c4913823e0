import { describe, expect, it } from 'vitest';
import { Gap, type Step } from '../../../../core/figure.ts';
import type { FocusQuestion, GlassRelay } from '../../../../core/pairing/glassworks.ts';
import { curvature } from '../../../../core/table/stack/curvature.ts';

/** How far the focus moves over the picture, by glass made by hand: its spread on the sensor over m², in µm. */

const asked: FocusQuestion[] = [];
const glass = {
  focusSpreadMm: (question: FocusQuestion) => {
    asked.push(question);
    return 0.4;
  },
} as GlassRelay;
const discs = { walk: [0], radius: [5] };
const [S, e, frequency, spectrum, nm, d, F, m, n] = [70, -30, 60, 'single', 550, 40, 200, 10, 1.5] as const;
const ofTheRelay = curvature.needs[1] as Step<number>;
const of = (...values: unknown[]): unknown => (ofTheRelay.of as (...all: unknown[]) => unknown)(...values);

describe("the relay's curvature", () => {
  it('is the spread of its best foci, at the subject', () => {
    asked.length = 0;
    // 0.4 mm over 10², times 1.5 in water or glass: 6 µm. The corner's slope is 20 / 200.
    expect(of(glass, discs, S, e, frequency, spectrum, nm, d, F, m, n)).toBeCloseTo(6, 12);
    expect(asked).toEqual([
      { discs, pupilDistanceMm: 100, frequencyLpPerMm: frequency, spectrum, wavelengthNm: nm, cornerSlope: expect.closeTo(0.1, 12) },
    ]);
  });

  it('is to be looked at where anything that it takes is not known', () => {
    const all: unknown[] = [glass, discs, S, e, frequency, spectrum, nm, d, F, m, n];
    for (const missing of [0, 1, 4, 8, 9])
      expect(of(...all.with(missing, Gap.unknown('/relay/somewhere')))).toMatchObject({ state: 'unknown', missing: ['/fieldCurvatureUm'] });
  });
});
