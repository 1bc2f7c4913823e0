import { describe, expect, it } from 'vitest';
import { firstSide, standing } from '../../../core/lens/sides.ts';
import type { Lens } from '../../../core/trace/lens.ts';

const lens = (...radiiMm: number[]): Lens => ({ radiiMm, thicknessesMm: [], media: [], semiAperturesMm: [] });
const PLANE = Number.POSITIVE_INFINITY;

describe('the side that a lens has first', () => {
  it.each([
    ['weak', [1000, -54, -91]],
    ['strong', [91, 54, -1000]],
    ['weak', [PLANE, -100]],
    ['strong', [100, PLANE]],
    // Strength has no sign.
    ['weak', [-100, 50]],
    ['strong', [-50, 100]],
    ['weak', [100, -50]],
    ['strong', [50, 100]],
  ] as const)('is the %s one of radii %j', (side, radii) => expect(firstSide(lens(...radii))).toBe(side));

  it('is neither where both are alike: to a thousandth of the stronger', () => {
    for (const radii of [
      [206, -206],
      [PLANE, PLANE],
      [1000, -1000.9],
      [1000.9, -1000],
      // 1/1000 - 1/1001.0005 is 0.9995 thousandths of 1/1000, and 1.0005 of 1/1001.0005.
      [1000, 1001.0005],
    ])
      expect(firstSide(lens(...radii))).toBeUndefined();
    // 1.004 thousandths.
    expect(firstSide(lens(1000, -1001.005))).toBe('strong');
    expect(firstSide(lens(-1001.005, 1000))).toBe('weak');
    expect(firstSide(lens(100, -100.2))).toBe('strong');
  });

  it('is told with the thread, or by the thread alone', () => {
    expect(standing(lens(1000, -91), false)).toBe('weak side first, male thread toward the objective');
    expect(standing(lens(91, -1000), true)).toBe('strong side first, male thread toward the camera');
    expect(standing(lens(91, -91), true)).toBe('male thread toward the camera');
  });
});
