import { describe, expect, test } from 'vitest';
import { Gap } from '../../../../core/figure.ts';
import type { Pairing } from '../../../../core/index.ts';
import { infinityCautions } from '../../../../core/table/infinity/cautions.ts';
import { coverStrehl } from '../../../../core/table/infinity/cover.ts';
import { far, farErrorMm, nearestThingM } from '../../../../core/table/infinity/far.ts';
import * as figures from '../../../../core/table/infinity/tube.ts';
import { evaluateTable, infinitySays, infinitySteps, planOf, type Settings, tubeBites, tubeStudy } from '../../../../core/table.ts';

const PLAN = planOf('infinity');
const rig = (more: Partial<Pairing> = {}, objective: Partial<Pairing['objective']> = {}): Pairing => ({
  objective: { magnification: 20, na: 0.42, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: 0, ...objective },
  relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 50, frontPrincipalPlaneFromRimMm: 0 },
  sensor: { widthMm: 24, heightMm: 16, pixelPitchUm: 4 },
  infinitySpaceMm: 50,
  ...more,
});
const table = (pairing: Pairing, settings: Settings = {}) => evaluateTable(pairing, settings, undefined, PLAN);
const answers = (pairing: Pairing, settings: Settings = {}) => table(pairing, settings).answers;
const CAMERA = rig({
  relay: { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4, entrancePupilDepthMm: 40, frontPrincipalPlaneFromRimMm: 0 },
});

/** What a figure makes of plain numbers. */
const of = (node: { of: unknown }, ...values: unknown[]): unknown => (node.of as (...values: unknown[]) => unknown)(...values);

describe('by plain numbers', () => {
  test('the sign of an optical shift is none of the wavefront’s', () => {
    for (const name of ['wavesRms', 'waves'] as const) for (const B of [-2, 2]) expect(of(figures.tube[name], B, 3, 0.5)).toBe(12);
  });
  test('the subject moves from where it stood with the tube right; after a far thing, from infinity', () => {
    expect(of(figures.tube.subjectShift, 3, 1, 2)).toBe(-1);
    expect(of(far.subjectShift, 3, 1, 2)).toBe(-1.5);
  });
  test('a tube may be too short or too long until the sharpness ends, or the relay is no longer followed', () => {
    expect(of(figures.sharpLongerMm, 60, 200, 10)).toBe(50);
    expect(of(figures.sharpLongerMm, 300, 200, 10)).toBe(190);
    expect(of(figures.sharpShorterMm, 60, 200, 10)).toBe(70);
    expect(of(figures.sharpShorterMm, 300, 200, -10)).toBe(190);
    for (const [figure, s] of [
      [figures.sharpLongerMm, 60],
      [figures.sharpShorterMm, -60],
    ] as const)
      expect(of(figure, 50, 200, s)).toBe(0);
  });
  test('the magnification at either end of the extension: 200 by 10, 50 beyond or before, the pupil 300 before the relay', () => {
    // m (1 − (300 − 200) × 50 / 200²) = 20 × 0.875, and 20 × 1.125.
    expect(of(figures.longestMagnification, 200, 50, 300, 10)).toBeCloseTo(17.5, 12);
    expect(of(figures.shortestMagnification, 200, 50, 300, 10)).toBeCloseTo(22.5, 12);
  });
  test('a Strehl ratio lies between 0 and 1', () => {
    for (const figure of [coverStrehl, figures.tube.strehl, far.strehl]) expect(figure.bounds).toEqual([0, 1]);
  });
  test('what is nearer than the focal length has no picture; what is too near is at the rim', () => {
    expect(of(farErrorMm, 1, 0, 1200)).toBeInstanceOf(Gap);
    // 200² / (1200 − 200) = 40.
    expect(of(farErrorMm, 1, 200, 200)).toBe(40);
    expect(of(nearestThingM, 200, 40, 100)).toBeCloseTo(1.1, 12);
    expect(of(nearestThingM, 200, 1e9, 300)).toBe(0);
  });
});

