import { describe, expect, it } from 'vitest';
import { told } from '../../../../core/checked/rig.ts';
import { APERTURE, cornerAt, facing, tubed } from '../../../../core/checked/rows/aperture.ts';
import { RESOLUTION } from '../../../../core/checked/rows/resolution.ts';

describe('rigs made for a check', () => {
  it.each([
    [4, 0.5, 1],
    [8, 3, 2],
  ])('a camera lens of f/%d on tubes for %d works at (1 + m/P) N', (N, m, P) => {
    expect(told(tubed(N, m, P), 'tubesFarFNumber')).toBeCloseTo((1 + m / P) * N, 9);
    expect(told(tubed(N, m, P), 'closeUpFarMagnification')).toBeCloseTo(m, 9);
  });
  it('a camera lens that faces an objective of its own focal length shows life size', () => {
    expect(told(facing(4), 'systemMagnification')).toBe(1);
  });
  it.each([2, 8])('at f/%d a rim as wide as the pupil stands a focal length behind it: they part where their shadows do', (N) => {
    const rig = cornerAt(N, 0.5);
    expect(told(rig, 'workingFNumber')).toBe(N);
    expect(told(rig, 'pupilDiameterMm')).toBeCloseTo(200 / N, 9);
    expect(told(rig, 'cutoffRadiusMm')).toBeCloseTo(200 / N, 9);
    expect(told(rig, 'onsetRadiusMm')).toBeCloseTo(0, 9);
    expect(told(rig, 'cornerIllumination')).toBeCloseTo(0.5, 9);
    expect(told(rig, 'objectFieldWidthMm') / told(rig, 'objectFieldHeightMm')).toBeCloseTo(4 / 3, 9);
  });
});

it('where a source cuts digits off, each number lies above what is printed, and some would be rounded to another one', () => {
  const cut = [...APERTURE, ...RESOLUTION].map(({ id, values }) => ({ id, values: values.filter(({ cutOff }) => cutOff) }));
  expect(cut.filter(({ values }) => values.length > 0).map(({ id, values }) => [id, values.length])).toEqual([
    ['AP-006', 6],
    ['RES-211', 1],
    ['RES-212', 1],
    ['RES-213', 1],
  ]);
  const numbers = cut.flatMap(({ values }) => values.map(({ of, printed }) => ({ of: of(), printed })));
  for (const { of, printed } of numbers) expect(of, printed).toBeGreaterThanOrEqual(Number(printed));
  const decimals = (printed: string): number => printed.split('.')[1]?.length ?? 0;
  // 5.66 would be 5.7, 22.6 would be 23, 0.516 and 0.268 would be 0.52 and 0.27.
  const otherwise = numbers.filter(({ of, printed }) => of.toFixed(decimals(printed)) !== printed);
  expect(otherwise.map(({ printed }) => printed)).toEqual(['5.6', '22', '0.51', '0.26']);
});
