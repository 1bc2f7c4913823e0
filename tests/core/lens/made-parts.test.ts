import { describe, expect, it } from 'vitest';
import { glassNamed } from '../../../core/glass/glasses.ts';
import { indexAtLine, type Line } from '../../../core/glass/lines.ts';
import { AIR, type Medium, plainIndex } from '../../../core/glass/medium.ts';
import { closeUpJob } from '../../../core/lens/made/job.ts';
import { least } from '../../../core/lens/made/minimise.ts';
import { thinSurfaces } from '../../../core/lens/made/thin.ts';
import { backFocus, workpiece } from '../../../core/lens/made/workpiece.ts';
import { atRim, leastThickness, workshopLimits } from '../../../core/lens/made/workshop.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';

describe('the search for the least', () => {
  it('takes the deeper of two minima', () => {
    const found = least(([x = 0]) => (x * x - 4) ** 2 + x, [[-5, 5]], 25);
    // The root of 4x(x² - 4) + 1 nearest to -2.
    expect(found?.at[0]).toBeCloseTo(-2.0308, 3);
    expect(least(([x = 0]) => (x * x - 4) ** 2 - x, [[-5, 5]], 25)?.at[0]).toBeCloseTo(2.0308, 3);
  });
  it('follows a bent valley in two dimensions', () => {
    const found = least(
      ([x = 0, y = 0]) => (1 - x) ** 2 + 20 * (y - x * x) ** 2,
      [
        [-3, 3],
        [-2, 4],
      ],
      13,
    );
    expect(found?.at[0]).toBeCloseTo(1, 3);
    expect(found?.at[1]).toBeCloseTo(1, 3);
  });
  it('is right in a narrow box and in a wide one', () => {
    const well = ([x = 0, y = 0]: readonly number[]): number => (x - 0.003) ** 2 + 1e-4 * (y + 20) ** 2;
    const found = least(
      well,
      [
        [0, 0.01],
        [-100, 100],
      ],
      13,
    );
    expect(found?.at[0]).toBeCloseTo(0.003, 5);
    expect(found?.at[1]).toBeCloseTo(-20, 1);
  });
  it('takes no place for a minimum where the function only ends', () => {
    const ending = ([x = 0]: readonly number[]): number => (x < 1 ? Math.cos(3 * x) - 5 * Math.max(0, x) : Number.POSITIVE_INFINITY);
    expect(ending([0.99])).toBeLessThan(ending([-1.05]));
    expect(least(ending, [[-2, 2]], 41)?.at[0]).toBeCloseTo(-Math.PI / 3, 3);
    expect(least(([x = 0]) => (x < 1 ? -x : Number.POSITIVE_INFINITY), [[-2, 2]], 41)).toBeUndefined();
    expect(least(() => Number.POSITIVE_INFINITY, [[-2, 2]], 5)).toBeUndefined();
  });
});

describe('the shop', () => {
  const limits = workshopLimits(50);

  it('grinds by the diameter, and not below what can be handled', () => {
    expect(limits).toEqual({ blankRadiusMm: 26, centreMm: 50 / 18, edgeMm: 1.5, airMm: 0.5, steepestOutside: 0.5, steepestInside: 0.8 });
    expect(workshopLimits(20)).toMatchObject({ centreMm: 2, edgeMm: 1.5 });
    expect(workshopLimits(100)).toMatchObject({ centreMm: 100 / 18, edgeMm: 3 });
  });
  it('makes a bulging piece by its rim, a hollow one by its middle, an air space by where its glasses come near', () => {
    const glass = plainIndex(1.5);
    // A sphere of 26 mm radius over a plane is a hemisphere: as thick as its radius, and the edge.
    expect(leastThickness(glass, 1 / 26, 0, limits)).toBeCloseTo(27.5, 12);
    expect(leastThickness(glass, -1 / 60, 1 / 60, limits)).toBe(50 / 18);
    expect(leastThickness(AIR, 1 / 60, 1 / 60, limits)).toBe(0.5);
    const touching = leastThickness(AIR, 1 / 60, 1 / 80, limits);
    expect(touching).toBeGreaterThan(0.5);
    expect(atRim(touching, 1 / 60, 1 / 80, limits)).toBeCloseTo(0.5, 12);
  });
});

describe('the job', () => {
  it('is a telephoto of 200 mm at f/10, out to the corner of full frame', () => {
    const { stopsMm, stopRadiusMm, cornerSlope } = closeUpJob(52);
    expect(stopsMm).toEqual([40, 75]);
    expect(stopRadiusMm).toBe(10);
    expect(cornerSlope * 200).toBeCloseTo(Math.hypot(36, 24) / 2, 3);
  });
  it.each([10, 20, 32, 40, 52, 95])('sends all of its light through a lens %d mm wide', (wide) => {
    const { stopsMm, stopRadiusMm, cornerSlope } = closeUpJob(wide);
    for (const stop of stopsMm) expect(stopRadiusMm + stop * cornerSlope).toBeLessThanOrEqual(wide / 2 + 1e-12);
  });
});

describe('a thin lens', () => {
  const [crown, flint] = [glassNamed('N-BK7') as Medium, glassNamed('N-SF5') as Medium];
  const power = (surfaces: ReturnType<typeof thinSurfaces>, indices: readonly number[]): number =>
    surfaces.reduce((sum, { offset }, k) => sum + ((indices[k + 1] as number) - (indices[k] as number)) * offset, 0);
  const through = (line: Line, air: boolean): number[] => {
    const [a, b] = [indexAtLine(crown, line), indexAtLine(flint, line)];
    return air ? [1, a, 1, b, 1] : [1, a, b, 1];
  };

  it.each([
    ['cemented', false, [0, 0, 0]],
    ['spaced', true, [0, 0, 1, 1]],
  ] as const)('%s has the power 1, the same in blue and red, and its bendings', (_, air, bendings) => {
    const surfaces = thinSurfaces([crown, flint], !air);
    expect(power(surfaces, through('d', air))).toBeCloseTo(1, 12);
    expect(power(surfaces, through('F', air)) - power(surfaces, through('C', air))).toBeCloseTo(0, 12);
    expect(surfaces.map((s) => s.bending)).toEqual(bendings);
    // A bending is the mean curvature of the first piece: its own surfaces stand evenly about it.
    expect((surfaces[0]?.offset as number) + (surfaces[1]?.offset as number)).toBeCloseTo(0, 12);
  });
});

describe('a lens in the making', () => {
  it('focuses where the ray matrices say', () => {
    const work = workpiece([plainIndex(1.52), AIR, plainIndex(1.67)]);
    work.d.curvature.set([0.01, -0.012, -0.011, 0.002]);
    work.d.gap.set([0, 9, 2, 3]);
    expect(backFocus(work.d)).toBeCloseTo(cardinal(work.d).backFocalLengthMm, 10);
  });
});
