import { describe, expect, it } from 'vitest';
import type { Check, Value } from '../../../../core/checked/check.ts';
import { DOUBLETS } from '../../../../core/checked/lenses/doublets.ts';
import { ofLens, type PrintedLens } from '../../../../core/checked/lenses/printed-lens.ts';
import { THIN } from '../../../../core/checked/lenses/thin.ts';
import { glassNamed } from '../../../../core/glass/glasses.ts';
import { AIR } from '../../../../core/glass/medium.ts';

/** What the rounding of a source's inputs may add, worked out another way: too wide a slack would hold anything. */
const numberOf = (checks: readonly Check[], id: string, what?: string): Value =>
  checks.find((check) => check.id === id)?.values.find((value) => value.what === what) as Value;
const slackOf = (value: Value): number => value.slack?.of() as number;

describe('the rounding of radii', () => {
  const LENS: PrintedLens = { radii: ['50.0', 'plane', '-20.00'], thicknessesMm: [1, 2], media: [AIR, AIR] };
  it('moves each by half a unit of its last digit and adds the changes, whichever way they go; a plane has none', () => {
    // 2 of the first, 0.05; -3 of the last, 0.005.
    const value = ofLens(LENS, 'x', '1', ({ radiiMm: [a = 0, plane, b = 0] }) => (plane === Number.POSITIVE_INFINITY ? 2 * a - 3 * b : 0));
    expect(value.of()).toBe(160);
    expect(slackOf(value)).toBeCloseTo(0.1 + 0.015, 12);
  });
  it('moves outward: what grows with the square of a radius shows by how much', () => {
    const value = ofLens({ ...LENS, radii: ['2'], thicknessesMm: [] }, 'x', '4', ({ radiiMm: [a = 0] }) => a * a);
    expect(slackOf(value)).toBeCloseTo(2.5 ** 2 - 4, 12);
  });
});

/** Back focal length by following a ray from surface to surface: y and n u. */
function backFocal(radii: readonly number[], thicknesses: readonly number[], indices: readonly number[]): number {
  let [y, nu] = [1, 0];
  radii.forEach((radius, k) => {
    const [before, behind] = [indices[k] as number, indices[k + 1] as number];
    nu -= (y * (behind - before)) / radius;
    if (k < thicknesses.length) y += ((thicknesses[k] as number) * nu) / behind;
  });
  return -y / nu;
}

it('a wavelength that is not told lies between the lines e and d: their foci are the ends', () => {
  const at = (nm: number): number => {
    const [crown, flint] = ['N-BK7', 'SF2'].map((name) => glassNamed(name)?.indexAt(nm)) as [number, number];
    return backFocal([29.32908, -20.06842, -20.0877, -66.54774], [0.7, 0.032, 0.578], [1, crown, 1, flint, 1]);
  };
  const value = numberOf(DOUBLETS, 'RAY-363', 'image');
  const ends = [at(546.074), at(587.5618)].toSorted((a, b) => a - b);
  expect(value.of() - slackOf(value)).toBeCloseTo(ends[0] as number, 9);
  expect(value.of() + slackOf(value)).toBeCloseTo(ends[1] as number, 9);
});

it('an index that is not told lies between 1.517 and 1.520: the aberration of a thin lens by its closed form', () => {
  // Of shape X in collimated light, over f/N²: 1/32 of n²/(n−1)² + (n+2)/(n(n−1)²) (X − 2(n²−1)/(n+2))² − n/(n+2).
  const k = (n: number, X: number): number =>
    ((n / (n - 1)) ** 2 + ((n + 2) / (n * (n - 1) ** 2)) * (X - (2 * (n * n - 1)) / (n + 2)) ** 2 - n / (n + 2)) / 32;
  for (const [what, X] of [
    ['curved side first', 1],
    ['plane side first', -1],
  ] as const) {
    const value = numberOf(THIN, 'THN-004', what);
    expect(value.of() - slackOf(value)).toBeCloseTo(k(1.52, X), 9);
    expect(value.of() + slackOf(value)).toBeCloseTo(k(1.517, X), 9);
  }
  // The best form leaves the first and the last term alone.
  expect(numberOf(THIN, 'THN-004', 'best form').of()).toBeCloseTo((9 - 1.5 / 3.5) / 128, 9);
});
