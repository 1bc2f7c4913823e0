import { describe, expect, it } from 'vitest';
import { problemsOf, relaySchema } from '../../../core/index.ts';
import { lensOf } from '../../../core/lens/listed.ts';
import type { GlassListing } from '../../../core/parts/relay-glass.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { type Lens, reversed } from '../../../core/trace/lens.ts';
import { prescription } from '../../../core/trace/prescription.ts';

const DOUBLET = { radiiMm: [124.6, -88.14, -254.13], thicknessesMm: [6, 3], glasses: ['N-BK7', 'N-SF5'] };
const made = (listing: GlassListing, turned = false): Lens => {
  const { lens, problems } = lensOf(listing, turned);
  expect(problems).toBeUndefined();
  return lens as Lens;
};
const wrong = (listing: GlassListing) => lensOf(listing, false, '/relay/glass').problems ?? [];
const f = (lens: Lens): number => cardinal(prescription(lens, 587.5618)).effectiveFocalLengthMm;

describe('a listing of glass', () => {
  it('is the lens that it says, planes and air and plain indices among it', () => {
    const lens = made({
      radiiMm: [60, 'plane', -90, 'plane'],
      thicknessesMm: [5, 2, 3],
      glasses: ['n-bk7', 'air', 1.6],
      semiAperturesMm: [10, 11, 12, 13],
    });
    expect(lens.radiiMm).toEqual([60, Number.POSITIVE_INFINITY, -90, Number.POSITIVE_INFINITY]);
    expect(lens.thicknessesMm).toEqual([5, 2, 3]);
    expect(lens.media.map((m) => m.indexAt(587.5618).toFixed(4))).toEqual(['1.5168', '1.0000', '1.6000']);
    expect(lens.semiAperturesMm).toEqual([10, 11, 12, 13]);
  });
  it('without semi-apertures lets light through as far as there is glass', () => {
    // Sags of 6 mm between 124.6 and -88.14: h²/2 (1/124.6 + 1/88.14) and a little more.
    const [first, second, third] = made(DOUBLET).semiAperturesMm as [number, number, number];
    expect(first).toBe(second);
    expect(first).toBeGreaterThan(23.9);
    expect(first).toBeLessThan(25);
    expect(third).toBeCloseTo(88.14, 9);
  });
  it('turned round is the lens from its other side', () => {
    expect(made(DOUBLET, true)).toEqual(reversed(made(DOUBLET)));
    expect(made(DOUBLET, true).radiiMm).toEqual([254.13, 88.14, -124.6]);
  });
  it('with a second lens stands them in a row, with air between', () => {
    const second = { radiiMm: [80, 'plane' as const], thicknessesMm: [4], glasses: ['F2'], semiAperturesMm: [20, 19] };
    const lens = made({ ...DOUBLET, second: { gapMm: 2.5, ...second } });
    expect(lens.radiiMm).toEqual([124.6, -88.14, -254.13, 80, Number.POSITIVE_INFINITY]);
    expect(lens.thicknessesMm).toEqual([6, 3, 2.5, 4]);
    expect(lens.media.map((m) => m.name)).toEqual(['N-BK7', 'N-SF5', 'air', 'F2']);
    expect(lens.semiAperturesMm.slice(3)).toEqual([20, 19]);
    const other = made({ ...DOUBLET, second: { gapMm: 2.5, ...second, reversed: true } });
    expect(other.radiiMm.slice(3)).toEqual([Number.POSITIVE_INFINITY, -80]);
    expect(other.semiAperturesMm.slice(3)).toEqual([19, 20]);
    // Turned round as a whole the second lens comes first, its own turn undone.
    expect(made({ ...DOUBLET, second: { gapMm: 2.5, ...second, reversed: true } }, true).radiiMm.slice(0, 2)).toEqual([
      80,
      Number.POSITIVE_INFINITY,
    ]);
    // Powers of thin lenses in contact add up, nearly.
    expect(1 / f(lens)).toBeCloseTo(1 / f(made(DOUBLET)) + 1 / f(made(second)), 3);
  });
  it('may touch in the middle, and be as steep as its rim', () => {
    made({ radiiMm: ['plane', -50, 50, 'plane'], thicknessesMm: [3, 0, 3], glasses: [1.5, 'air', 1.5], semiAperturesMm: [12, 12, 12, 12] });
    made({ radiiMm: [12, 'plane'], thicknessesMm: [12], glasses: [1.5], semiAperturesMm: [12, 12] });
  });
});

