import { describe, expect, it } from 'vitest';
import type { Answer, Pairing } from '../../../../core/index.ts';
import { farEnough } from '../../../../core/table/infinity/told.ts';
import { evaluateTable, infinitySays, type Settings } from '../../../../core/table.ts';

/** What is said of infinity at the borders of saying it: answers put in the place of those worked out. */

const RIG: Pairing = {
  objective: { magnification: 20, na: 0.42, referenceFocalLengthMm: 200, exitPupilFromShoulderMm: 0, coverGlassMm: 0.17 },
  relay: { kind: 'tube-lens', focalLengthMm: 200, clearApertureMm: 50, frontPrincipalPlaneFromRimMm: 0 },
  sensor: { widthMm: 24, heightMm: 16, pixelPitchUm: 4 },
  infinitySpaceMm: 50,
};
const known = (value: number, low = value, high = value): Answer => ({ state: 'known', value, unit: 'mm', low, high, origin: 'marked' });
const UNKNOWN: Answer = { state: 'unknown', unit: 'mm', missing: ['/somewhere'] };
const changed = (answers: Record<string, Answer>, pairing = RIG, settings: Settings = {}) => {
  const evaluation = evaluateTable(pairing, settings);
  return { ...evaluation, answers: { ...evaluation.answers, ...answers } } as typeof evaluation;
};
const says = (...of: Parameters<typeof changed>): string => infinitySays(changed(...of));

describe('what is said of infinity', () => {
  it('has a distance for a far thing where there is one', () => {
    expect(farEnough(changed({ tubeLongerMm: known(5), nearestThingM: known(12) }))).toBe('12 m');
    expect(farEnough(changed({ tubeLongerMm: known(1), nearestThingM: known(1) }))).toBe('1 m');
    expect(farEnough(changed({ tubeLongerMm: known(0), nearestThingM: known(12) }))).toBeUndefined();
    expect(farEnough(changed({ tubeLongerMm: known(5), nearestThingM: known(0) }))).toBeUndefined();
  });

  it('has the doubt of the magnification where that is more than it may change', () => {
    // 1 % is what it may change.
    const doubt = (...of: [number, number, number]) => / known only to ±([\d.]+ %)/.exec(says({ tubeMagnification: known(...of) }))?.[1];
    expect([doubt(100, 99, 101), doubt(100, 98.9, 100), doubt(100, 100, 101.1), doubt(100, 96, 103)]).toEqual([
      undefined,
      '1.1 %',
      '1.1 %',
      '4 %',
    ]);
    expect(says({ tubeMagnification: UNKNOWN })).not.toContain('known only');
  });

  it('has a far thing only where its error and its change are known', () => {
    expect(says({ farErrorMm: UNKNOWN })).not.toContain('focused on something');
    expect(says({ farMagnificationChange: UNKNOWN })).not.toContain('focused on something');
    const change = (of: number) => / too long, with ([^;]*);/.exec(says({ farMagnificationChange: known(of) }))?.[1];
    expect([change(0.0002), change(-0.0002), change(0.00019), change(-0.00019)]).toEqual([
      '0.02 % more magnification',
      '0.02 % less magnification',
      'the magnification as it was',
      'the magnification as it was',
    ]);
  });

  it('has what lies over the subject only where it is known what should and what that does', () => {
    expect(says({ coverStrehl: known(0.8) }, RIG, { strehlLimit: 0.8 })).toMatch(/0\.8: still sharp\.$/);
    expect(says({ coverStrehl: known(0.799) }, RIG, { strehlLimit: 0.8 })).toMatch(/0\.799: no longer sharp\.$/);
    expect(says({ coverStrehl: UNKNOWN })).not.toContain('slip');
    const { coverGlassMm: _, ...objective } = RIG.objective;
    expect(says({ coverStrehl: known(0.8) }, { ...RIG, objective })).not.toContain('slip');
  });
});
