import { describe, expect, it } from 'vitest';
import { clearDiameter, lensOfRelay, listedLens, statedFocalLength } from '../../../core/lens/relay-lens.ts';
import type { Relay } from '../../../core/parts/relay.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { prescription } from '../../../core/trace/prescription.ts';

const relay = (more: Partial<Relay> = {}): Relay => ({ kind: 'supplementary', ...more });
const PLANO = { radiiMm: [100, 'plane' as const], thicknessesMm: [5], glasses: [1.5] };

describe('what a relay says of itself', () => {
  it('is a focal length, or a power, of which 1000 mm over the dioptres is one', () => {
    expect(statedFocalLength(relay({ focalLengthMm: 180 }))).toBe(180);
    expect(statedFocalLength(relay({ focalLengthMm: { value: 190, origin: 'measured' } }))).toBe(190);
    expect(statedFocalLength(relay({ powerDioptre: 5 }))).toBe(200);
    expect(statedFocalLength(relay({ focalLengthMm: 190, powerDioptre: 5 }))).toBe(190);
    expect(statedFocalLength(relay())).toBeUndefined();
  });

  it('is a clear diameter, or a thread that is 4 mm wider', () => {
    expect(clearDiameter(relay({ clearApertureMm: 50, maleThread: 'M58' }))).toBe(50);
    expect(clearDiameter(relay({ maleThread: 'M58' }))).toBe(54);
    expect(clearDiameter(relay())).toBeUndefined();
  });
});

describe('the lens of a relay', () => {
  it('is as listed, turned round where the relay is', () => {
    expect(lensOfRelay(relay({ glass: PLANO })).lens?.radiiMm).toEqual([100, Number.POSITIVE_INFINITY]);
    expect(lensOfRelay(relay({ glass: PLANO, reversed: true })).lens?.radiiMm).toEqual([Number.POSITIVE_INFINITY, -100]);
    expect(listedLens(relay({ glass: PLANO, reversed: true })).lens?.radiiMm).toEqual([100, Number.POSITIVE_INFINITY]);
  });

  it('whose listing is wrong is told so either way round', () => {
    for (const reversed of [false, true])
      expect(lensOfRelay(relay({ glass: { ...PLANO, glasses: ['butter'] }, reversed })).problems).toMatchObject([
        { path: '/relay/glass/glasses/0' },
      ]);
  });

  it('of a class is made for what the relay says', () => {
    const { lens, problems } = listedLens(relay({ powerDioptre: 4, maleThread: 'M40', glass: { class: 'singlet', crown: 'N-K5' } }));
    expect(problems).toBeUndefined();
    expect(lens && cardinal(prescription(lens, 587.5618)).effectiveFocalLengthMm).toBeCloseTo(250, 6);
    expect(lens?.semiAperturesMm).toEqual([18, 18]);
    expect(lens?.media.map((m) => m.name)).toEqual(['N-K5']);
  });

  it.each<[string, Partial<Relay>, string[]]>([
    ['focal length', { clearApertureMm: 40 }, ['/relay/focalLengthMm']],
    ['diameter', { focalLengthMm: 200 }, ['/relay/clearApertureMm']],
    ['focal length and diameter', {}, ['/relay/focalLengthMm', '/relay/clearApertureMm']],
  ])('of a class is not made without a %s', (_, more, paths) => {
    const { problems } = listedLens(relay({ ...more, glass: { class: 'singlet' } }));
    expect(problems?.map((p) => [p.path, p.code])).toEqual(paths.map((path) => [path, 'missing']));
  });

  it('of a class that cannot be made is told why', () => {
    const { problems } = listedLens(relay({ focalLengthMm: 20, clearApertureMm: 50, glass: { class: 'singlet' } }));
    expect(problems).toMatchObject([{ path: '/relay/glass', code: 'cannotBeMade' }]);
    expect(problems?.[0]?.message).toMatch(/^cannot be made with f = 20 mm and 50 mm across: /);
  });
});