describe('the place of the subject', () => {
  /** 20×: fo = 10, n = 1; the optical shift of a tube wrong by t is 100 t / (200 F), F = 200 + t − 50 t / 200. */
  const wrong = (t: number): number => (100 * t) / (200 * (200 + 0.75 * t));
  test('ends the tolerance where it is reached, on either side', () => {
    const limit = { shiftLimitMm: 0.02, magnificationTolerance: 0.5 };
    const { tubeLongerMm, tubeShorterMm } = answers(rig(), limit);
    expect(wrong((tubeLongerMm as { value: number }).value)).toBeCloseTo(0.02, 9);
    expect(wrong(-(tubeShorterMm as { value: number }).value)).toBeCloseTo(-0.02, 9);
  });
  test('from where the sensor stands on purpose', () => {
    const { tubeLongerMm, tubeShorterMm } = answers(rig({ sensorOffsetMm: 20 }), { shiftLimitMm: 0.02, magnificationTolerance: 0.5 });
    expect(wrong(20 + (tubeLongerMm as { value: number }).value) - wrong(20)).toBeCloseTo(0.02, 9);
    expect(wrong(20 - (tubeShorterMm as { value: number }).value) - wrong(20)).toBeCloseTo(-0.02, 9);
  });
});

/** NA 0.6 and f_o = 100 before a relay of 20 mm: a fifth of life size, which no lens draws at that aperture. */
const small = rig(
  { relay: { kind: 'tube-lens', focalLengthMm: 20, clearApertureMm: 400, frontPrincipalPlaneFromRimMm: 0 } },
  { magnification: 2, na: 0.6 },
);

describe('beyond what can be', () => {
  test('a relay that far from its focus is no tube lens', () => {
    // Nine tenths of its focal length toward it, the whole of it away.
    const { tubeStrehl } = answers(rig({ sensorOffsetMm: 50 }), { tubeErrorMm: 190 });
    expect(tubeStrehl).toMatchObject({ state: 'none', why: expect.stringContaining('it is followed -180 mm in and 200 mm out') });
  });
  test('a picture smaller than the aperture could draw it has no Strehl ratio', () => {
    const { tubeStrehl, tubeMagnification } = answers(small, { tubeErrorMm: 0 });
    expect(tubeMagnification).toMatchObject({ state: 'known', value: expect.closeTo(0.2, 9) });
    expect(tubeStrehl).toMatchObject({ state: 'none', why: expect.stringContaining('smaller than any lens') });
  });
  test('light steeper than the slip lets out leaves no picture, where there is a slip', () => {
    const oil = rig({}, { magnification: 60, na: 1.4, immersionIndex: 1.515, coverGlassMm: 0.17 } as never);
    expect(answers(oil, { slipMm: 0.17, slipIndex: 1.33 }).coverStrehl).toMatchObject({
      state: 'none',
      why: expect.stringContaining('as steep'),
    });
    expect(answers(oil, { slipMm: 0, slipIndex: 1.33 }).coverStrehl.state).toBe('known');
    expect(answers(oil, { slipMm: 0.17, resinMm: 0.1, resinIndex: 1.33 }).coverStrehl.state).toBe('none');
    expect(answers(oil, { slipMm: 0.17, slipIndex: 1.33 }).slipToleranceMm.state).toBe('none');
    expect(answers(oil, { slipMm: 0.17 }).slipToleranceMm.state).toBe('known');
  });
  test('a sensor before the focus sees nothing sharp however far', () => {
    expect(answers(rig({ sensorOffsetMm: -60 })).nearestThingM.state).toBe('none');
    // 200 / 19.25: 1 % of the magnification is 2.6 mm; half a mm is left.
    const near = answers(rig({ sensorOffsetMm: -2.2 })).nearestThingM;
    expect(near.state).toBe('known');
  });
});

