import { describe, expect, test } from 'vitest';
import { type FieldPoint, fieldPoint, worseThroughFocus } from '../../../core/contrast/field.ts';
import { sharpSlope } from '../../../core/contrast/sharp.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { BENT, LIGHT, settingOf } from './lenses.ts';

const setting = settingOf(BENT);
const CRITERION = 0.8;
/** Fine places of the focus, far past all that is sharp. */
const RANGE = { from: -4, step: 0.01, count: 801 };

/** At which of these places a field point is sharp enough. */
function sharpAt(slope: number): boolean[] {
  const point = fieldPoint(setting, slope) as FieldPoint;
  return [...worseThroughFocus(point, RANGE)].map((c) => c >= CRITERION);
}

describe('the sharp circle', () => {
  test('of a stack ends where a point is sharp at no focus', () => {
    const slope = sharpSlope(setting, CRITERION, 'stack', 0.2);
    expect(slope).toBeLessThan(0.19);
    expect(sharpAt(0.99 * slope).some(Boolean)).toBe(true);
    expect(sharpAt(1.01 * slope).some(Boolean)).toBe(false);
  });

  test('of one frame ends where no place of the focus is left that is sharp for all inside', () => {
    const slope = sharpSlope(setting, CRITERION, 'one frame', 0.2);
    expect(slope).toBeLessThan(0.95 * sharpSlope(setting, CRITERION, 'stack', 0.2));
    const common = (out: number): boolean => {
      const all = Array.from({ length: 13 }, (_, i) => sharpAt((out * i) / 12));
      return RANGE.count > 0 && (all[0] as boolean[]).some((_, k) => all.every((sharp) => sharp[k]));
    };
    expect(common(0.99 * slope)).toBe(true);
    expect(common(1.01 * slope)).toBe(false);
  });

  test('is all that is asked about where all of it is sharp, and nothing where not even the middle is', () => {
    for (const focus of ['stack', 'one frame'] as const) {
      expect(sharpSlope(setting, CRITERION, focus, 0.02)).toBe(0.02);
      expect(sharpSlope(settingOf(BENT, { radius: 15 }), CRITERION, focus, 0.05)).toBe(0);
    }
  });

  test('shrinks as more is asked for', () => {
    const slopes = [0.5, 0.7, 0.9, 0.95].map((criterion) => sharpSlope(setting, criterion, 'one frame', 0.2));
    expect(slopes).toEqual(slopes.toSorted((a, b) => b - a));
    expect(new Set(slopes).size).toBe(4);
  });

  test('is the same whatever limit beyond it is set, near or far', () => {
    const slope = sharpSlope(setting, CRITERION, 'stack', 0.2);
    for (const limit of [1.04 * slope, 1.7]) expect(sharpSlope(setting, CRITERION, 'stack', limit) / slope).toBeCloseTo(1, 3);
  });

  // A beam too slender for aberrations, between two discs of 2 mm that part by 40 mm per slope: it is 4 - 40 t high.
  test('ends where too little of the beam is left to carry the detail at all', () => {
    const frequency = 4;
    const slender = { ...settingOf(BENT, { radius: 2, frequency }), discs: { walk: [0, 40], radius: [2, 2] } };
    const f = cardinal(slender.colours.reference).effectiveFocalLengthMm;
    const apart = frequency * LIGHT * 1e-6 * f;
    for (const focus of ['stack', 'one frame'] as const) {
      const slope = sharpSlope(slender, CRITERION, focus, 0.2);
      expect(Math.abs(slope / ((4 - apart) / 40) - 1)).toBeLessThan(5e-3);
    }
  });
});
