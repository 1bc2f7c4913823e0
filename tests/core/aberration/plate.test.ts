import { describe, expect, it } from 'vitest';
import { platesAberration } from '../../../core/aberration/plate.ts';

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

const waves = (thicknessMm: number, index: number, na: number): number => platesAberration([{ thicknessMm, index }], 1, na).rms / 550e-6;

describe('the spherical aberration of a plate', () => {
  it('is to the fourth order d (n² − 1) NA⁴ / (8 n³) over 6 √5', () => {
    for (const [d, n, na] of [
      [0.17, 1.5255, 0.1],
      [1, 1.46, 0.15],
      [0.5, 1.8, 0.12],
    ] as const) {
      const fourth = (d * (n * n - 1) * na ** 4) / (8 * n ** 3) / (6 * Math.sqrt(5)) / 550e-6;
      expect(waves(d, n, na) / fourth).toBeGreaterThan(1);
      expect(waves(d, n, na) / fourth).toBeLessThan(1.03);
    }
  });

  it('is what Snell and a search for the best focus find, at high apertures too', () => {
    for (const na of [0.3, 0.55, 0.75, 0.9]) {
      const due = leastRms(0.17, 1.5255, na) / 550e-6;
      expect(Math.abs(waves(0.17, 1.5255, na) / due - 1), String(na)).toBeLessThan(2e-4);
    }
  });

  it('grows with the thickness and in proportion to it', () => {
    expect(waves(0.34, 1.5255, 0.5)).toBeCloseTo(2 * waves(0.17, 1.5255, 0.5), 9);
    expect(waves(0, 1.5255, 0.5)).toBe(0);
  });

  it('of two plates is that of their sum: a slip that is missing takes away what one that is there brings', () => {
    const slip = { thicknessMm: 0.17, index: 1.5255 };
    const resin = { thicknessMm: 0.2, index: 1.5 };
    const alone = platesAberration([resin], 1, 0.6).rms;
    expect(platesAberration([slip, resin, { ...slip, thicknessMm: -0.17 }], 1, 0.6).rms).toBeCloseTo(alone, 12);
    expect(platesAberration([slip, resin], 1, 0.6).rms).toBeCloseTo(alone + platesAberration([slip], 1, 0.6).rms, 4);
    expect(platesAberration([], 1, 0.6).rms).toBe(0);
  });

  it('is nothing where the plate is of the index that it takes the place of, and turns over with it', () => {
    expect(platesAberration([{ thicknessMm: 0.5, index: 1.33 }], 1.33, 1).rms).toBeLessThan(1e-15);
    const thinner = platesAberration([{ thicknessMm: 0.3, index: 1.4 }], 1.5, 0.9);
    expect(thinner.rms).toBeGreaterThan(1e-5);
    expect(platesAberration([{ thicknessMm: -0.3, index: 1.4 }], 1.5, 0.9).peakToValley).toBeCloseTo(thinner.peakToValley, 12);
  });

  // By Snell, step by step, with what the plate takes the place of on both sides of the sum, and the best focus tried.
  it('in a medium is what Snell and a search for the best focus find', () => {
    for (const [n, index, na] of [
      [1.33, 1.5255, 0.8],
      [1.515, 1.4, 1.1],
      [1.33, 1.6, 1.2],
    ] as const) {
      const rows = Array.from({ length: 400 }, (_, i) => na * Math.sqrt((i + 0.5) / 400));
      const way = rows.map((a) => Math.sqrt(index * index - a * a) - Math.sqrt(n * n - a * a));
      const focus = rows.map((a) => Math.sqrt(1 - (a / n) ** 2));
      const mean = (of: number[]): number => of.reduce((x, y) => x + y, 0) / of.length;
      const rms = (k: number): number => {
        const left = way.map((w, i) => w - k * (focus[i] as number));
        const middle = mean(left);
        return Math.sqrt(mean(left.map((w) => (w - middle) ** 2)));
      };
      let [a, b] = [-5, 5];
      for (let i = 0; i < 100; i++) {
        const [x, y] = [a + (b - a) / 3, b - (b - a) / 3];
        if (rms(x) < rms(y)) b = y;
        else a = x;
      }
      expect(platesAberration([{ thicknessMm: 0.17, index }], n, na).rms / (0.17 * rms((a + b) / 2))).toBeCloseTo(1, 3);
    }
  });
});