describe('a listing that makes no lens is told where and what would do:', () => {
  it.each<[string, GlassListing, string, string, RegExp, RegExp]>([
    ['a thickness too few', { ...DOUBLET, thicknessesMm: [6] }, '/thicknessesMm', 'wrongCount', /1 entries for 3/, /^2 entries/],
    ['a glass too many', { ...DOUBLET, glasses: ['F2', 'F2', 'F2'] }, '/glasses', 'wrongCount', /3 entries for 3/, /^2 entries/],
    ['a semi-aperture too few', { ...DOUBLET, semiAperturesMm: [9, 9] }, '/semiAperturesMm', 'wrongCount', /2 entries/, /^3 entries/],
    ['an unknown glass', { ...DOUBLET, glasses: ['N-BK7', 'SF-5'] }, '/glasses/1', 'unknownGlass', /no glass/, /SF5.*GET \/api\/glasses/],
    ['a glass like none', { ...DOUBLET, glasses: ['butter', 'SF5'] }, '/glasses/0', 'unknownGlass', /no glass/, /^a name that GET/],
    ['a radius of 0', { ...DOUBLET, radiiMm: [0, -88, -254] }, '/radiiMm/0', 'tooSmall', /nearer to 0/, /"plane"/],
    ['a radius of next to nothing', { ...DOUBLET, radiiMm: [1e-300, -88, -254] }, '/radiiMm/0', 'tooSmall', /nearer to 0/, /0\.1 mm/],
    [
      'a surface that ends before its rim',
      { ...DOUBLET, radiiMm: [124.6, -20, -254.13], semiAperturesMm: [10, 22, 10] },
      '/radiiMm/1',
      'contradiction',
      /ends before its rim/,
      /at least 22 mm either way, or semiAperturesMm\/1 of at most 20/,
    ],
    [
      'edges that touch within the rims',
      { ...DOUBLET, semiAperturesMm: [25, 25, 25] },
      '/thicknessesMm/0',
      'contradiction',
      /beyond 24(\.\d)? mm from the axis/,
      /at least 6\.\d+, or semi-apertures of at most 24/,
    ],
    [
      'surfaces that pass through each other on the axis',
      { radiiMm: [50, -50], thicknessesMm: [0], glasses: [1.5] },
      '/thicknessesMm/0',
      'contradiction',
      /pass through each other/,
      /at least/,
    ],
    [
      'a second lens that stands in the first',
      {
        ...DOUBLET,
        semiAperturesMm: [20, 20, 20],
        second: { gapMm: 0.1, radiiMm: [-30, 'plane'], thicknessesMm: [8], glasses: [1.5], semiAperturesMm: [15, 15] },
      },
      '/second/gapMm',
      'contradiction',
      /leaves nothing/,
      /at least 3\.\d+/,
    ],
    [
      'more surfaces than are traced',
      {
        radiiMm: Array(9).fill('plane'),
        thicknessesMm: Array(8).fill(1),
        glasses: Array(8).fill(1.5),
        second: { gapMm: 1, radiiMm: Array(8).fill('plane'), thicknessesMm: Array(7).fill(1), glasses: Array(7).fill(1.5) },
      },
      '/second/radiiMm',
      'tooBig',
      /17 surfaces/,
      /at most 16/,
    ],
    [
      'a second lens of unknown glass',
      { ...DOUBLET, second: { gapMm: 1, radiiMm: ['plane', -90], thicknessesMm: [3], glasses: ['BK-7'] } },
      '/second/glasses/0',
      'unknownGlass',
      /no glass/,
      /N-BK7/,
    ],
    [
      'a second lens turned round, by the place where it is listed',
      {
        ...DOUBLET,
        second: {
          gapMm: 30,
          radiiMm: [-20, 90, 'plane'],
          thicknessesMm: [1, 9],
          glasses: [1.5, 1.6],
          semiAperturesMm: [22, 10, 10],
          reversed: true,
        },
      },
      '/second/radiiMm/0',
      'contradiction',
      /ends before/,
      /at least 22/,
    ],
  ])('%s', (_, listing, path, code, message, expected) => {
    const problems = wrong(listing);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      path: `/relay/glass${path}`,
      code,
      message: expect.stringMatching(message),
      expected: expect.stringMatching(expected),
    });
    expect(JSON.stringify(problems)).not.toMatch(/NaN|Infinity|undefined/);
  });
  it('each fault once, several together', () => {
    const paths = wrong({ ...DOUBLET, thicknessesMm: [6, 3, 1], glasses: ['x', 'y'] }).map((p) => p.path);
    expect(paths).toEqual(['/relay/glass/thicknessesMm', '/relay/glass/glasses/0', '/relay/glass/glasses/1']);
  });
  it('what it says would do does', () => {
    const thick = wrong({ ...DOUBLET, semiAperturesMm: [25, 25, 25] })[0]?.expected ?? '';
    const [thickness, semi] = [...thick.matchAll(/[\d.]+/g)].map(Number) as [number, number];
    made({ ...DOUBLET, thicknessesMm: [thickness, 3], semiAperturesMm: [25, 25, 25] });
    made({ ...DOUBLET, semiAperturesMm: [semi, semi, semi] });
  });
});

