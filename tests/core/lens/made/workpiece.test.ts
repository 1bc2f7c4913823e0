import { describe, expect, it } from 'vitest';
import { AIR } from '../../../../core/glass/medium.ts';
import { achromatised, axialColour, backFocus, closed, workpiece } from '../../../../core/lens/made/workpiece.ts';
import { atRim, type Limits } from '../../../../core/lens/made/workshop.ts';
import { cardinal } from '../../../../core/trace/cardinal.ts';
import { glassOf } from './media.ts';

/** Outer curvatures to 0.05, inner ones to 0.08 per mm. */
const LIMITS: Limits = { blankRadiusMm: 10, centreMm: 2, edgeMm: 1.5, airMm: 0.5, steepestOutside: 0.5, steepestInside: 0.8 };
const CROWN = glassOf(1.5, 60);
const FLINT = glassOf(1.6, 30);
const INFINITE = Number.POSITIVE_INFINITY;

describe('a workpiece', () => {
  it('begins as plane plates, in three colours that share their surfaces', () => {
    const { d, F, C, media } = workpiece([CROWN, AIR, FLINT]);
    expect(media).toEqual([CROWN, AIR, FLINT]);
    expect(d.count).toBe(4);
    expect([...d.curvature]).toEqual([0, 0, 0, 0]);
    expect([...d.gap]).toEqual([0, 0, 0, 0]);
    expect([...d.clear]).toEqual([INFINITE, INFINITE, INFINITE, INFINITE]);
    expect([...d.index]).toEqual([1, 1.5, 1, 1.6, 1]);
    // 0.5 / 60 and 0.6 / 30 between F and C.
    for (const [k, n] of [1, 1.5 + 1 / 240, 1, 1.61, 1].entries()) expect(F.index[k]).toBeCloseTo(n, 14);
    for (const [k, n] of [1, 1.5 - 1 / 240, 1, 1.59, 1].entries()) expect(C.index[k]).toBeCloseTo(n, 14);
    for (const colour of [F, C]) expect([colour.count, colour.curvature, colour.gap]).toEqual([4, d.curvature, d.gap]);
    d.curvature[1] = 0.03;
    expect([F.curvature[1], C.curvature[1]]).toEqual([0.03, 0.03]);
  });

  it('brings blue to a focus first where it is one glass: by f over the Abbe number', () => {
    const work = workpiece([CROWN]);
    work.d.curvature.set([0.01, -0.01]);
    expect(backFocus(work.d)).toBeCloseTo(100, 12);
    // 1 / (0.02 (n - 1)) in blue and red.
    expect(axialColour(work)).toBeCloseTo(50 / (0.5 + 1 / 240) - 50 / (0.5 - 1 / 240), 10);
    expect(axialColour(work) / (-100 / 60)).toBeCloseTo(1, 3);
  });

  it('focuses behind its last vertex, whatever stands before that', () => {
    const work = workpiece([CROWN, AIR, FLINT]);
    work.d.curvature.set([0.03, -0.02, -0.025, 0.01]);
    work.d.gap.set([0, 6, 4, 3]);
    for (const colour of [work.d, work.F, work.C]) expect(backFocus(colour) / cardinal(colour).backFocalLengthMm).toBeCloseTo(1, 12);
  });
});

