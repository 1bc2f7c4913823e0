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
  it('of one disc, wherever it lies, is what two discs so far apart share', () => {
    for (const shift of [0.2, 1, 1.7]) {
      const exact = 2 * Math.acos(shift / 2) - (shift / 2) * Math.sqrt(4 - shift * shift);
      for (const slope of [0.5, -2]) {
        expect(overlapAlong({ walk: [3], radius: [1] }, slope, shift)).toBeCloseTo(exact, 12);
        expect(overlapAcross({ walk: [3], radius: [1] }, slope, shift)).toBeCloseTo(exact, 12);
      }
    }
  });

  it('along the line of centres is what the outermost two share: of discs 1 apart, those 1.4 apart', () => {
    const exact = 2 * Math.acos(0.7) - 0.7 * Math.sqrt(4 - 1.96);
    expect(overlapAlong({ walk: [-4, -2], radius: [1, 1] }, 0.5, 0.4)).toBeCloseTo(exact, 12);
  });

  // Half the area above y = s / 2, by a plain sum: the lens is 2 (√(1 - y²) - 1/2) long at y from its long axis.
  it('across it is what of each chord lies farther out than half the shift, on either side', () => {
    const [shift, steps] = [0.6, 20_000];
    const [low, high] = [shift / 2, Math.sqrt(3) / 2];
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += 2 * (Math.sqrt(1 - (low + ((high - low) * (i + 0.5)) / steps) ** 2) - 0.5);
    expect(overlapAcross({ walk: [6, 8], radius: [1, 1] }, 0.5, shift)).toBeCloseTo((2 * sum * (high - low)) / steps, 7);
  });

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
