import { describe, expect, it } from 'vitest';
import { beam, launch } from '../../../core/trace/beam.ts';
import { ringsAndSpokes, sunflower } from '../../../core/trace/points.ts';
import { rays } from '../../../core/trace/rays.ts';

/** The mean of `x^a y^b` over the unit disc: 0 for odd powers, else (a-1)!! (b-1)!! / (a+b)!! over (a+b)/2 + 1. */
function moment(a: number, b: number): number {
  if (a % 2 === 1 || b % 2 === 1) return 0;
  const odd = (n: number): number => (n <= 1 ? 1 : n * odd(n - 2));
  const even = (n: number): number => (n <= 0 ? 1 : n * even(n - 2));
  return (odd(a - 1) * odd(b - 1)) / even(a + b) / ((a + b) / 2 + 1);
}

const summed = ({ count, x, y, share }: ReturnType<typeof ringsAndSpokes>, a: number, b: number): number => {
  let sum = 0;
  for (let i = 0; i < count; i++) sum += (share[i] as number) * (x[i] as number) ** a * (y[i] as number) ** b;
  return sum;
};

describe('rings and spokes', () => {
  it.each([
    [1, 5],
    [2, 7],
    [3, 12],
    [4, 16],
    [6, 13],
  ])(
    '%d rings of %d spokes mean any polynomial of a degree below both twice the rings, in squares, and the spokes exactly',
    (rings, spokes) => {
      const points = ringsAndSpokes(rings, spokes);
      expect(points.count).toBe(rings * spokes);
      for (let a = 0; a < spokes; a++)
        // Degree a + b is (a + b) / 2 in the square of the radius.
        for (let b = 0; a + b < spokes && a + b < 4 * rings; b++) expect(summed(points, a, b)).toBeCloseTo(moment(a, b), 14);
    },
  );

  it('err just beyond: rings in the radius, spokes in the angle', () => {
    const [rings, spokes] = [2, 40];
    expect(Math.abs(summed(ringsAndSpokes(rings, spokes), 4 * rings, 0) - moment(4 * rings, 0))).toBeGreaterThan(1e-5);
    expect(Math.abs(summed(ringsAndSpokes(6, 4), 2, 2) - moment(2, 2))).toBeGreaterThan(1e-3);
  });

  it('begin half a step to the side of +y and go round, ring by ring', () => {
    const { x, y } = ringsAndSpokes(2, 6);
    const angle = (i: number): number => (Math.atan2(x[i] as number, y[i] as number) * 180) / Math.PI;
    for (const [i, degrees] of [30, 90, 150, -150, -90, -30].entries())
      for (const ring of [0, 6]) expect(angle(ring + i)).toBeCloseTo(degrees, 11);
  });

  it('lie inside the disc, off the field axis, mirrored in it', () => {
    const { count, x, y, share } = ringsAndSpokes(3, 8);
    for (let i = 0; i < count; i++) {
      expect(Math.hypot(x[i] as number, y[i] as number)).toBeLessThan(1);
      expect(Math.abs(x[i] as number)).toBeGreaterThan(1e-3);
      const mirrored = x.findIndex(
        (other, k) => Math.abs(other + (x[i] as number)) < 1e-14 && Math.abs((y[k] as number) - (y[i] as number)) < 1e-14,
      );
      expect(share[mirrored]).toBeCloseTo(share[i] as number, 15);
    }
  });
});

describe('a beam', () => {
  it('takes a bundle that others have used as if it were new, and leaves what lies beyond its own rays', () => {
    const points = ringsAndSpokes(1, 3);
    const from = { pupilRadiusMm: 4, pupilDistanceMm: 20, slope: 0.1 };
    const used = rays(4);
    for (const one of [used.x, used.y, used.z, used.L, used.M, used.N, used.path]) one.fill(0.5);
    const again = launch(used, points, from);
    const fresh = beam(points, from);
    expect(again).toBe(used);
    for (const key of ['x', 'y', 'z', 'L', 'M', 'N', 'path'] as const) expect([...again[key]]).toEqual([...fresh[key], 0.5]);
  });

  it('is parallel, fills the pupil, and is in step on a plane across it through the middle of the pupil', () => {
    const points = ringsAndSpokes(2, 6);
    const slope = 0.3;
    const { count, x, y, z, L, M, N, path } = beam(points, { pupilRadiusMm: 5, pupilDistanceMm: 40, slope });
    for (let i = 0; i < count; i++) {
      expect([x[i], y[i], z[i]]).toEqual([5 * (points.x[i] as number), 5 * (points.y[i] as number), -40]);
      expect([L[i], (M[i] as number) / (N[i] as number)]).toEqual([0, expect.closeTo(slope, 14)]);
      expect(Math.hypot(M[i] as number, N[i] as number)).toBeCloseTo(1, 14);
      // Going back its path, the ray is on that plane.
      const onPlane =
        (M[i] as number) * ((y[i] as number) - (path[i] as number) * (M[i] as number)) +
        (N[i] as number) * -(path[i] as number) * (N[i] as number);
      expect(onPlane).toBeCloseTo(0, 13);
    }
  });
});

describe("a sunflower's head", () => {
  it('has each seed turned by the golden angle from the one before, on rings that halve even shares of the area', () => {
    const { x, y } = sunflower(50);
    // The smaller part of a turn that is divided in the golden ratio: 137.508°.
    const golden = 2 * Math.PI * (2 - (1 + Math.sqrt(5)) / 2);
    for (let i = 0; i < 50; i++) {
      const [one, other] = [x[i] as number, y[i] as number];
      expect(one ** 2 + other ** 2).toBeCloseTo((2 * i + 1) / 100, 12);
      expect(Math.sin(Math.atan2(one, other) - i * golden)).toBeCloseTo(0, 11);
      expect(Math.cos(Math.atan2(one, other) - i * golden)).toBeCloseTo(1, 11);
    }
  });

  it('fills the disc evenly: means of squares to a per cent, nothing outside', () => {
    const points = sunflower(400);
    expect(summed(points, 0, 0)).toBeCloseTo(1, 12);
    for (const [a, b] of [
      [1, 0],
      [0, 1],
      [2, 0],
      [0, 2],
      [1, 1],
      [2, 2],
    ] as const)
      expect(Math.abs(summed(points, a, b) - moment(a, b))).toBeLessThan(0.01);
    expect(Math.max(...points.x.map((x, i) => Math.hypot(x, points.y[i] as number)))).toBeLessThan(1);
  });
});
