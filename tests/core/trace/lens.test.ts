import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AIR, medium, plainIndex } from '../../../core/glass/medium.ts';
import { inRow, type Lens, lengthOf, rangeOf, reversed, scaled, widestSemiApertures } from '../../../core/trace/lens.ts';
import { prescription } from '../../../core/trace/prescription.ts';
import { rays, THROUGH, trace } from '../../../core/trace/rays.ts';
import { sag } from '../../../core/trace/surface.ts';
import { ANY_NM, lensesUpTo } from '../support/arbitrary-lens.ts';
import { between } from '../support/arbitrary-train.ts';
import { part } from './bundles.ts';

const LENS: Lens = {
  radiiMm: [40, Number.POSITIVE_INFINITY, -90],
  thicknessesMm: [5, 2],
  media: [plainIndex(1.5), plainIndex(1.7)],
  semiAperturesMm: [12, 11, 13],
};

describe('a lens', () => {
  it('turned round has its last surface first, curved the other way, with what was between still between', () => {
    expect(reversed(LENS)).toEqual({
      radiiMm: [90, Number.POSITIVE_INFINITY, -40],
      thicknessesMm: [2, 5],
      media: [LENS.media[1], LENS.media[0]],
      semiAperturesMm: [13, 11, 12],
    });
  });

  it('turned round twice is itself', () => {
    fc.assert(
      fc.property(lensesUpTo(20), (lens) => {
        expect(reversed(reversed(lens))).toEqual(lens);
      }),
      part(0.2, 111),
    );
  });

  it('scaled has all lengths larger and the same glass', () => {
    expect(scaled(LENS, 1.5)).toEqual({
      radiiMm: [60, Number.POSITIVE_INFINITY, -135],
      thicknessesMm: [7.5, 3],
      media: LENS.media,
      semiAperturesMm: [18, 16.5, 19.5],
    });
  });

  it('in a row with another is as long as both and the gap, and takes rays as the one after the other does', () => {
    fc.assert(
      fc.property(lensesUpTo(30), lensesUpTo(30), between(0, 40), between(-8, 8), between(-0.1, 0.1), (first, second, gapMm, y, M) => {
        const both = inRow(first, second, gapMm, AIR);
        expect(lengthOf(both)).toBeCloseTo(lengthOf(first) + gapMm + lengthOf(second), 12);
        const [whole, parts] = [rays(1), rays(1)];
        for (const one of [whole, parts]) [one.y[0], one.M[0], one.N[0]] = [y, M, Math.sqrt(1 - M * M)];
        trace(prescription(both, ANY_NM), whole);
        trace(prescription(first, ANY_NM), parts);
        if (parts.status[0] !== THROUGH) {
          expect([whole.status[0], whole.surface[0]]).toEqual([parts.status[0], parts.surface[0]]);
          return;
        }
        parts.z[0] = (parts.z[0] as number) - gapMm;
        trace(prescription(second, ANY_NM), parts);
        const at = (parts.surface[0] as number) + first.radiiMm.length;
        expect([whole.status[0], whole.surface[0]]).toEqual([parts.status[0], at]);
        if (whole.status[0] !== THROUGH) return;
        expect(whole.y[0]).toBeCloseTo(parts.y[0] as number, 10);
        expect(whole.M[0]).toBeCloseTo(parts.M[0] as number, 11);
        expect(whole.path[0]).toBeCloseTo(parts.path[0] as number, 9);
      }),
      part(0.2, 112),
    );
  });

  it('is known where all its media are', () => {
    const glass = (low: number, high: number) => medium('made up', [low, high], () => 1.5);
    expect(rangeOf({ ...LENS, media: [glass(400, 900), glass(350, 700)] })).toEqual([400, 700]);
  });

  it('without a rim ends where its glass does: as high as it can be, and no higher', () => {
    fc.assert(
      fc.property(lensesUpTo(0), ({ radiiMm, thicknessesMm }) => {
        const heights = widestSemiApertures(radiiMm, thicknessesMm);
        const left = (k: number, h: number): number =>
          (thicknessesMm[k] as number) + sag(radiiMm[k + 1] as number, h) - sag(radiiMm[k] as number, h);
        for (const [k, height] of heights.entries()) {
          if (height === Number.POSITIVE_INFINITY) continue;
          const gaps = [k - 1, k].filter((i) => i in thicknessesMm);
          for (const i of gaps) expect(left(i, height * (1 - 1e-9))).toBeGreaterThanOrEqual(-1e-9);
          const full = [k - 1, k, k + 1].some((i) => i in radiiMm && Math.abs(Math.abs(radiiMm[i] as number) - height) < 1e-9);
          if (!full) expect(gaps.some((i) => left(i, height * (1 + 1e-6)) < 0)).toBe(true);
        }
      }),
      part(0.3, 113),
    );
  });
});

describe('its prescription', () => {
  it('lists curvatures, gaps, the index before each surface and behind the last, and clear heights squared', () => {
    const { count, curvature, gap, index, clear } = prescription(LENS, ANY_NM);
    expect(count).toBe(3);
    expect([...curvature]).toEqual([1 / 40, 0, -1 / 90]);
    expect([...gap]).toEqual([0, 5, 2]);
    expect([...index]).toEqual([1, 1.5, 1.7, 1]);
    expect([...clear]).toEqual([144, 121, 169]);
  });
});
