import { describe, expect, it } from 'vitest';
import type { Setting } from '../../../core/contrast/field.ts';
import { plainIndex } from '../../../core/glass/medium.ts';
import { arrived, blurOf, spotsOf, worstBlur } from '../../../core/lens/blur.ts';
import { spotDiagram } from '../../../core/lens/spots.ts';
import type { Discs } from '../../../core/pupil/discs.ts';
import { start } from '../../../core/trace/beam.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import { valueAt } from '../../../core/trace/focus.ts';
import { ringsAndSpokes } from '../../../core/trace/points.ts';
import { type Prescription, prescription } from '../../../core/trace/prescription.ts';
import { rays, trace } from '../../../core/trace/rays.ts';
import { meanAt, spot } from '../../../core/trace/spot.ts';

/** A pane of no thickness, through which rays go straight on. */
const pane = (semiMm = 100): Prescription =>
  prescription(
    {
      radiiMm: [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
      thicknessesMm: [0],
      media: [plainIndex(1.5)],
      semiAperturesMm: [semiMm, semiMm],
    },
    550,
  );
/** So thin and weak that rays leave its last vertex's plane where they met the first one's. */
const lens = (index: number, semiMm = 100): Prescription =>
  prescription(
    { radiiMm: [Number.POSITIVE_INFINITY, -100], thicknessesMm: [0.001], media: [plainIndex(index)], semiAperturesMm: [semiMm, semiMm] },
    550,
  );

const setting = (discs: Discs, prescriptions = [lens(1.5)], weights = [1]): Setting => ({
  colours: {
    prescriptions,
    weights,
    wavelengthsMm: prescriptions.map(() => 550e-6),
    reference: prescriptions[0] as Prescription,
    focusMm: cardinal(prescriptions[0] as Prescription).backFocalLengthMm,
  },
  discs,
  pupilDistanceMm: 10,
  frequency: 40,
});
const WHOLE: Discs = { walk: [0], radius: [5] };
/** What an edge that is all but straight leaves of that disc at slope 0.01: the half above the axis. */
const HALF: Discs = { walk: [0, 1e7], radius: [5, 1e5] };
const NOTHING: Discs = { walk: [0, 100], radius: [5, 5] };

/** Four points of the unit disc and their shares. */
const POINTS = {
  count: 4,
  x: Float64Array.of(0, 0, 0.5, 0.6),
  y: Float64Array.of(0.9, -0.5, 0, 0.8),
  share: Float64Array.of(0.5, 0.25, 0.125, 0.125),
};
const came = (discs: Discs, slope = 0.1, semiMm = 100) => {
  const { bundle, weights } = arrived(pane(semiMm), POINTS, discs, 10, slope) ?? {};
  return { y: [...(bundle?.y ?? [])], weights: weights && [...weights] };
};

describe('what arrives of a beam', () => {
  it('is all of it where nothing cuts, its rim too, moved by the slope times the distance', () => {
    const { y, weights } = came(WHOLE);
    expect(weights).toEqual([0.5, 0.25, 0.125, 0.125]);
    // 5 mm times the point, and 0.1 · 10.
    [5.5, -1.5, 1, 5].forEach((at, i) => {
      expect(y[i]).toBeCloseTo(at, 12);
    });
  });

  it('goes through the middle of a narrowest stop away from the pupil', () => {
    // Its middle is at 30 · 0.1 in the pupil.
    [8.5, 1.5, 4, 8].forEach((at, i) => {
      expect(came({ walk: [0, 30], radius: [50, 5] }).y[i]).toBeCloseTo(at, 12);
    });
  });

  it('is what every stop lets through', () => {
    // Around 10 mm: the points at 4.5, -2.5, 0 and 4 mm along, 0, 0, 2.5 and 3 across, are 5.5, 12.5, 10.3 and 6.7 mm away.
    expect(came({ walk: [0, 100], radius: [5, 6] }).weights).toEqual([1, 0, 0, 0]);
    expect(came({ walk: [0, 100], radius: [5, 8] }).weights).toEqual([0.8, 0, 0, 0.2]);
    expect(came({ walk: [0, -100], radius: [5, 8] }).weights).toEqual([0, 1, 0, 0]);
    // In whichever order they are told.
    expect(came({ walk: [100, 0], radius: [8, 5] }).weights).toEqual([0.8, 0, 0, 0.2]);
    expect(came(NOTHING).weights).toBeUndefined();
  });

  it('is what meets the glass', () => {
    // At 0.1 · 10 more: 5.5, 1.5 and 1 mm along; the third is 2.5 across, the last 3 across and 5 along.
    expect(came(WHOLE, 0.1, 3).weights).toEqual([0, 2 / 3, 1 / 3, 0]);
    expect(came(WHOLE, 0.1, 0.9).weights).toBeUndefined();
  });
});

describe('the spots of a field point', () => {
  // Mean squares on the last vertex's plane, where rays are as far apart as in the pupil.
  const square = (discs: Discs, slope: number): number => valueAt(blurOf(setting(discs), slope) as never, 0);
  const middle = (discs: Discs, slope: number): number => spotsOf(setting(discs), slope)[0]?.tangential.vertexMm as number;

  it('of a whole disc have half the square of its radius there', () => {
    expect(square(WHOLE, 0) / 12.5).toBeCloseTo(1, 2);
    expect(middle(WHOLE, 0.02)).toBeCloseTo(0.2, 2);
    expect(middle({ walk: [30], radius: [5] }, 0.02)).toBeCloseTo(0.6 + 0.2, 2);
  });

  // Six rings are exact up to the fifth power of the aperture: sixteen say the same to rounding, chords to eight digits.
  it('of a whole disc are exact, where other stops just hold it too', () => {
    const points = ringsAndSpokes(16, 32);
    const exact = (slope: number, middle: number): number => {
      const bundle = rays(points.count);
      for (let i = 0; i < points.count; i++) start(bundle, i, 5 * (points.x[i] as number), middle + 5 * (points.y[i] as number), slope, 10);
      trace(lens(1.5), bundle);
      return valueAt(spot(bundle, points.share, 0).square, 0);
    };
    for (const [discs, middle] of [
      [WHOLE, 0],
      [{ walk: [0, 20], radius: [5, 6] }, 0],
      [{ walk: [0, -20], radius: [5, 6] }, 0],
      [{ walk: [60, 60], radius: [5, 6] }, 3],
      [{ walk: [60, 60], radius: [6, 5] }, 3],
    ] as const)
      expect(Math.abs(square(discs, 0.05) / exact(0.05, middle) - 1)).toBeLessThan(1e-11);
  });

  it('are those of the whole disc where other stops just hold it', () => {
    for (const discs of [
      { walk: [0, 100], radius: [5, 6] },
      { walk: [0, -100], radius: [5, 6] },
      { walk: [0, 0], radius: [6, 5] },
    ])
      expect(blurOf(setting(discs), 0.01)).toEqual(blurOf(setting(WHOLE), 0.01));
    // Both move alike.
    expect(blurOf(setting({ walk: [60, 60], radius: [5, 6] }), 0.05)).toEqual(blurOf(setting({ walk: [60], radius: [5] }), 0.05));
  });

  // The middle of half a disc is 4 r / 3π from its straight side.
  it('of half a disc have what is left about its middle', () => {
    const offMiddle = (4 * 5) / (3 * Math.PI);
    expect(square(HALF, 0.01) / (12.5 - offMiddle ** 2)).toBeCloseTo(1, 2);
    expect(middle(HALF, 0.01) / (offMiddle + 0.1)).toBeCloseTo(1, 3);
  });

  it('are none where no light arrives', () => {
    for (const dark of [setting(NOTHING), setting(WHOLE, [lens(1.5, 0.01)])]) {
      expect(spotsOf(dark, 0.3)).toEqual([]);
      expect(blurOf(dark, 0.3)).toBeUndefined();
      expect(spotDiagram(dark, 0.3, 200)).toBeUndefined();
    }
  });
});

describe('the blur in two colours', () => {
  const two = setting(WHOLE, [lens(1.5), lens(1.54)], [0.25, 0.75]);

  it('is on every plane that of each and how far their middles are apart', () => {
    const blur = blurOf(two, 0.1);
    const spots = spotsOf(two, 0.1);
    for (const z of [0, 50, 180, 200, 300]) {
      const [a, b] = spots.map((s) => meanAt(s.tangential, z)) as [number, number];
      const middle = 0.25 * a + 0.75 * b;
      const [own, other] = spots.map((s) => valueAt(s.square, z)) as [number, number];
      const expected = 0.25 * (own + (a - middle) ** 2) + 0.75 * (other + (b - middle) ** 2);
      expect(valueAt(blur as never, z) / expected).toBeCloseTo(1, 9);
    }
    // The second colour is bent 8 % more: at 10 mm off the axis there is something to part.
    expect(Math.abs(meanAt(spots[0]?.tangential as never, 200) - meanAt(spots[1]?.tangential as never, 200))).toBeGreaterThan(0.05);
  });

  it('is that of the one that arrives where the other is stopped', () => {
    const one = setting(WHOLE, [lens(1.5), lens(1.54, 0.01)], [0.25, 0.75]);
    const alone = setting(WHOLE, [lens(1.5)]);
    const [own, other] = [blurOf(one, 0.1), blurOf(alone, 0.1)];
    for (const z of [0, 200]) expect(valueAt(own as never, z)).toBeCloseTo(valueAt(other as never, z), 9);
    const [drawn, whole] = [spotDiagram(one, 0.1, 200), spotDiagram(alone, 0.1, 200)];
    expect(drawn?.lateralColourUm).toBe(0);
    expect(drawn?.yUm).toEqual(whole?.yUm);
  });
});

describe('a spot that is drawn', () => {
  it('has 120 rays of a whole beam, each once, and of half a beam the half', () => {
    const whole = spotDiagram(setting(WHOLE), 0, 150);
    expect(whole?.xUm).toHaveLength(120);
    expect(whole?.yUm).toHaveLength(120);
    expect(Math.abs((spotDiagram(setting(HALF), 0.01, 150)?.xUm.length ?? 0) - 60)).toBeLessThanOrEqual(2);
  });

  it('lies about its middle, scaled as the beam has narrowed', () => {
    // 150 of 200 mm behind the lens a quarter of 5 mm is left: rms over √2.
    const spot = spotDiagram(setting(WHOLE), 0, 150);
    expect(Math.abs((spot?.rmsUm ?? 0) / ((1000 * 1.25) / Math.SQRT2) - 1)).toBeLessThan(0.01);
    expect(Math.abs(Math.max(...(spot?.yUm ?? [])) / 1250 - 1)).toBeLessThan(0.1);
    const mean = (spot?.yUm ?? []).reduce((sum, y) => sum + y / 120, 0);
    expect(Math.abs(mean)).toBeLessThan(25);
  });

  it('of a beam from the side is as wide both ways, about the middle of its two colours', () => {
    const spot = spotDiagram(setting(WHOLE, [lens(1.5), lens(1.5)], [0.5, 0.5]), 0.02, 150);
    for (const places of [spot?.xUm ?? [], spot?.yUm ?? []]) {
      const mean = (of: (x: number) => number): number => places.reduce((sum, x) => sum + of(x) / places.length, 0);
      // Half of the radius in each direction.
      expect(Math.abs(Math.sqrt(mean((x) => x * x)) / 625 - 1)).toBeLessThan(0.02);
      expect(Math.abs(mean((x) => x))).toBeLessThan(25);
    }
  });

  it('is taken to its plane along each ray', () => {
    // A plane at the last vertex itself: as far apart as in the pupil, and 0.02 · 10 beside it.
    const there = spotDiagram(setting(WHOLE), 0.02, 0);
    const square = (there?.xUm ?? []).reduce((sum, x) => sum + (x * x) / 120, 0);
    expect(Math.abs(Math.sqrt(square) / 2500 - 1)).toBeLessThan(0.02);
  });

  it('tells how far two colours are apart', () => {
    const two = setting(WHOLE, [lens(1.5), lens(1.54)], [0.5, 0.5]);
    // 1 mm off the axis at the lens a slope of 0.1 is bent by 1/200 and by 1.08/200 mm per mm.
    const spot = spotDiagram(two, 0.1, 200);
    expect((spot?.lateralColourUm ?? 0) / (1000 * 200 * 0.08 * (1 / 200))).toBeCloseTo(1, 1);
    expect(spot?.xUm).toHaveLength(240);
  });
});

describe('the worst blur', () => {
  // Two points of 1 µm with foci 2 mm apart meet half-way at √2 µm.
  it('is that of the plane between two points, and of each at its own', () => {
    const [a, b] = [0, 2].map((at) => ({ at, least: 1e-6, rate: 1e-6 }));
    const { planeMm, oneFrameUm, stackUm } = worstBlur([a, b] as never) ?? {};
    expect([planeMm, oneFrameUm, stackUm]).toEqual([1, Math.SQRT2, 1].map((x) => expect.closeTo(x, 9)));
    // Together: on the plane of the worse one, where the other is below it.
    expect(worstBlur([a, { at: 0, least: 4e-6, rate: 1e-6 }] as never)?.oneFrameUm).toBeCloseTo(2, 9);
    expect(worstBlur([a, { at: 0, least: 4e-6, rate: 1e-6 }] as never)?.stackUm).toBeCloseTo(2, 9);
  });
  it('is none of no points', () => expect(worstBlur([])).toBeUndefined());
});
