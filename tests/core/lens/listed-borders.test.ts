import { describe, expect, it } from 'vitest';
import { lensOf } from '../../../core/lens/listed.ts';
import type { GlassListing } from '../../../core/parts/relay-glass.ts';

const wrong = (listing: GlassListing) => lensOf(listing, false).problems ?? [];
const likely = (name: string): string | undefined =>
  wrong({ radiiMm: [100, 'plane'], thicknessesMm: [3], glasses: [name] })[0]?.expected.split(';')[0];

describe('a glass that is not known is told which ones look like it:', () => {
  it.each([
    ['one whose name is in it', 'F5-glass', 'F5'],
    ['one in whose name it is', 'n-lasf', 'N-LASF44'],
    ['the first four of many', 'SF', 'N-BASF2 or N-SF1 or N-SF2 or N-SF5'],
  ])('%s', (_, name, expected) => expect(likely(name)).toBe(expected));

  it('none where it has no letter or digit', () => expect(likely('?!')).toMatch(/^a name that GET/));
});

describe('a listing', () => {
  it('may have 16 surfaces, all in one lens', () =>
    expect(wrong({ radiiMm: Array(16).fill('plane'), thicknessesMm: Array(15).fill(1), glasses: Array(15).fill(1.5) })).toEqual([]));

  it('of a second lens turned round has that lens from behind, with what lies between its surfaces', () => {
    const { lens } = lensOf(
      {
        radiiMm: [100, 'plane'],
        thicknessesMm: [3],
        glasses: [1.5],
        second: { gapMm: 2, radiiMm: [90, -70, -200], thicknessesMm: [8, 4], glasses: [1.6, 1.7], reversed: true },
      },
      false,
    );
    expect(lens?.radiiMm.slice(2)).toEqual([200, 70, -90]);
    expect(lens?.thicknessesMm).toEqual([3, 2, 4, 8]);
    expect(lens?.media.map((m) => m.name)).toEqual(['1.5', 'air', '1.7', '1.6']);
  });

  it('may be a tiny ball: its rim is its own where none is listed, and 0.1 mm is the smallest radius', () => {
    expect(wrong({ radiiMm: [0.5, 'plane'], thicknessesMm: [0.2], glasses: [1.5] })).toEqual([]);
    expect(wrong({ radiiMm: [0.1, 'plane'], thicknessesMm: [0.05], glasses: [1.5] })).toEqual([]);
    expect(wrong({ radiiMm: [0.099, 'plane'], thicknessesMm: [0.05], glasses: [1.5] })).toMatchObject([{ code: 'tooSmall' }]);
  });

  // Two surfaces of 50 mm, bulging apart, touch at the height h where the sags, h²/100 each, fill the thickness.
  it('has glass to a height of 0.05 mm at least', () => {
    const thin = (height: number) => wrong({ radiiMm: [50, -50], thicknessesMm: [height ** 2 / 50], glasses: [1.5] });
    expect(thin(0.0502)).toEqual([]);
    expect(thin(0.0498)).toMatchObject([
      {
        path: '/relay/glass/thicknessesMm/0',
        message: 'lets its two surfaces pass through each other',
        // 0.05² / 50 and a hair more, rounded up.
        expected: 'at least 0.0000501',
      },
    ]);
  });

  it('may touch a second lens whose rim alone is listed', () => {
    const bowl: GlassListing = {
      radiiMm: ['plane', 40],
      thicknessesMm: [3],
      glasses: [1.5],
      second: { gapMm: 0.01, radiiMm: [38, 'plane'], thicknessesMm: [9], glasses: [1.5], semiAperturesMm: [15, 15] },
    };
    expect(wrong(bowl)).toEqual([]);
    expect(wrong({ ...bowl, semiAperturesMm: [15, 15] })).toEqual([]);
    // A ball in the hollow of another's: 40 mm outside, 38 inside.
    const hollow: GlassListing = {
      ...bowl,
      radiiMm: ['plane', 38],
      second: { ...(bowl.second as object), radiiMm: [40, 'plane'] } as never,
    };
    expect(wrong(hollow)).toEqual([]);
    const told = wrong({ ...hollow, semiAperturesMm: [15, 15] });
    // Sags at 15 mm: 38 - √(38² - 15²) = 3.0858, 40 - √(40² - 15²) = 2.9190. They differ by 0.01 where
    // h²/2 (1/38 - 1/40) + h⁴/8 (1/38³ - 1/40³) = 0.01: at 3.884 mm.
    expect(told).toMatchObject([
      { path: '/relay/glass/second/gapMm', expected: expect.stringMatching(/^at least 0\.167, or semi-apertures of at most 3\.88$/) },
    ]);
  });
});