describe('the schema of a relay’s glass', () => {
  const parsed = (glass: unknown) => relaySchema.safeParse({ kind: 'supplementary', glass });
  const told = (glass: unknown) => {
    const { error } = parsed(glass);
    return error ? problemsOf(error, { kind: 'supplementary', glass }).map((p) => [p.path, p.code]) : [];
  };
  it('takes a listing or a class', () => {
    expect(parsed(DOUBLET).success).toBe(true);
    expect(
      parsed({ ...DOUBLET, glasses: [1.52, 'air'], semiAperturesMm: [9, 9, 9], second: { gapMm: 0, ...DOUBLET, reversed: true } }).success,
    ).toBe(true);
    expect(parsed({ class: 'cemented-achromat' }).success).toBe(true);
    expect(parsed({ class: 'singlet', crown: 'N-BK7', flint: 'F2', leading: 'flint' }).success).toBe(true);
  });
  it.each<[string, unknown, string[][]]>([
    ['a negative thickness', { ...DOUBLET, thicknessesMm: [6, -3] }, [['/thicknessesMm/1', 'tooSmall']]],
    [
      'many faults of a listing',
      { radiiMm: ['flat', 1e9, 3], thicknessesMm: [-1, -1], glasses: [9, ''] },
      [
        ['/radiiMm/0', 'wrongType'],
        ['/radiiMm/1', 'tooBig'],
        ['/thicknessesMm/0', 'tooSmall'],
        ['/thicknessesMm/1', 'tooSmall'],
        ['/glasses/0', 'tooBig'],
        ['/glasses/1', 'tooSmall'],
      ],
    ],
    ['one surface', { radiiMm: [50], thicknessesMm: [3], glasses: ['F2'] }, [['/radiiMm', 'tooSmall']]],
    [
      '17 surfaces',
      { radiiMm: Array(17).fill(50), thicknessesMm: Array(16).fill(3), glasses: Array(16).fill('F2') },
      [
        ['/radiiMm', 'tooBig'],
        ['/thicknessesMm', 'tooBig'],
        ['/glasses', 'tooBig'],
      ],
    ],
    ['an unknown class', { class: 'triplet' }, [['/class', 'notOneOf']]],
    [
      'a class with faults of its own',
      { class: 'singlet', crown: 3, leading: 'last' },
      [
        ['/crown', 'wrongType'],
        ['/leading', 'notOneOf'],
      ],
    ],
    ['a listing with a class', { ...DOUBLET, class: 'singlet' }, [['', 'unknownName']]],
    ['a second lens without a gap', { ...DOUBLET, second: DOUBLET }, [['/second/gapMm', 'missing']]],
    ['text', 'N-BK7', [['', 'wrongType']]],
    ['a list', [DOUBLET], [['', 'wrongType']]],
  ])('tells %s at its very place', (_, glass, expected) => {
    expect(told(glass)).toEqual(expected.map(([path, code]) => [`/glass${path}`, code]));
  });
});
