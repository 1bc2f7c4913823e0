import { describe, expect, it } from 'vitest';
import { numberIn } from '../../../../core/index.ts';
import { studyOf } from '../../../../core/lens/study.ts';
import { numberAt } from '../../../../core/table/at.ts';
import { curvature } from '../../../../core/table/stack/curvature.ts';
import { evaluateTable, planOf, tableCautions } from '../../../../core/table.ts';
import { random } from '../../../support/random.ts';
import { judgingIn, pairingWith, works } from '../../lens/rigs.ts';

const PLAN = planOf('stack');

/** How deep below a flat surface rays of a sine cross the axis that, but for it, would cross `deep` below it. */
function crossing(sine: number, ni: number, n: number, deep: number): number {
  const height = deep * Math.tan(Math.asin(sine / ni));
  return height / Math.tan(Math.asin(sine / n));
}

describe('the focus in a medium', () => {
  it('moves as rays bent by the law of sines at a flat surface do, close ones exactly, edge ones as the caution says', () => {
    const r = random(65_001);
    for (let i = 0; i < 20; i++) {
      const [ni, n, na] = [r.oneOf([1, 1, 1.33, 1.515]), r.between(1.3, 1.6), r.between(0.1, 0.75)];
      const pairing = pairingWith(
        { glass: undefined, focalLengthMm: 200 },
        {
          objective: { magnification: 10, na, referenceFocalLengthMm: 200, immersionIndex: ni, exitPupilFromShoulderMm: 0 },
          relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 100, frontPrincipalPlaneFromRimMm: 0 },
          subject: { depthMm: 1, index: n },
        },
      );
      const evaluation = evaluateTable(pairing, {}, undefined, PLAN);
      const moved = (sine: number): number => (crossing(sine, ni, n, 5.5) - crossing(sine, ni, n, 5)) / 0.5;
      expect(numberIn(evaluation.answers.focusPerRail)).toBeCloseTo(moved(1e-5), 8);
      const ahead = Math.abs(moved(na) / moved(1e-5) - 1);
      const told = tableCautions(evaluation, 'stack').find((caution) => caution.includes('edge of the aperture'));
      if (Math.abs(ahead - 0.02) > 1e-6) expect(told !== undefined).toBe(ahead > 0.02);
      const percents = Number(told?.match(/([\d.]+) %/)?.[1] ?? Number.NaN);
      if (told) expect(Math.abs(percents / 100 - ahead)).toBeLessThanOrEqual(0.06 * ahead);
    }
  });
});

describe('a curved field', () => {
  it("is the study's own where the relay's glass is known, and gives way to what was seen", () => {
    const flat = pairingWith();
    const study = studyOf(judgingIn(flat), 85);
    expect(study.curvatureAtSubjectUm).toBeGreaterThan(2);
    const T = judgingIn(flat).depthOfFieldUm;
    // The last frame ends half the curvature behind the back: the curved field wants one more.
    const pairing = pairingWith({}, { subject: { depthMm: (T + 20 * 0.8 * T - study.curvatureAtSubjectUm / 2) / 1000 } });
    const byGlass = evaluateTable(pairing, {}, works, PLAN);
    expect(numberAt(byGlass, curvature)).toBeCloseTo(study.curvatureAtSubjectUm, 9);
    expect(numberIn(byGlass.answers.stackFrames)).toBe(21);
    expect(numberIn(byGlass.answers.curvatureFrames)).toBe(1);
    const seen = evaluateTable(pairing, { fieldCurvatureUm: 0.4 * study.curvatureAtSubjectUm }, works, PLAN).answers;
    expect(numberIn(seen.curvatureFrames)).toBe(0);
    const { curvatureFrames, framesInAll, stackFrames } = evaluateTable(pairing, { fieldCurvatureUm: 0 }, works, PLAN).answers;
    expect(numberIn(curvatureFrames)).toBe(0);
    expect(numberIn(framesInAll)).toBe(numberIn(stackFrames));
    const without = evaluateTable(
      pairingWith({ glass: undefined, focalLengthMm: 198 }, { subject: { depthMm: 0.2 } }),
      {},
      undefined,
      PLAN,
    );
    expect(without.answers.curvatureFrames).toMatchObject({ state: 'unknown', missing: ['/fieldCurvatureUm'] });
    expect(numberIn(without.answers.framesInAll)).toBe(numberIn(without.answers.stackFrames));
  });
});