describe('the curve of a wrong tube', () => {
  test('is the figures, and ends where they end', () => {
    const evaluation = table(rig({ sensorOffsetMm: 5 }), { tubeErrorMm: 12, farThingM: 20 });
    const study = tubeStudy(evaluation);
    const { tubeStrehl, tubeMagnification, farErrorMm } = evaluation.answers as Record<string, { value: number }>;
    expect(study?.at(12)).toEqual({
      tubeErrorMm: 12,
      magnification: expect.closeTo(tubeMagnification?.value as number, 10),
      strehl: expect.closeTo(tubeStrehl?.value as number, 10),
    });
    expect(study?.errorFrom(20)).toBeCloseTo((farErrorMm?.value as number) - 5, 10);
    expect([study?.now, study?.limit, study?.magnificationShare]).toEqual([12, 0.8, 0.01]);
    const [shorter, longer] = (study as NonNullable<typeof study>).reach;
    // Followed 180 mm in and 200 mm out; the sensor is 5 mm out.
    expect([shorter, longer]).toEqual([expect.closeTo(185, 9), expect.closeTo(195, 9)]);
    expect(study?.at(longer - 0.01)).toBeDefined();
    expect(study?.at(longer + 0.01)).toBeUndefined();
    expect(study?.at(-shorter - 0.01)).toBeUndefined();
    expect(study?.at(-shorter + 0.01)).toBeDefined();
  });
  test('is none where the picture is smaller than it could be drawn, or nothing is known', () => {
    expect(tubeStudy(table(small))).toBeDefined();
    expect(tubeStudy(table(small))?.at(0)).toBeUndefined();
    const { clearApertureMm: _, ...blind } = rig().relay as Pairing['relay'] & { clearApertureMm: number };
    expect(tubeStudy(table(rig({ relay: blind as Pairing['relay'] })))).toBeUndefined();
  });
});

describe('in words', () => {
  const says = (pairing: Pairing, settings: Settings = {}): string => infinitySays(table(pairing, settings));
  test('a sensor out of place where the ring is turned, a relay before its focus, half a millimetre', () => {
    expect(says(CAMERA, { shiftLimitMm: 0.001 })).toContain('with a sensor out of place by ');
    expect(infinitySteps(table(CAMERA))[0]).toMatch(/^Put the lens alone on the camera/);
    expect(infinitySteps(table({ ...CAMERA, sensorOffsetMm: -5 }))[1]).toContain('5 mm nearer to the lens on purpose');
    expect(infinitySteps(table(rig({ sensorOffsetMm: 0.5 })))[1]).toContain('Then make it 0.5 mm longer');
  });
  test('without what it rests on nothing is known, and nothing is said beside', () => {
    const { clearApertureMm: _, ...relay } = rig().relay as Pairing['relay'] & { clearApertureMm: number };
    const blind = rig({ relay: relay as Pairing['relay'] });
    expect(says(blind)).toMatch(/^How exactly infinity must be set is not known yet\./);
    expect(tubeBites(table(blind))).toBeUndefined();
  });
  test('shares are told without their sign', () => {
    expect(says(rig({ infinitySpaceMm: 300 }), { farThingM: 20.2 })).toMatch(/with 0\.5 % less magnification/);
    expect(says(rig(), { farThingM: 20.2 })).toMatch(/with 0\.8 % more magnification/);
  });
  test('cover glass as a quantity is its value; resin without a slip is told as that', () => {
    const due = (coverGlassMm: object | number) => rig({}, { coverGlassMm } as never);
    expect(says(due({ value: 0.17, plusMinus: 0.01 }))).toContain('With no slip where the objective wants 0.17 mm');
    expect(says(due(0), { resinMm: 0.2 })).toContain('With no slip and 0.2 mm of resin where the objective wants none');
    expect(says(due({ value: 0, plusMinus: 0 }))).not.toContain('slip');
  });
  test('glass in the relay is a caution more', () => {
    const cautions = (glass: unknown) => infinityCautions({ pairing: { relay: { glass } } } as never);
    expect(cautions(undefined)).toHaveLength(1);
    expect(cautions({})).toHaveLength(2);
  });
});
