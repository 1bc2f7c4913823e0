import { describe, expect, it } from 'vitest';
import { refocused, rmsForStrehl, scaleAtStrehl, whereStrehl } from '../../../core/aberration/refocused.ts';

const FOCUS = (u: number): number => u;

describe('what is left of a wavefront', () => {
  // u² less u: from -1/4 in the middle to 0; its variance 1/180.
  it('is a quarter of the fourth order from peak to valley', () => {
    const left = refocused((u) => u * u, FOCUS);
    expect(left.peakToValley).toBeCloseTo(0.25, 10);
    expect(left.rms).toBeCloseTo(1 / Math.sqrt(180), 12);
  });

  // u³ less .9 u: .9 = cov(u³, u) / var(u) = (1/5 - 1/8) 12. Lowest where 3 u² = .9, highest at the edge, .1.
  const lowest = 0.9 * Math.sqrt(0.3) - Math.sqrt(0.3) ** 3;

  it('has its peaks where they are: in the middle, at the edge and between', () => {
    for (const wavefront of [
      (u: number): number => u ** 3,
      (u: number): number => -(u ** 3),
      (u: number): number => (1 - u) ** 3,
      (u: number): number => -((1 - u) ** 3),
      (u: number): number => 7 + u ** 3 + 3 * u,
    ])
      expect(refocused(wavefront, FOCUS).peakToValley).toBeCloseTo(0.1 + lowest, 9);
  });

  // (u - a)⁴ has one sharp bottom; whatever the focus takes, the derivative's zero is found here by halving.
  it('has its valley to nine digits wherever it lies', () => {
    for (let a = 0.03; a < 1; a += 0.0837) {
      const of = (u: number): number => Math.exp(-(((u - a) / 0.15) ** 2));
      const left = refocused(of, FOCUS);
      // The slope of the focus from two closed sums would be a second rule of quadrature: any fine mean does.
      const n = 4000;
      let [m, c, v] = [0, 0, 0];
      for (let i = 0; i < n; i++) m += of((i + 0.5) / n) / n;
      for (let i = 0; i < n; i++) {
        const u = (i + 0.5) / n;
        c += ((of(u) - m) * (u - 0.5)) / n;
        v += (u - 0.5) ** 2 / n;
      }
      const rest = (u: number): number => of(u) - (c / v) * u;
      const extreme = (sign: 1 | -1): number => {
        let best = Number.NEGATIVE_INFINITY;
        for (let i = 0; i <= 20_000; i++) best = Math.max(best, sign * rest(i / 20_000));
        return best;
      };
      expect(left.peakToValley / (extreme(1) + extreme(-1))).toBeCloseTo(1, 5);
    }
  });

  it('is nothing where there is nothing, at any scale', () => {
    const none = refocused(() => 0, FOCUS);
    expect(none.rms).toBe(0);
    expect(none.peakToValley).toBe(0);
    expect(scaleAtStrehl(none, 0.8)).toBe(Number.POSITIVE_INFINITY);
  });

  it('never makes more than all of the light', () => {
    for (const left of [refocused((u) => u * u, FOCUS), refocused((u) => u ** 3, FOCUS)])
      for (const scale of [0, 1e-12, 1e-9, 1e-8]) {
        expect(left.strehl(scale)).toBeLessThanOrEqual(1);
        expect(left.strehl(scale)).toBeGreaterThan(1 - 1e-12);
      }
  });
});

describe('the rms that leaves a Strehl ratio', () => {
  it('is by exp(-(2π rms)²) .0752 of a wave for .8, and .1 for exp(-.3948)', () => {
    expect(rmsForStrehl(0.8)).toBeCloseTo(0.07518, 5);
    expect(rmsForStrehl(Math.exp(-((0.2 * Math.PI) ** 2)))).toBeCloseTo(0.1, 12);
    expect(rmsForStrehl(1)).toBeCloseTo(0, 12);
  });
});

/** A ratio that falls as `root` says of `√(-ln ratio)`, and how often it was asked for. */
function falling(root: (x: number) => number) {
  const asked: number[] = [];
  const ratio = (x: number): number => {
    asked.push(x);
    return Math.exp(-(root(x) ** 2));
  };
  return { ratio, asked };
}

describe('where a Strehl ratio has fallen to a limit', () => {
  const limit = 0.8;
  const due = Math.sqrt(-Math.log(limit));

  it.each([
    ['straight', (y: number) => y, (x: number) => x],
    ['bending up', (y: number) => Math.log1p(y), (x: number) => Math.expm1(x)],
    ['bending down', (y: number) => Math.expm1(y), (x: number) => Math.log1p(x)],
    ['with a knee', (y: number) => (y < 0.3 ? y : 0.3 + (y - 0.3) / 5), (x: number) => (x < 0.3 ? x : 0.3 + 5 * (x - 0.3))],
  ])('is found from an estimate far too near, near or far, in a handful of looks: %s', (_, where, root) => {
    const found = where(due);
    for (const factor of [0.3, 0.5, 0.9, 1, 1.1, 1.5, 3]) {
      const { ratio, asked } = falling(root);
      expect(whereStrehl(ratio, limit, factor * found, 1e6) / found).toBeCloseTo(1, 11);
      expect(asked.length).toBeLessThan(20);
    }
  });

  it('is found where it is hundreds of times as far as was thought, a quarter farther each time', () => {
    // Flat and then steep: the straight line through what was seen points far beyond, and no look may go there.
    const { ratio, asked } = falling((x) => (x < 100 ? 1e-3 * x : 0.1 + (x - 100)));
    expect(whereStrehl(ratio, limit, 1, 1e6)).toBeCloseTo(100 + due - 0.1, 9);
    for (let i = 1; i < asked.length; i++) expect(asked[i]).toBeLessThanOrEqual(1.25 * Math.max(...asked.slice(0, i)) * (1 + 1e-12));
    expect(asked.length).toBeLessThan(60);
  });

  it('does not jump past the first fall to where the ratio has risen again', () => {
    // √(-ln ratio) rises to .8 at 1, comes back to .2 at 2 and rises again.
    const root = (x: number): number => (x < 1 ? 0.8 * x : x < 2 ? 0.8 - 0.6 * (x - 1) : 0.2 + (x - 2));
    for (const estimate of [0.05, 0.3, 0.6, 0.9, 1.1])
      expect(whereStrehl(falling(root).ratio, limit, estimate, 10)).toBeCloseTo(due / 0.8, 11);
  });

  it('is nowhere before the end where it has not come down by there, and at it where it just has', () => {
    const line = (x: number): number => x;
    for (const estimate of [0.1, 0.3, 0.5, 5]) {
      expect(whereStrehl(falling(line).ratio, limit, estimate, 0.99 * due)).toBe(Number.POSITIVE_INFINITY);
      expect(whereStrehl(falling(line).ratio, limit, estimate, 1.01 * due)).toBeCloseTo(due, 11);
    }
    const { ratio, asked } = falling(line);
    whereStrehl(ratio, limit, 0.1, 0.99 * due);
    expect(Math.max(...asked)).toBe(0.99 * due);
  });
});
