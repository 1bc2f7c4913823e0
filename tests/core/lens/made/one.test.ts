import { describe, expect, it } from 'vitest';
import { LINES } from '../../../../core/glass/lines.ts';
import { familyOf, isMade, madeLens, triedFamily } from '../../../../core/lens/made.ts';
import { cardinal } from '../../../../core/trace/cardinal.ts';
import { prescription } from '../../../../core/trace/prescription.ts';

/** Of single lenses, which take milliseconds. */

describe('one single lens', () => {
  it('is listed by radii, one thickness, one glass and its clear height', () => {
    const made = madeLens('singlet', 250, 44);
    if (!isMade(made)) throw new Error(made.why);
    const { lens, residuals, name } = made;
    expect(name).toBe('single lens, N-BK7');
    expect([lens.radiiMm.length, lens.thicknessesMm.length, lens.media.length]).toEqual([2, 1, 1]);
    expect(lens.semiAperturesMm).toEqual([22, 22]);
    const seen = prescription(lens, LINES.d);
    expect(cardinal(seen).effectiveFocalLengthMm / 250).toBeCloseTo(1, 11);
    expect(residuals.centreThicknessesMm).toEqual(lens.thicknessesMm);
    // 1/f = (n - 1)(1/R - 1/R' + (n - 1) t / (n R R')).
    const [before, behind, t, n] = [...lens.radiiMm, lens.thicknessesMm[0], lens.media[0]?.indexAt(LINES.d)] as [
      number,
      number,
      number,
      number,
    ];
    expect(1 / ((n - 1) * (1 / before - 1 / behind + ((n - 1) * t) / (n * before * behind)))).toBeCloseTo(250, 9);
  });

  it('is of the glass that is asked for, or says that there is none', () => {
    expect(madeLens('singlet', 250, 44, { crown: 'N-SK16' })).toMatchObject({ name: 'single lens, N-SK16', crown: 'N-SK16' });
    const none = madeLens('singlet', 250, 44, { crown: 'N-SK1616' });
    expect(isMade(none)).toBe(false);
    expect(none).toMatchObject({ why: 'no glass is known by the name of N-SK1616' });
  });

  it('says how steep it may be where it cannot be made', () => {
    // Ground 52 mm wide: half of its radius outside, 0.8 of it inside.
    expect(madeLens('singlet', 40, 50)).toMatchObject({
      why: 'does its job best with surfaces too steep to make: under 52.0 mm of radius outside or 32.5 mm inside, for glass 52.0 mm wide',
    });
  });

  it('wants a positive focal length and a positive diameter', () => {
    for (const [focal, wide] of [
      [0, 44],
      [-1, 44],
      [Number.NaN, 44],
      [250, 0],
      [250, -1],
      [250, Number.NaN],
    ] as const)
      expect(() => madeLens('singlet', focal, wide)).toThrow(RangeError);
    // However small: a ball of glass 2 mm wide for a hair's breadth of light.
    expect(isMade(madeLens('singlet', 0.5, 44))).toBe(false);
    expect(isMade(madeLens('singlet', 250, 0.5))).toBe(true);
  });
});

describe('a family of single lenses', () => {
  it('is what can be made of all that were tried: at 64 mm those of the higher indices', () => {
    const tried = triedFamily('singlet', 64, 50);
    expect(tried.map(({ crown }) => crown)).toEqual(['N-BK7', 'N-K5', 'N-BAK4', 'N-SK16']);
    expect(tried.map(isMade)).toEqual([false, false, true, true]);
    expect(familyOf('singlet', 64, 50).map(({ crown }) => crown)).toEqual(['N-BAK4', 'N-SK16']);
  });
});