describe('a lens closed by its last radius', () => {
  function closedWith(curvatures: readonly number[], focalLengthMm: number, media = [CROWN]) {
    const work = workpiece(media);
    work.d.curvature.set(curvatures);
    return { work, made: closed(work, focalLengthMm, LIMITS), c: work.d.curvature, gap: work.d.gap };
  }

  it('has the focal length that the lens maker reckons, and the thickness that the shop wants', () => {
    const { made, work, c, gap } = closedWith([0.03, 0], 60);
    expect(made).toBe(true);
    const [before, behind, t] = [c[0], c[1], gap[1]] as [number, number, number];
    // 1/f = (n - 1)(c1 - c2 + (n - 1) t c1 c2 / n).
    expect(0.5 * (before - behind + (0.5 * t * before * behind) / 1.5)).toBeCloseTo(1 / 60, 14);
    expect(before).toBe(0.03);
    expect(atRim(t, before, behind, LIMITS)).toBeCloseTo(1.5, 10);
    expect(t).toBeGreaterThan(2);
    expect(cardinal(work.d).effectiveFocalLengthMm).toBeCloseTo(60, 9);
  });

  it('whatever the last radius was before', () => {
    const [fresh, used] = [closedWith([0.03, 0], 60), closedWith([0.03, 9], 60)];
    expect(used.made).toBe(true);
    expect(used.c[1]).toBeCloseTo(fresh.c[1] as number, 13);
    expect(used.gap[1]).toBeCloseTo(fresh.gap[1] as number, 10);
  });

  it('has each of its pieces as thin as can be made: by the rim, by the middle, by the air', () => {
    // A plane in front, so the crown's rim is thick; the air's surfaces lie apart at the rim; the flint bulges.
    const { made, work, c, gap } = closedWith([0, 0.02, 0.01, 0], 80, [CROWN, AIR, FLINT]);
    expect(made).toBe(true);
    expect(gap[0]).toBe(0);
    expect(gap[1]).toBe(2);
    const air = gap[2] as number;
    expect(atRim(air, 0.02, 0.01, LIMITS)).toBeCloseTo(0.5, 12);
    expect(air).toBeGreaterThan(0.5);
    expect(atRim(gap[3] as number, 0.01, c[3] as number, LIMITS)).toBeCloseTo(1.5, 10);
    expect(cardinal(work.d).effectiveFocalLengthMm / 80).toBeCloseTo(1, 11);
  });

  it('cannot have its outer surfaces steeper than half of their radius', () => {
    expect(closedWith([0.05, 0], 40).made).toBe(true);
    expect(closedWith([0.0500001, 0], 40).made).toBe(false);
    expect(closedWith([-0.05, 0], -1000).made).toBe(true);
    expect(closedWith([-0.0500001, 0], -1000).made).toBe(false);
    // Flat in front, the last one takes all: 1 / (0.5 f) is 0.05 at 40 mm.
    expect(closedWith([0, 0], 40.001).made).toBe(true);
    expect(closedWith([0, 0], 39.999).made).toBe(false);
  });

  it('cannot have inner ones steeper than 0.8 of it', () => {
    const three = (inner: number) => closedWith([0.02, inner, 0], 80, [CROWN, FLINT]).made;
    expect(three(-0.08)).toBe(true);
    expect(three(-0.0800001)).toBe(false);
    // The last of three is an outer one, though an inner one might be as steep.
    const { made, c } = closedWith([0.02, 0.03, 0], 20, [CROWN, FLINT]);
    expect(c[2]).toBeLessThan(-0.05);
    expect(c[2]).toBeGreaterThan(-0.08);
    expect(made).toBe(false);
  });

  it('cannot have what is no number', () => {
    expect(closedWith([Number.NaN, 0], 60).made).toBe(false);
    expect(closedWith([0.02, Number.NaN, 0], 60, [CROWN, FLINT]).made).toBe(false);
    expect(closedWith([0.02, 0], Number.NaN).made).toBe(false);
  });
});

describe('a lens made achromatic by its second surface', () => {
  it.each([
    ['cemented', [CROWN, FLINT]],
    ['spaced', [CROWN, AIR, FLINT]],
  ] as const)('%s has one focus for blue and red, and the focal length', (_, media) => {
    const work = workpiece(media);
    // Thin, the powers are 2/f and -1/f: the crown's curvatures stand 4/f apart.
    work.d.curvature.set(media.length === 2 ? [0.02, -0.02, 0] : [0.02, -0.02, -0.019, 0]);
    expect(achromatised(work, 100, LIMITS)).toBe(true);
    expect(work.d.curvature[0]).toBe(0.02);
    expect(Math.abs(axialColour(work))).toBeLessThan(1e-9);
    expect(cardinal(work.F).backFocalLengthMm - cardinal(work.C).backFocalLengthMm).toBeCloseTo(0, 8);
    expect(cardinal(work.d).effectiveFocalLengthMm / 100).toBeCloseTo(1, 11);
    // Thickness moves the second surface a little, not more.
    expect((work.d.curvature[1] as number) / -0.02).toBeCloseTo(1, 0);
    expect(work.d.curvature[1]).not.toBe(-0.02);
  });

  it('is found from far off, a second surface bent the other way, and whatever the last one was', () => {
    const near = workpiece([CROWN, FLINT]);
    near.d.curvature.set([0.04, -0.03, 0]);
    const far = workpiece([CROWN, FLINT]);
    far.d.curvature.set([0.04, 0.0605, Number.NaN]);
    expect(achromatised(near, 40, LIMITS)).toBe(true);
    expect(achromatised(far, 40, LIMITS)).toBe(true);
    expect(far.d.curvature[1]).toBeCloseTo(near.d.curvature[1] as number, 10);
    expect(far.d.curvature[1]).toBeLessThan(0);
    expect(Math.abs(axialColour(far))).toBeLessThan(1e-10);
  });

  it('cannot be of one glass, nor where it has to be too steep', () => {
    const alike = workpiece([CROWN, CROWN]);
    alike.d.curvature.set([0.01, -0.01, 0]);
    expect(achromatised(alike, 100, LIMITS)).toBe(false);
    const steep = workpiece([CROWN, FLINT]);
    steep.d.curvature.set([0.04, -0.04, 0]);
    expect(achromatised(steep, 30, LIMITS)).toBe(false);
    const unmade = workpiece([CROWN, FLINT]);
    unmade.d.curvature.set([0.06, -0.02, 0]);
    expect(achromatised(unmade, 100, LIMITS)).toBe(false);
  });
});
