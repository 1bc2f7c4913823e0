import { describe, expect, it } from 'vitest';
import { type TraceQuestion, tracedRelay } from '../../../core/lens/traced.ts';
import type { Relay } from '../../../core/parts/relay.ts';

/** Plano-convex: its focal length is the radius over the index less 1, whatever its thickness. */
const planoConvex = (radiusMm: number, glass: string | number = 1.5): Relay => ({
  kind: 'supplementary',
  glass: { radiiMm: [radiusMm, 'plane'], thicknessesMm: [1], glasses: [glass], semiAperturesMm: [1, 1] },
});
const ASKED: TraceQuestion = { pupilDiameterMm: 1, pupilDistanceMm: 10, slopes: [0], wavelengthsNm: [550], focus: 'paraxial' };
const { slopes: _, ...NO_FIELD } = ASKED;

const problems = (relay: Relay, asked: TraceQuestion = ASKED) => tracedRelay(relay, asked).problems ?? [];
const paths = (relay: Relay, asked: TraceQuestion = ASKED): string[] => problems(relay, asked).map((p) => `${p.path} ${p.code}`);

describe('the glass of a relay, traced', () => {
  it('takes the field by slopes, or by radii that are slopes times the focal length', () => {
    const bySlopes = tracedRelay(planoConvex(100), { ...ASKED, slopes: [0, 0.03] }).quality;
    expect(bySlopes?.effectiveFocalLengthMm).toBeCloseTo(200, 9);
    expect(bySlopes?.fields.map((field) => field.slope)).toEqual([0, 0.03]);
    const byRadii = tracedRelay(planoConvex(100), { ...NO_FIELD, fieldRadiiMm: [0, 6] }).quality;
    expect(byRadii?.fields.map((field) => field.slope)).toEqual([0, expect.closeTo(0.03, 12)]);
    expect(byRadii).toEqual(bySlopes);
  });

  it('has its radii by the first wavelength', () => {
    const fields = tracedRelay(planoConvex(100, 'N-BK7'), { ...NO_FIELD, fieldRadiiMm: [5], wavelengthsNm: [587.5618, 400] }).quality
      ?.fields;
    // N-BK7 has n_d = 1.5168: f = 193.5 mm.
    expect(fields?.[0]?.slope).toBeCloseTo((5 * 0.5168) / 100, 6);
  });

  it('is asked over a field that is told once', () => {
    expect(paths(planoConvex(100), NO_FIELD)).toEqual(['/fieldRadiiMm missing']);
    expect(paths(planoConvex(100), { ...ASKED, fieldRadiiMm: [1] })).toEqual(['/slopes contradiction']);
  });

  it('tells what else is wrong besides the field', () => {
    expect(paths({ kind: 'supplementary' })).toEqual(['/relay/glass missing']);
    expect(paths({ kind: 'supplementary' }, NO_FIELD)).toEqual(['/fieldRadiiMm missing', '/relay/glass missing']);
    expect(paths(planoConvex(100, 'butter'), NO_FIELD)).toEqual(['/fieldRadiiMm missing', '/relay/glass/glasses/0 unknownGlass']);
    expect(paths(planoConvex(100, 'N-BK7'), { ...NO_FIELD, wavelengthsNm: [200] })).toEqual([
      '/fieldRadiiMm missing',
      '/wavelengthsNm/0 outOfRange',
    ]);
  });

  it('is asked in light that its glass is known for, both ends included', () => {
    const crown = planoConvex(100, 'N-BK7');
    expect(paths(crown, { ...ASKED, wavelengthsNm: [300, 550, 2500] })).toEqual([]);
    const told = problems(crown, { ...ASKED, wavelengthsNm: [299, 550, 2501] });
    expect(told.map((p) => [p.path, p.given, p.expected])).toEqual([
      ['/wavelengthsNm/0', '299', '300 to 2500 nm'],
      ['/wavelengthsNm/2', '2501', '300 to 2500 nm'],
    ]);
    expect(told[0]?.message).toContain('N-BK7');
  });

  it.each([
    [2.5, 5],
    [2500, 5000],
  ])('may be as short or as long as any relay: a radius of %d mm', (radius, f) =>
    expect(tracedRelay(planoConvex(radius), ASKED).quality?.effectiveFocalLengthMm).toBeCloseTo(f, 9),
  );

  it.each<[string, Relay, string]>([
    ['too short', planoConvex(2.4), 'comes to a focal length of 4.8 mm'],
    ['too long', planoConvex(2600.44), 'comes to a focal length of 5201 mm'],
    ['scattering', planoConvex(-100), 'comes to a focal length of −200 mm'],
    [
      'without power',
      { kind: 'supplementary', glass: { radiiMm: ['plane', 'plane'], thicknessesMm: [1], glasses: [1.5] } },
      'has no power: it focuses nothing',
    ],
  ])('is refused where it is %s, for the first wavelength alone', (_, relay, message) =>
    expect(problems(relay, { ...ASKED, wavelengthsNm: [550, 600] })).toMatchObject([
      { path: '/relay/glass', code: 'noPower', message, expected: 'a focal length from 5 to 5000 mm' },
    ]),
  );

  // N-BK7: 2580 / 0.51680 = 4992 at d, 2580 / 0.51306 = 5029 at 700 nm.
  it('is refused in the one light in which it comes out too long', () =>
    expect(problems(planoConvex(2580, 'N-BK7'), { ...ASKED, wavelengthsNm: [587.5618, 700, 486.1327] })).toMatchObject([
      {
        path: '/wavelengthsNm/1',
        given: '700',
        message: expect.stringMatching(/^is light in which the glass comes to a focal length of 50(28|29) mm$/),
      },
    ]));
});
