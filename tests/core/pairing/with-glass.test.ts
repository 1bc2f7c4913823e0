import { describe, expect, it } from 'vitest';
import { type Answer, evaluate, interval, numberIn, type Pairing } from '../../../core/index.ts';
import { type GlassRelay, type Glassworks, glassOf, type SharpQuestion } from '../../../core/pairing/glassworks.ts';
import { inputsOf } from '../../../core/pairing/inputs.ts';
import * as leaves from '../../../core/pairing/leaves.ts';

/** What a pairing asks of its relay's glass, and what it makes of the answers: glass by hand. */

const asked: SharpQuestion[] = [];
const glass = (more: Partial<GlassRelay> = {}): GlassRelay => ({
  focalLengthMm: 200,
  backFocalLengthMm: 190,
  thicknessMm: 10,
  frontPrincipalPlaneMm: 0,
  clearDiameterMm: 400,
  mappingFactor: () => 1,
  sharpRadiusMm: (question) => {
    asked.push(question);
    return 12;
  },
  focusSpreadMm: () => 0,
  ...more,
});
const works = (relay: ReturnType<Glassworks['relay']> = glass()): Glassworks => ({ relay: () => relay });
const exact = (value: number) => ({ value, plusMinus: 0 });
const pairing = (change: object = {}): Pairing => ({
  objective: { magnification: exact(10), na: exact(0.25), referenceFocalLengthMm: 200, exitPupilFromShoulderMm: exact(-30) },
  relay: {
    kind: 'supplementary',
    glass: { radiiMm: [200, -200], thicknessesMm: [10], glasses: ['N-BK7'] },
    clearApertureMm: exact(400),
    frontPrincipalPlaneFromRimMm: exact(0),
  },
  sensor: { widthMm: 32, heightMm: 24, pixelPitchUm: 4 },
  infinitySpaceMm: exact(70),
  ...change,
});

describe("a relay's glass in a pairing", () => {
  it('is asked how far it is sharp, with the pupil where it is', () => {
    asked.length = 0;
    // 30 mm behind the objective's shoulder is 100 mm from the rim.
    const { answers } = evaluate(pairing(), works());
    expect(asked[0]).toMatchObject({ pupilDistanceMm: 100, scaleMm: 200, limitMm: 30 });
    expect(numberIn(answers.sharpCircleMm)).toBe(24);
  });

  it('is none where what is said of it is no lens', () => {
    expect(glassOf(pairing(), works([{ path: '/relay/glass', code: 'noLens', message: '', given: '', expected: '' }]))).toBeUndefined();
    expect(glassOf(pairing({ relay: { kind: 'tube-lens', focalLengthMm: 200 } }), works())).toBeUndefined();
    expect(glassOf(pairing(), works())).toMatchObject({ thicknessMm: 10 });
  });

  it('that nobody works out is told, or where nothing hangs on it is left open', () => {
    expect(() => glassOf(pairing(), undefined)).toThrow('a relay with glass is worked out with glassworks');
    const { values, list } = inputsOf(pairing());
    expect([values.get(leaves.givenFocalLength), values.get(leaves.power)]).toMatchObject([
      { state: 'unknown', missing: ['/relay/focalLengthMm'] },
      { state: 'unknown', missing: ['/relay/powerDioptre'] },
    ]);
    expect(list.filter(({ leaf }) => leaf === leaves.givenFocalLength || leaf === leaves.power)).toEqual([]);
  });

  it('may map angles so that the corner gets the fourth power of the cosine, where nobody knows it', () => {
    // tan 20 / 200: 1 / (1 + 0.01)². Wide enough openings, and all else exact.
    const { answers } = evaluate(
      pairing({ relay: { ...pairing().relay, kind: 'tube-lens', glass: undefined, focalLengthMm: exact(200) } }),
    );
    const [low, value, high] = interval(answers.cornerIllumination) as readonly [number, number, number];
    expect([value, high]).toEqual([1, 1]);
    expect(low).toBeCloseTo(1 / 1.01 ** 2, 9);
  });
});

describe('the good field', () => {
  const bare = {
    objective: { magnification: exact(10), na: exact(0.25), referenceFocalLengthMm: 200, exitPupilFromShoulderMm: exact(0) },
    relay: { kind: 'tube-lens', focalLengthMm: exact(200), frontPrincipalPlaneFromRimMm: exact(0) },
  } as const;
  const good = (objective: object, relay: object): Answer =>
    evaluate(pairing({ objective: { ...bare.objective, ...objective }, relay: { ...bare.relay, ...relay } })).answers.goodFieldMm;

  it('is told by whichever circle is known', () => {
    expect(numberIn(good({ fieldNumberMm: exact(20) }, {}))).toBeCloseTo(2, 9);
    expect(numberIn(good({}, { imageCircleMm: exact(30) }))).toBeCloseTo(3, 9);
    // A rim as wide as the pupil, 70 mm before it: half of the light at a walk of 0.404 of its 10 mm, both ways from the middle.
    expect(numberIn(good({}, { clearApertureMm: exact(10) }))).toBeCloseTo((2 * 200 * 4.0397) / 70 / 10, 3);
    expect(good({}, {}).state).toBe('unknown');
  });
});

describe('the frames of a subject', () => {
  it('follow from the depth, a fifth of it shared, however fine it is', () => {
    const { answers } = evaluate(
      pairing({
        objective: { ...pairing().objective, magnification: exact(50), na: exact(0.8) },
        relay: { kind: 'tube-lens', focalLengthMm: exact(200), clearApertureMm: exact(100), frontPrincipalPlaneFromRimMm: exact(0) },
        subject: { depthMm: 0.2 },
      }),
    );
    const depth = numberIn(answers.depthOfFieldUm) as number;
    // 0.55 / 0.64 + 4 / (50 · 0.8).
    expect(depth).toBeCloseTo(0.55 / 0.64 + 0.1, 6);
    expect(numberIn(answers.framesForSubject)).toBe(1 + Math.ceil((200 - depth) / (0.8 * depth)));
  });
});
