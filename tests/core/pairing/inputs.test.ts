import { describe, expect, it } from 'vitest';
import { evaluate, numberIn, type Pairing, report } from '../../../core/index.ts';

const base: Pairing = {
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, fieldNumberMm: 22 },
  relay: { kind: 'supplementary', focalLengthMm: 200, clearApertureMm: 54 },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
  infinitySpaceMm: 60,
};
const input = (pairing: Pairing, path: string) => evaluate(pairing).inputs.find((i) => i.path === path);
const relay = (more: object): Pairing => ({ ...base, relay: { kind: 'supplementary', ...more } });
const figures = (pairing: Pairing) => report(pairing).figures;

describe('what is taken where nothing is known', () => {
  it('puts the exit pupil in the middle of where it can be', () => {
    const path = '/objective/exitPupilFromShoulderMm';
    expect(input(base, path)).toMatchObject({ value: 0, plusMinus: 30, origin: 'assumed' });
    const known = { ...base, objective: { ...base.objective, parfocalDistanceMm: 60, workingDistanceMm: 10 } };
    expect(input(known, path)).toMatchObject({ value: -20, plusMinus: 30, least: -50, greatest: 10 });
    expect(
      input({ ...base, objective: { ...base.objective, exitPupilFromShoulderMm: { value: -12, plusMinus: 2, origin: 'measured' } } }, path),
    ).toMatchObject({ value: -12, plusMinus: 2, guess: undefined });
  });
  it('takes markings as they stand, but for those that the trade knows to be loose', () => {
    expect(input(base, '/relay/focalLengthMm')).toMatchObject({ plusMinus: 0, guess: undefined });
    expect(input(relay({ powerDioptre: 5 }), '/relay/powerDioptre')).toMatchObject({ value: 5, plusMinus: 0.25, origin: 'marked' });
    expect(input(relay({ powerDioptre: { value: 5, plusMinus: 0.1 } }), '/relay/powerDioptre')).toMatchObject({
      plusMinus: 0.1,
      guess: undefined,
    });
    expect(input(relay({ powerDioptre: { value: 4.9, origin: 'measured' } }), '/relay/powerDioptre')).toMatchObject({
      plusMinus: 0,
      origin: 'measured',
    });
    expect(input(relay({ kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 }), '/relay/focalLengthMm')).toMatchObject({
      value: 200,
      plusMinus: 10,
    });
    expect(input(relay({ kind: 'tube-lens', focalLengthMm: 200 }), '/relay/focalLengthMm')).toMatchObject({ plusMinus: 0 });
  });
  it('infers an opening from a thread, and none from nothing', () => {
    expect(input(relay({ focalLengthMm: 200, maleThread: '58 x 0.75' }), '/relay/clearApertureMm')).toMatchObject({
      value: 54,
      plusMinus: 3,
      origin: 'assumed',
    });
    expect(input(relay({ focalLengthMm: 200, maleThread: 'M42 x 1', femaleThread: '58 x 0.75' }), '/relay/clearApertureMm')).toMatchObject({
      value: 38,
    });
    expect(figures(relay({ focalLengthMm: 200 })).cornerIllumination).toMatchObject({
      state: 'unknown',
      missing: ['/relay/clearApertureMm'],
    });
  });
  it('reads the narrow end of a step ring', () => {
    expect(input(relay({ focalLengthMm: 200, maleThread: '77-58' }), '/relay/clearApertureMm')).toMatchObject({ value: 54 });
  });
  it('takes weak close-up lenses as looser than their own 5 %, and any exit pupil within the parfocal distance', () => {
    expect(input(relay({ powerDioptre: 2 }), '/relay/powerDioptre')).toMatchObject({ plusMinus: 0.25 });
    expect(input(relay({ powerDioptre: 10 }), '/relay/powerDioptre')).toMatchObject({ plusMinus: 0.5 });
    expect(input(relay({ powerDioptre: 0.5 }), '/relay/powerDioptre')).toMatchObject({ plusMinus: 0.125 });
    const alone = { ...base, objective: { ...base.objective, parfocalDistanceMm: 95 } };
    expect(input(alone, '/objective/exitPupilFromShoulderMm')).toMatchObject({ least: -95, greatest: 10 });
  });
  it('lets a telephoto have its principal plane and its aperture where telephotos have them', () => {
    // Two thin groups, f1 = 110, f2 = -80, 74 mm apart, iris 70 mm behind the first: by the thin-lens formulas.
    const f = 1 / (1 / 110 - 1 / 80 + 74 / (110 * 80));
    const plane = (f * 74) / -80;
    const pupil = 70 / (1 - 70 / 110);
    expect(f).toBeCloseTo(200, 6);
    const lens = relay({ kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 });
    const held = (path: string, x: number) => {
      const i = input(lens, path);
      return i !== undefined && i.least <= x && x <= i.greatest;
    };
    expect(held('/relay/frontPrincipalPlaneFromRimMm', plane)).toBe(true);
    expect(held('/relay/entrancePupilDepthMm', 0.9 * pupil)).toBe(true);
  });
  it("takes a camera lens's rim between its aperture and what lights its own picture", () => {
    const lens = relay({ kind: 'camera-lens', focalLengthMm: 200, fNumber: 4, entrancePupilDepthMm: 80 });
    expect(input(lens, '/relay/clearApertureMm')).toMatchObject({ least: 50, origin: 'assumed' });
    expect(input(lens, '/relay/clearApertureMm')?.greatest).toBeCloseTo(50 + (2 * 80 * 21.6) / 200, 9);
    expect(input(relay({ kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 }), '/relay/entrancePupilDepthMm')).toMatchObject({
      value: 90,
      plusMinus: 90,
    });
    expect(figures(relay({ kind: 'camera-lens', focalLengthMm: 200 })).systemNa).toMatchObject({
      state: 'unknown',
      missing: ['/relay/fNumber'],
    });
  });
  it('lets a measurement win over the other way of saying it', () => {
    const measured = { value: 4.9, origin: 'measured' as const };
    expect(numberIn(figures(relay({ focalLengthMm: 200, powerDioptre: measured, clearApertureMm: 54 })).relayFocalLengthMm)).toBeCloseTo(
      1000 / 4.9,
      9,
    );
    expect(
      numberIn(
        figures(relay({ focalLengthMm: { value: 203, origin: 'measured' }, powerDioptre: 5, clearApertureMm: 54 })).relayFocalLengthMm,
      ),
    ).toBe(203);
    const lens = {
      kind: 'camera-lens',
      focalLengthMm: 200,
      clearApertureMm: 60,
      entrancePupilDepthMm: 80,
      entrancePupilDiameterMm: 8,
      fNumber: { value: 50, origin: 'measured' },
    };
    expect(numberIn(figures(relay(lens)).systemNa)).toBeCloseTo(2 / 20, 9);
  });
  it("places the mount's throat by its register", () => {
    const sensor = { ...base.sensor, registerMm: 18, throatDiameterMm: 30 };
    expect(report({ ...base, objective: { ...base.objective, fieldNumberMm: 60 }, sensor }).vignetting.cuts[0]?.stop).toBe(
      "the mount's throat",
    );
  });
});

