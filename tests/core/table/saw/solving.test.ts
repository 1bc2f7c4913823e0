import { describe, expect, test } from 'vitest';
import { gap, type Pairing, thinLens, train } from '../../../../core/index.ts';
import type { Sighting } from '../../../../core/table/saw/sightings.ts';
import { bare, NINETY_FIVE_OF_EVEN, only, ruler } from './bare.ts';
import { q } from './simulated.ts';

describe('one reading', () => {
  test('a ruler gives f = f_o W / a, its ± the root of squares by hand', () => {
    const r = only(bare(), ruler(2.31, 0.01));
    expect(r.value).toBeCloseTo((20 * 23.5) / 2.31, 7);
    // A relative ± of the ruler is one of the focal length; the ends are those of the interval, a little uneven.
    const half = NINETY_FIVE_OF_EVEN * 0.01;
    expect(r.high).toBeCloseTo((20 * 23.5) / (2.31 - half), 4);
    expect(r.low).toBeCloseTo((20 * 23.5) / (2.31 + half), 4);
    const doubtful = only({ ...bare(), objective: { ...bare().objective, magnification: q(10, 0.02) } }, {
      ...ruler(2.31, 0.01),
      gives: 'relay',
    } as Sighting);
    const relative = NINETY_FIVE_OF_EVEN * Math.hypot(0.01 / 2.31, 0.02 / 10);
    expect(doubtful.plusMinus / doubtful.value).toBeCloseTo(relative, 4);
    expect(doubtful.restsOn[0]?.path).toBe('/objective/magnification');
    // The engraving's ± counts by its greater move, some per mille more than by its slope.
    const share = 0.002 ** 2 / (0.002 ** 2 + (0.01 / 2.31) ** 2);
    expect(Math.abs((doubtful.restsOn[0]?.share ?? 0) / share - 1)).toBeLessThan(0.005);
    expect(r.asTheyStand).toContain('/objective/magnification');
  });

  test('a micrometer over pixels and over the whole width says what a ruler says', () => {
    const m = 10.3;
    const pixels = (100 * 0.01 * m) / 0.0039;
    const byPixels = only(bare(), { kind: 'micrometer', divisions: 100, divisionUm: 10, pixels: q(pixels, 5) });
    const byWidth = only(bare(), { kind: 'micrometer', divisions: q(23.5 / m / 0.01, 0.5), divisionUm: 10 });
    for (const { value } of [byPixels, byWidth]) expect(value).toBeCloseTo(20 * m, 6);
    expect(byPixels.plusMinus / byPixels.value).toBeCloseTo((NINETY_FIVE_OF_EVEN * 5) / pixels, 5);
  });

  test('a far thing by ray matrices: the sharp picture is where b is 0', () => {
    for (const [f, X] of [
      [198, 15_000],
      [50, 600],
      [333, 2000],
    ] as const) {
      const before = train(gap(X), thinLens(f));
      const behind = -before.b / before.d;
      expect(train(gap(X), thinLens(f), gap(behind)).b).toBeCloseTo(0, 6);
      expect(only(bare(), { kind: 'far', imageMm: q(behind, 1), thingMm: X }).value).toBeCloseTo(f, 6);
    }
  });

  test('two extensions by ray matrices of a thick lens: only what is added counts', () => {
    // Two thin lenses apart stand for a thick lens whose principal planes are nowhere near it.
    const lens = [thinLens(120), gap(40), thinLens(-300)] as const;
    const f = -1 / train(...lens).c;
    const magnificationAt = (behind: number): number => {
      // The distance X at which the picture is sharp: b(X) is linear in X.
      const b = (X: number): number => train(gap(X), ...lens, gap(behind)).b;
      const X = -b(0) / (b(1) - b(0));
      return Math.abs(train(gap(X), ...lens, gap(behind)).a);
    };
    const [m1, m2] = [magnificationAt(150), magnificationAt(192)];
    const r = only(bare(), { kind: 'extensions', firstAcrossMm: q(23.5 / m1, 0.1), secondAcrossMm: q(23.5 / m2, 0.1), apartMm: 42 });
    expect(r.value).toBeCloseTo(f, 6);
  });

  test('two rulers at two offsets of the sensor part the relay from the objective: m over m of the other is free of f_o', () => {
    const given: Pairing = {
      ...bare(),
      objective: { ...bare().objective, magnification: q(10, 1), exitPupilFromShoulderMm: -100 },
      infinitySpaceMm: 160,
    };
    const [f, z, fo] = [206, 260, 20.5];
    const across = (s: number): number => (23.5 * fo) / (f * (1 - ((z - f) * s) / f ** 2));
    const at = (s: number): Sighting => ({ ...ruler(across(s), 1e-5), sensorOffsetMm: s, gives: 'relay' }) as Sighting;
    const one = only(given, at(0));
    const two = only(given, at(0), at(150));
    // One alone hangs on the engraving, which is 2.5 % off and known to a tenth.
    expect(Math.abs(one.value - f)).toBeGreaterThan(4);
    expect(two.value).toBeCloseTo(f, 0);
    expect(two.plusMinus).toBeLessThan(one.plusMinus / 20);
  });
});
