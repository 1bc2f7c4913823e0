import { describe, expect, test } from 'vitest';
import {
  type Answer,
  contradictions,
  evaluate,
  figureById,
  numberIn,
  type Pairing,
  PairingError,
  report,
  sweep,
  workingOf,
} from '../../../core/index.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { prescription } from '../../../core/trace/prescription.ts';
import { BENT } from '../contrast/lenses.ts';
import { GLASS, pairingWith, works } from './rigs.ts';

const known = (answer: Answer): number => {
  const value = numberIn(answer);
  if (value === undefined) throw new Error(`expected a number, got ${JSON.stringify(answer)}`);
  return value;
};
const sharpCircle = (pairing: Pairing): number => known(report(pairing, works).figures.sharpCircleMm);
const problems = (pairing: Pairing): string[] => contradictions(pairing, works).map((p) => `${p.path} ${p.code}`);

describe("a relay's glass in a pairing", () => {
  test('gives focal length and principal plane, which no guess stands in for', () => {
    const { effectiveFocalLengthMm, frontPrincipalPlaneMm } = cardinal(prescription(BENT, 587.5618));
    const told = report(pairingWith(), works);
    expect(known(told.figures.relayFocalLengthMm)).toBeCloseTo(effectiveFocalLengthMm, 10);
    expect(known(told.figures.cornerChiefRayDeg)).toBeCloseTo(
      (Math.atan((Math.hypot(36, 24) / 2 / effectiveFocalLengthMm) * (1 - (85 + frontPrincipalPlaneMm) / effectiveFocalLengthMm)) * 180) /
        Math.PI,
      8,
    );
    expect(told.assumptions.map((a) => a.path)).not.toContain('/relay/frontPrincipalPlaneFromRimMm');
  });

  test('turns round with its thread, and the rear principal plane comes first', () => {
    const turned = report(pairingWith({ reversed: true }), works).figures;
    expect(known(turned.relayFocalLengthMm)).toBeCloseTo(known(report(pairingWith(), works).figures.relayFocalLengthMm), 8);
    expect(known(turned.cornerChiefRayDeg)).not.toBeCloseTo(known(report(pairingWith(), works).figures.cornerChiefRayDeg), 1);
  });

  test('bites where its sharp circle is the smallest, and is said by that name', () => {
    const turned = report(pairingWith({ reversed: true }, { objective: { ...pairingWith().objective, fieldNumberMm: 44 } }), works);
    expect(turned.coverage.bites).toBe('sharp');
    expect(turned.coverage.unknown).toEqual([]);
    expect(turned.sentence).toContain("the relay's sharp circle ends");
    expect(turned.sentence).toContain('the same glass may do better');
    expect(turned.cautions.join(' ')).toContain('the objective is taken as perfect');
  });

  test('is sharper weak side first than turned round, at its spacing than close up, in a stack than in one frame', () => {
    const good = sharpCircle(pairingWith());
    expect(good).toBeGreaterThan(2 * sharpCircle(pairingWith({ reversed: true })));
    expect(good).toBeGreaterThan(1.5 * sharpCircle(pairingWith({}, { infinitySpaceMm: 20 })));
    expect(sharpCircle(pairingWith({}, { sharp: { spectrum: 'one wavelength', focus: 'stack' } }))).toBeGreaterThan(good);
    expect(sharpCircle(pairingWith({}, { sharp: {} }))).toBeLessThan(good);
  });

  test('is sharp farther out by a lower criterion and in coarser detail', () => {
    const by = (sharp: object): number => sharpCircle(pairingWith({ reversed: true }, { sharp: { spectrum: 'one wavelength', ...sharp } }));
    expect(by({ relativeContrast: 0.6 })).toBeGreaterThan(by({}));
    expect(by({ relativeContrast: 0.9 })).toBeLessThan(by({}));
    expect(by({ frequency: 20 })).toBeGreaterThan(by({}));
  });

  test('looks no farther than one and a half half-diagonals', () => {
    const easy = pairingWith({}, { sharp: { spectrum: 'one wavelength', frequency: 1 } });
    expect(sharpCircle(easy)).toBeCloseTo(1.5 * Math.hypot(36, 24), 9);
  });

  test('beats a rated circle, which stands in without it', () => {
    expect(sharpCircle(pairingWith({ imageCircleMm: 30 }))).toBeCloseTo(sharpCircle(pairingWith()), 9);
    expect(sharpCircle(pairingWith({ imageCircleMm: 30, glass: undefined, focalLengthMm: 198 }))).toBe(30);
    const bare = report(pairingWith({ glass: undefined, focalLengthMm: 198 }), works).figures.sharpCircleMm;
    expect(bare).toMatchObject({ state: 'unknown', missing: ['/relay/glass', '/relay/imageCircleMm'] });
  });

  test('settles how the relay maps angles: the light in the corner is known more closely', () => {
    const [low, without] = [pairingWith(), pairingWith({ glass: undefined, focalLengthMm: 198 })].map((pairing) => {
      const E = report(pairing, works).figures.cornerIllumination;
      return E.state === 'known' ? (E.low ?? E.value) : 0;
    }) as [number, number];
    expect(low).toBeGreaterThan(without);
    expect(low).toBeLessThan(1);
  });

  test('has a working that names it', () => {
    const working = JSON.stringify(workingOf(evaluate(pairingWith(), works), figureById('sharpCircleMm')));
    expect(working).toContain('d_tr');
  });

  test('varies with the infinity space, and gives way to another focal length', () => {
    const spaced = sweep(
      { pairing: pairingWith(), vary: '/infinitySpaceMm', from: 20, to: 85, steps: 3, figures: ['sharpCircleMm'] },
      works,
    );
    const circles = spaced.reports.map((r) => known(r.figures.sharpCircleMm as Answer));
    expect(circles[0]).toBeLessThan(circles[1] as number);
    expect(circles[2]).toBeCloseTo(sharpCircle(pairingWith()), 9);
    const longer = sweep(
      { pairing: pairingWith(), vary: '/relay/focalLengthMm', from: 200, to: 300, steps: 2, figures: ['sharpCircleMm'] },
      works,
    );
    expect(longer.reports.map((r) => r.figures.sharpCircleMm?.state)).toEqual(['unknown', 'unknown']);
  });

  test('contradicts what is engraved where that is off, unless it was measured', () => {
    expect(problems(pairingWith({ focalLengthMm: 199 }))).toEqual([]);
    expect(problems(pairingWith({ focalLengthMm: 210 }))).toEqual(['/relay/focalLengthMm contradiction']);
    expect(problems(pairingWith({ focalLengthMm: { value: 210, origin: 'measured' } }))).toEqual([]);
    expect(problems(pairingWith({ powerDioptre: 5 }))).toEqual([]);
    expect(problems(pairingWith({ powerDioptre: 4 }))).toEqual(['/relay/powerDioptre contradiction']);
    expect(known(report(pairingWith({ focalLengthMm: { value: 210, origin: 'measured' } }), works).figures.relayFocalLengthMm)).toBe(210);
  });

  test('is refused by its very field where it cannot be', () => {
    expect(problems(pairingWith({ glass: { ...GLASS, glasses: ['N-BK7', 'crown'] } }))).toEqual(['/relay/glass/glasses/1 unknownGlass']);
    expect(problems(pairingWith({ glass: { ...GLASS, radiiMm: [-1000, 54, 91] } }))).toEqual(['/relay/glass noFocus']);
    expect(problems(pairingWith({}, { wavelengthNm: 330 }))).toEqual(['/wavelengthNm outOfRange']);
    expect(() => report(pairingWith({ glass: { ...GLASS, thicknessesMm: [11] } }), works)).toThrow(PairingError);
    expect(() => report(pairingWith())).toThrow(TypeError);
  });

  test('of a class is made for what the relay says of itself', () => {
    const ofClass = { glass: { class: 'cemented-achromat' }, clearApertureMm: undefined };
    expect(problems(pairingWith(ofClass))).toEqual(['/relay/focalLengthMm missing', '/relay/clearApertureMm missing']);
    const made = report(pairingWith({ ...ofClass, powerDioptre: 5, maleThread: '58 x 0.75' }), works);
    expect(made.figures.sharpCircleMm.state).toBe('known');
    expect(known(made.figures.relayFocalLengthMm)).toBe(200);
  });

  test('grows and shrinks with the picture where the sensor is off the focus, its detail held', () => {
    const at = (sensorOffsetMm: number) =>
      report(pairingWith({}, { sensorOffsetMm, sharp: { spectrum: 'one wavelength', frequency: 48 } }), works);
    const [near, there] = [at(-10), at(0)];
    const scale = known(near.figures.systemMagnification) / known(there.figures.systemMagnification);
    expect(scale).toBeLessThan(0.98);
    expect(known(near.figures.sharpCircleMm) / known(there.figures.sharpCircleMm)).toBeCloseTo(scale, 3);
  });

  test('is a stop where it is narrower than the rim, which it must not be by statement', () => {
    const narrow = { glass: { ...GLASS, semiAperturesMm: [10, 10, 10] } };
    expect(problems(pairingWith(narrow))).toEqual(['/relay/clearApertureMm contradiction']);
    const told = report(pairingWith({ ...narrow, clearApertureMm: undefined }, { infinitySpaceMm: 120 }), works);
    const stated = report(pairingWith({ ...narrow, clearApertureMm: 20 }, { infinitySpaceMm: 120 }), works);
    expect(known(told.figures.cornerIllumination)).toBeLessThan(0.6);
    expect(known(told.figures.cornerIllumination)).toBeCloseTo(known(stated.figures.cornerIllumination), 12);
  });

  test('that is nowhere sharp is said to be so, not to leave a picture of no size', () => {
    const soft = report(pairingWith({ reversed: true }, { objective: { ...pairingWith().objective, magnification: 5, na: 0.6 } }), works);
    expect(known(soft.figures.sharpCircleMm)).toBe(0);
    expect(soft.sentence).toContain('misses the sensor: the relay is not sharp enough even in the middle');
    expect(soft.sentence).not.toContain('0 × 0');
  });
});
