import { describe, expect, it } from 'vitest';
import { type Medium, medium } from '../../../core/glass/medium.ts';
import { glassRelay } from '../../../core/lens/glass-relay.ts';
import { glassworks } from '../../../core/lens/glassworks.ts';
import type { FocusQuestion, SharpQuestion } from '../../../core/pairing/glassworks.ts';
import type { Relay } from '../../../core/parts/relay.ts';
import type { Discs } from '../../../core/pupil/discs.ts';
import type { Lens } from '../../../core/trace/lens.ts';

/** A glass that counts how often its index is asked for: each answer that is worked out asks for it. */
function counting(): { readonly glass: Medium; asked(): number } {
  let n = 0;
  const glass = medium('counting', [100, 3000], () => {
    n++;
    return 1.5;
  });
  return { glass, asked: () => n };
}

function rig() {
  const { glass, asked } = counting();
  const lens: Lens = { radiiMm: [Number.POSITIVE_INFINITY, -100], thicknessesMm: [5], media: [glass], semiAperturesMm: [27, 22] };
  return { relay: glassRelay(lens, 550), asked };
}

const DISC: Discs = { walk: [0], radius: [5] };
const sharp = (discs: Discs, more: Partial<SharpQuestion> = {}): SharpQuestion => ({
  discs,
  pupilDistanceMm: 80,
  frequencyLpPerMm: 75,
  relativeContrast: 0.8,
  focus: 'one frame',
  spectrum: 'one wavelength',
  wavelengthNm: 550,
  scaleMm: 200,
  limitMm: 8,
  ...more,
});
const spread = (discs: Discs, cornerSlope = 0.04): FocusQuestion => ({
  discs,
  pupilDistanceMm: 80,
  frequencyLpPerMm: 40,
  spectrum: 'one wavelength',
  wavelengthNm: 550,
  cornerSlope,
});
/** Beams that no light is left of cost next to nothing. */
const DARK: Discs = { walk: [0, 0], radius: [5, 0] };

describe('a lens as a relay', () => {
  it('is as wide as its narrowest surface', () => expect(rig().relay.clearDiameterMm).toBe(44));

  it.each<[string, (relay: ReturnType<typeof glassRelay>, discs: Discs) => number]>([
    ['its sharp circle', (relay, discs) => relay.sharpRadiusMm(sharp(discs))],
    ['the spread of its foci', (relay, discs) => relay.focusSpreadMm(spread(discs))],
  ])('does not work out again %s, nor with stops that cut nothing', (_, answer) => {
    const { relay, asked } = rig();
    const first = answer(relay, DISC);
    const before = asked();
    expect(answer(relay, DISC)).toBe(first);
    // Out to a slope of 0.04 the second stop's middle walks 4 mm: 9 mm just hold the beam of 5 mm.
    for (const discs of [
      { walk: [0, 100], radius: [5, 9] },
      { walk: [0, -100], radius: [5, 9] },
    ])
      expect(answer(relay, discs)).toBe(first);
    expect(asked()).toBe(before);
    const cut = [
      { walk: [0, 100], radius: [5, 6] },
      { walk: [0, -100], radius: [5, 5.5] },
    ].map((discs) => answer(relay, discs));
    expect(asked()).toBe(before + 2);
    for (const own of cut) expect(own).not.toBe(first);
  });

  it('counts the narrowest stop, alone as well', () => {
    const { relay } = rig();
    const of = (radius: number): number => relay.focusSpreadMm(spread({ walk: [0], radius: [radius] }));
    expect(Math.abs(of(3) / of(5) - 1)).toBeGreaterThan(1e-3);
  });

  it('leaves out a stop that moves with the narrowest', () => {
    const { relay, asked } = rig();
    const first = relay.focusSpreadMm(spread({ walk: [70], radius: [5] }));
    const before = asked();
    expect(relay.focusSpreadMm(spread({ walk: [70, 70], radius: [5, 6] }))).toBe(first);
    expect(asked()).toBe(before);
  });

  it.each<[string, (relay: ReturnType<typeof glassRelay>, i: number) => number]>([
    ['sharp circles', (relay, i) => relay.sharpRadiusMm(sharp(DARK, { frequencyLpPerMm: i }))],
    ['spreads', (relay, i) => relay.focusSpreadMm({ ...spread(DARK), frequencyLpPerMm: i })],
  ])('keeps 64 answers, and begins anew then: %s', (_, answer) => {
    const { relay, asked } = rig();
    const cost = (i: number): number => {
      const before = asked();
      expect(answer(relay, i)).toBe(0);
      return asked() - before;
    };
    for (let i = 1; i <= 64; i++) expect(cost(i)).toBe(1);
    expect(cost(1)).toBe(0);
    expect(cost(64)).toBe(0);
    expect(cost(65)).toBe(1);
    expect(cost(65)).toBe(0);
    expect(cost(64)).toBe(1);
  });
});

describe('glassworks', () => {
  const planoConvex = (radiusMm: number | 'plane', glass: string | number = 1.5): Relay => ({
    kind: 'supplementary',
    glass: { radiiMm: [radiusMm, 'plane'], thicknessesMm: [1], glasses: [glass], semiAperturesMm: [1, 1] },
  });
  const focal = (relay: Relay, nm = 550): number | undefined => {
    const made = glassworks().relay(relay, nm);
    return 'focalLengthMm' in made ? made.focalLengthMm : undefined;
  };

  it('make of a relay one thing for each wavelength', () => {
    const works = glassworks();
    const relay = planoConvex(100, 'N-BK7');
    const made = works.relay(relay, 550);
    expect(works.relay(relay, 600)).not.toBe(made);
    expect(works.relay(relay, 550)).toBe(made);
    expect(works.relay({ ...relay }, 550)).not.toBe(made);
  });

  it('tell what is wrong with its listing', () =>
    expect(glassworks().relay(planoConvex(100, 'butter'), 550)).toMatchObject([{ path: '/relay/glass/glasses/0', code: 'unknownGlass' }]));

  it('work in light that the glass is known for, both ends included', () => {
    const crown = planoConvex(100, 'N-BK7');
    for (const nm of [300, 2500]) expect(focal(crown, nm)).toBeGreaterThan(150);
    for (const nm of [299, 2501])
      expect(glassworks().relay(crown, nm)).toMatchObject([
        { path: '/wavelengthNm', code: 'outOfRange', given: String(nm), expected: '300 to 2500 nm' },
      ]);
  });

  // The index less 1 is a half: the focal length is twice the radius.
  it('make relays of 5 to 5000 mm', () => {
    expect(focal(planoConvex(2.5))).toBe(5);
    expect(focal(planoConvex(2500))).toBe(5000);
  });

  it.each([
    [2.4, 'comes to a focal length of 4.8 mm'],
    [2600.44, 'comes to a focal length of 5201 mm'],
    [-100, 'comes to a focal length of -200 mm'],
    ['plane' as const, 'has no power at all'],
  ])('make none of a radius of %s', (radius, message) =>
    expect(glassworks().relay(planoConvex(radius), 550)).toMatchObject([{ path: '/relay/glass', code: 'noFocus', message }]),
  );
});
