import { describe, expect, it } from 'vitest';
import { coverGlassCaution, plateRmsWaves } from '../../../core/choose/cover-glass.ts';

/** Optical path through a plate by Snell's law, step by step, less what it is without the plate. */
function pathOf(d: number, n: number, sine: number): number {
  const inside = Math.asin(sine / n);
  const outside = Math.asin(sine);
  // Along the ray in the glass, and back to the wavefront of the ray that would have gone straight on.
  const aside = d * (Math.tan(inside) - Math.tan(outside));
  return (n * d) / Math.cos(inside) - d / Math.cos(outside) - aside * Math.sin(outside);
}

/** The least rms over the pupil with any shift of the focus, by trying them. */
function leastRms(d: number, n: number, na: number): number {
  const rows = Array.from({ length: 200 }, (_, i) => na * Math.sqrt((i + 0.5) / 200));
  const rms = (shift: number): number => {
    const w = rows.map((s) => pathOf(d, n, s) + shift * (1 - Math.sqrt(1 - s * s)));
    const mean = w.reduce((a, b) => a + b, 0) / w.length;
    return Math.sqrt(w.reduce((sum, x) => sum + (x - mean) ** 2, 0) / w.length);
  };
  let [a, b] = [-d, d];
  for (let i = 0; i < 120; i++) {
    const [x, y] = [a + (b - a) / 3, b - (b - a) / 3];
    if (rms(x) < rms(y)) b = y;
    else a = x;
  }
  return rms((a + b) / 2);
}

describe('the spherical aberration of a plate', () => {
  it('is to the fourth order d (n² − 1) NA⁴ / (8 n³) over 6 √5', () => {
    for (const [d, n, na] of [
      [0.17, 1.5255, 0.1],
      [1, 1.46, 0.15],
      [0.5, 1.8, 0.12],
    ] as const) {
      const fourth = (d * (n * n - 1) * na ** 4) / (8 * n ** 3) / (6 * Math.sqrt(5)) / 550e-6;
      expect(plateRmsWaves(d, n, na, 550) / fourth).toBeGreaterThan(1);
      expect(plateRmsWaves(d, n, na, 550) / fourth).toBeLessThan(1.03);
    }
  });

  it('is what Snell and a search for the best focus find, at high apertures too', () => {
    for (const na of [0.3, 0.55, 0.75, 0.9]) {
      const due = leastRms(0.17, 1.5255, na) / 550e-6;
      expect(Math.abs(plateRmsWaves(0.17, 1.5255, na, 550) / due - 1), String(na)).toBeLessThan(2e-4);
    }
  });

  it('grows with the thickness and in proportion to it', () => {
    expect(plateRmsWaves(0.34, 1.5255, 0.5, 550)).toBeCloseTo(2 * plateRmsWaves(0.17, 1.5255, 0.5, 550), 9);
    expect(plateRmsWaves(0, 1.5255, 0.5, 550)).toBe(0);
  });

  it('is told from a fourteenth of a wave on, of glass of 1.5255', () => {
    const objective = { magnification: 20, na: 0.5, referenceFocalLengthMm: 200, coverGlassMm: 0 };
    const border = 0.3 * (550e-6 / 14 / leastRms(0.3, 1.5255, 0.5));
    expect(coverGlassCaution(objective, border * 1.001, 550)).toMatch(/^Made for no cover glass and used with [\d.]+ mm: 0\.07 waves/);
    expect(coverGlassCaution(objective, border * 0.999, 550)).toBeUndefined();
    expect(coverGlassCaution({ ...objective, coverGlassMm: 0.17 }, 0.17, 550)).toBeUndefined();
    expect(coverGlassCaution(objective, undefined, 550)).toBeUndefined();
    expect(coverGlassCaution({ ...objective, immersionIndex: 1.33 }, 1, 550)).toBeUndefined();
  });
});
