import { describe, expect, it } from 'vitest';
import { thinSurfaces } from '../../../../core/lens/made/thin.ts';
import { glassOf } from './media.ts';

const told = (...all: readonly (readonly [number, number])[]) => all.map(([bending, offset]) => ({ bending, offset }));

describe('a thin lens of power 1', () => {
  it('of one glass is bent evenly: each side gives half of it', () => {
    // 1 = 0.5 (c1 - c2).
    expect(thinSurfaces([glassOf(1.5, 60)], true)).toEqual(told([0, 1], [0, -1]));
    expect(thinSurfaces([glassOf(1.5, 60)], false)).toEqual(told([0, 1], [0, -1]));
  });

  it('of two glasses has the powers by which colours cancel: 60 / 30 and -30 / 30', () => {
    const glasses = [glassOf(1.5, 60), glassOf(1.6, 30)];
    // Powers 2 and -1: curved by 2 / 0.5 = 4 and by -1 / 0.6.
    const flint = 1 / 0.6;
    const due = { cemented: [2, -2, -2 + flint], spaced: [2, -2, -flint / 2, flint / 2] };
    const [cemented, spaced] = [thinSurfaces(glasses, true), thinSurfaces(glasses, false)];
    expect(cemented.map((s) => s.bending)).toEqual([0, 0, 0]);
    expect(spaced.map((s) => s.bending)).toEqual([0, 0, 1, 1]);
    expect(cemented).toHaveLength(due.cemented.length);
    expect(spaced).toHaveLength(due.spaced.length);
    for (const [k, offset] of due.cemented.entries()) expect(cemented[k]?.offset).toBeCloseTo(offset, 12);
    for (const [k, offset] of due.spaced.entries()) expect(spaced[k]?.offset).toBeCloseTo(offset, 12);
  });

  it('cannot be an achromat of one Abbe number', () => {
    expect(() => thinSurfaces([glassOf(1.5, 60), glassOf(1.5, 60)], true)).toThrow(RangeError);
  });
});