describe('origins and assumptions', () => {
  const settled: Pairing = {
    ...base,
    objective: { ...base.objective, exitPupilFromShoulderMm: 0 },
    relay: { ...base.relay, frontPrincipalPlaneFromRimMm: 0 },
  };
  it('give each figure the origin of the weakest input that moves it', () => {
    const origin = (p: Pairing, id: 'systemMagnification' | 'systemNa' | 'cornerChiefRayDeg' | 'correctedCircleMm') => {
      const a = figures(p)[id];
      return a.state === 'known' ? a.origin : undefined;
    };
    expect(origin(settled, 'systemMagnification')).toBe('marked');
    expect(origin(base, 'systemMagnification')).toBe('marked');
    expect(origin(base, 'cornerChiefRayDeg')).toBe('assumed');
    const measured = (value: number) => ({ value, origin: 'measured' as const });
    const all = {
      ...settled,
      objective: { ...settled.objective, magnification: measured(10), referenceFocalLengthMm: measured(200) },
      relay: { ...settled.relay, focalLengthMm: measured(199) },
    };
    expect(origin(all, 'systemMagnification')).toBe('measured');
    expect(origin({ ...all, relay: settled.relay }, 'systemMagnification')).toBe('marked');
    expect(origin(all, 'systemNa')).toBe('marked');
    expect(
      origin({ ...settled, objective: { ...settled.objective, fieldNumberMm: { value: 22, origin: 'assumed' } } }, 'correctedCircleMm'),
    ).toBe('assumed');
  });
  it('list the guesses that move something, the weightiest first', () => {
    expect(report(settled).assumptions).toEqual([]);
    const tight: Pairing = {
      ...base,
      relay: { ...base.relay, clearApertureMm: { value: 20, plusMinus: 1, origin: 'assumed' } },
      objective: { ...base.objective, fieldNumberMm: { value: 60, plusMinus: 1, origin: 'assumed' } },
    };
    const { assumptions } = report(tight);
    expect(assumptions[0]?.path).toBe('/objective/exitPupilFromShoulderMm');
    expect(assumptions.map((a) => a.path)).toContain('/relay/clearApertureMm');
    const weights = assumptions.map((a) => a.matters);
    expect(weights).toEqual(weights.toSorted((a, b) => b - a));
    for (const a of assumptions) expect(a.why).not.toBe('');
  });
});
