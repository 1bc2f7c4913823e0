import { expect, it } from 'vitest';
import { plainIndex } from '../../../core/glass/medium.ts';
import { familyTold } from '../../../core/lens/family.ts';
import type { MadeLens, Residuals, Unmade } from '../../../core/lens/made.ts';

const residuals = { centreThicknessesMm: [3], edgeThicknessesMm: [1] } as unknown as Residuals;
const made = (name: string, more: Partial<MadeLens> = {}): MadeLens => ({
  kind: 'singlet',
  name,
  crown: 'N-BK7',
  leading: 'crown',
  lens: {
    radiiMm: [Number.POSITIVE_INFINITY, -80],
    thicknessesMm: [4],
    media: [plainIndex(1.5)],
    semiAperturesMm: [20, 20],
  },
  residuals,
  ...more,
});
const unmade: Unmade = { kind: 'cemented-achromat', name: 'steep', crown: 'K7', flint: 'F2', leading: 'flint', why: 'too steep' };

it('a family is told as glass that can be sent back, and apart from it what cannot be made', () => {
  const told = familyTold([made('single'), unmade, made('pair', { flint: 'SF5', leading: 'flint' })]);
  expect(told.unmade).toEqual([{ name: 'steep', why: 'too steep' }]);
  const single = {
    name: 'single',
    crown: 'N-BK7',
    leading: 'crown',
    glass: { radiiMm: ['plane', -80], thicknessesMm: [4], glasses: ['1.5'], semiAperturesMm: [20, 20] },
    residuals,
  };
  // Strictly: a single lens has no flint, not one that is undefined.
  expect(told.lenses).toStrictEqual([single, { ...single, name: 'pair', flint: 'SF5', leading: 'flint' }]);
});
