import { describe, expect, it } from 'vitest';
import { gaussLegendre } from '../../core/gauss.ts';

const summed = (count: number, low: number, high: number, f: (x: number) => number): number => {
  const { nodes, weights } = gaussLegendre(count, low, high);
  return nodes.reduce((sum, x, i) => sum + (weights[i] as number) * f(x), 0);
};

describe("Gauss's rule", () => {
  it.each([1, 2, 3, 5, 8, 12, 20])('of %d nodes integrates powers below twice that exactly, and not the next', (count) => {
    const [low, high] = [-0.7, 1.3];
    const integral = (power: number): number => (high ** (power + 1) - low ** (power + 1)) / (power + 1);
    for (let power = 0; power < 2 * count; power++) {
      const got = summed(count, low, high, (x) => x ** power);
      expect(Math.abs(got - integral(power))).toBeLessThan(1e-14 * Math.max(1, 1.3 ** power));
    }
    if (count < 12) expect(Math.abs(summed(count, low, high, (x) => x ** (2 * count)) - integral(2 * count))).toBeGreaterThan(1e-9);
  });

  it('knows the textbook nodes of three', () => {
    const { nodes, weights } = gaussLegendre(3, -1, 1);
    expect([...nodes]).toEqual([-Math.sqrt(0.6), 0, Math.sqrt(0.6)].map((x) => expect.closeTo(x, 14)));
    expect([...weights]).toEqual([5 / 9, 8 / 9, 5 / 9].map((w) => expect.closeTo(w, 14)));
  });

  it('rises inside its interval, with positive weights that add up to its length', () => {
    const { nodes, weights } = gaussLegendre(40, 2, 5);
    expect(nodes.every((x, i) => x > (nodes[i - 1] ?? 2) && x < 5)).toBe(true);
    expect(weights.every((w) => w > 0)).toBe(true);
    expect(weights.reduce((sum, w) => sum + w, 0)).toBeCloseTo(3, 13);
  });
});
