import { describe, expect, it } from 'vitest';
import { numberIn, type Pairing, PairingError, report, sweep, withValue } from '../../../core/index.ts';

const pairing: Pairing = {
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, fieldNumberMm: 22 },
  relay: { kind: 'supplementary', powerDioptre: 5, clearApertureMm: { value: 54, plusMinus: 2, origin: 'assumed' } },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 },
  infinitySpaceMm: 60,
  stops: [{ diameterMm: 30, fromShoulderMm: 20 }],
};
const problem = (act: () => unknown) => {
  try {
    act();
  } catch (error) {
    if (error instanceof PairingError) return error.problems[0];
  }
  return undefined;
};

describe('one quantity varied', () => {
  it('takes even steps, both ends included, and answers as a report does', () => {
    const { values, reports } = sweep({ pairing, vary: '/infinitySpaceMm', from: 20, to: 120, steps: 5 });
    expect(values).toEqual([20, 45, 70, 95, 120]);
    values.forEach((value, i) => {
      const { figures, coverage } = report({ ...pairing, infinitySpaceMm: value });
      expect(reports[i]).toEqual({ figures, coverage });
    });
  });
  it('gives only the figures asked for', () => {
    const { reports } = sweep({ pairing, vary: '/objective/na', from: 0.2, to: 0.3, steps: 2, figures: ['systemNa'] });
    expect(Object.keys(reports[0]?.figures ?? {})).toEqual(['systemNa']);
    expect(reports.map((r) => r.figures.systemNa && numberIn(r.figures.systemNa))).toEqual([0.2, 0.3]);
  });
  it('unsays the power when it varies the focal length, and keeps a quantity its ±', () => {
    expect(withValue(pairing, '/relay/focalLengthMm', 300).relay).toEqual({
      kind: 'supplementary',
      clearApertureMm: pairing.relay.clearApertureMm,
      focalLengthMm: 300,
    });
    expect(withValue(pairing, '/relay/clearApertureMm', 40).relay.clearApertureMm).toEqual({ value: 40, plusMinus: 2, origin: 'assumed' });
    expect(withValue(pairing, '/stops/0/diameterMm', 25).stops?.[0]?.diameterMm).toBe(25);
    expect(pairing.relay.powerDioptre).toBe(5);
  });
  it('refuses what is no number', () => {
    for (const vary of [
      '',
      '/',
      '/relay',
      '/relay/kind',
      '/stops/1/diameterMm',
      '/stops/length',
      '/__proto__/x',
      '/relay/constructor',
      'infinitySpaceMm',
    ])
      expect(
        problem(() => sweep({ pairing, vary, from: 1, to: 2, steps: 2 })),
        vary,
      ).toMatchObject({ path: '/vary' });
  });
  it('lays a bad value to the end that was asked for', () => {
    expect(problem(() => sweep({ pairing, vary: '/objective/na', from: 0.2, to: 1.2, steps: 3 }))).toMatchObject({ path: '/to' });
    expect(problem(() => sweep({ pairing, vary: '/infinitySpaceMm', from: -5, to: 50, steps: 3 }))).toMatchObject({
      path: '/from',
      given: '-5',
    });
  });
});
