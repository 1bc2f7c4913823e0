import { describe, expect, it } from 'vitest';
import { arcs, overlapAcross, overlapAlong, sharedArea } from '../../../core/pupil/discs.ts';

/** Two unit discs a radius apart: their border changes half-way. */
const LENS = { walk: [0, 1], radius: [1, 1] };

describe('the border of what discs share', () => {
  it('goes from the disc that begins last to the one that ends first, whatever their order', () => {
    expect(arcs(LENS, 1)).toEqual([
      { of: 1, from: 0, to: 0.5 },
      { of: 0, from: 0.5, to: 1 },
    ]);
    expect(arcs({ walk: [1, 0], radius: [1, 1] }, 1)).toEqual([
      { of: 0, from: 0, to: 0.5 },
      { of: 1, from: 0.5, to: 1 },
    ]);
  });

  it('is that of the inner disc alone where the outer one touches it, on either side', () => {
    const touching = { walk: [0, 1], radius: [2, 1] };
    expect(arcs(touching, 1)).toEqual([{ of: 1, from: 0, to: 2 }]);
    expect(arcs(touching, -1)).toEqual([{ of: 1, from: -2, to: 0 }]);
    for (const slope of [1, -1]) expect(sharedArea(touching, slope)[0]).toBeCloseTo(Math.PI, 13);
  });

  it('is that of the innermost of three that touch in one point, in any order', () => {
    const radii = [3, 1, 2];
    for (const order of [
      [0, 1, 2],
      [2, 1, 0],
      [0, 2, 1],
    ]) {
      const radius = order.map((i) => radii[i] as number);
      for (const slope of [1, -1]) expect(sharedArea({ walk: radius, radius }, slope)[0]).toBeCloseTo(Math.PI, 12);
    }
  });
});

describe('what of a shared area is left beside its shifted copy', () => {
  it('is the same whichever way it is shifted', () => {
    for (const shift of [0.3, 0.8, 1.5]) {
      expect(overlapAcross(LENS, 1, shift)).toBeGreaterThan(0);
      expect(overlapAcross(LENS, 1, -shift)).toBe(overlapAcross(LENS, 1, shift));
      expect(overlapAlong(LENS, 1, -shift)).toBeCloseTo(overlapAlong(LENS, 1, shift), 12);
    }
  });

  it('is nothing once the shift is as great as the area is wide: the lens is √3 high and 1 across', () => {
    expect(overlapAcross(LENS, 1, 1.8)).toBe(0);
    expect(overlapAcross(LENS, 1, Math.sqrt(3) * 0.999)).toBeGreaterThan(0);
    expect(overlapAcross(LENS, 1, 2.5)).toBe(0);
    expect(overlapAlong(LENS, 1, 1.001)).toBe(0);
    expect(overlapAlong(LENS, 1, 0.999)).toBeGreaterThan(0);
  });
});
