import { describe, expect, it } from 'vitest';
import type { Prescription } from '../../../core/trace/prescription.ts';
import { CLIPPED, MISSED, type Rays, REFLECTED, rays, THROUGH, trace } from '../../../core/trace/rays.ts';

const surfaces = (
  curvature: number[],
  gap: number[],
  index: number[],
  clear = curvature.map(() => Number.POSITIVE_INFINITY),
): Prescription => ({
  count: curvature.length,
  curvature: Float64Array.from(curvature),
  gap: Float64Array.from(gap),
  index: Float64Array.from(index),
  clear: Float64Array.from(clear),
});

function sent(lens: Prescription, y: number, z: number, M: number, N: number): Rays {
  const ray = rays(1);
  [ray.y[0], ray.z[0], ray.M[0], ray.N[0]] = [y, z, M, N];
  trace(lens, ray);
  return ray;
}

describe('what became of a ray', () => {
  it('is told by four different words', () => {
    expect(new Set([THROUGH, CLIPPED, MISSED, REFLECTED]).size).toBe(4);
  });
});

describe('a ray at a border', () => {
  // A ball of 8 mm radius; light enters it at its equator, where it only grazes it.
  const ball = surfaces([1 / 8], [0], [1, 1.5]);

  it.each([
    ['from afar', -8],
    ['from where it touches', 8],
  ])('that grazes a sphere, %s, enters it, at the angle whose sine is 1/n to the normal', (_, z) => {
    const ray = sent(ball, 8, z, 0, 1);
    expect(ray.status[0]).toBe(THROUGH);
    expect([ray.y[0], ray.z[0], ray.path[0]]).toEqual([8, 8, 8 - z]);
    // The normal points to the middle, along -y.
    expect(ray.M[0]).toBeCloseTo(-Math.sqrt(1 - 1 / 1.5 ** 2), 14);
    expect(ray.N[0]).toBeCloseTo(1 / 1.5, 14);
  });

  it('that passes a sphere by a hair has missed it', () => {
    expect(sent(ball, 8.000001, -8, 0, 1).status[0]).toBe(MISSED);
  });

  it('at the critical angle leaves along the surface and never comes to a picture', () => {
    // n = 1.25, sine of incidence 0.8.
    const glass = surfaces([0, 0], [0, 4], [1.25, 1.25, 1]);
    const ray = sent(glass, 0, 0, 0.8, 0.6);
    expect([ray.status[0], ray.surface[0]]).toEqual([MISSED, 1]);
    // Its entries are left as they were.
    expect([ray.y[0], ray.z[0], ray.M[0], ray.N[0]]).toEqual([0, 0, 0.8, 0.6]);
    expect(sent(glass, 0, 0, 0.81, Math.sqrt(1 - 0.81 ** 2)).status[0]).toBe(REFLECTED);
  });

  it('that grazes a ball on its way down is bent back and has missed; a surface behind that clips it comes first', () => {
    // A thousandth of a millimetre inside the tangent where the ball's normal is (0.6, 0.8): refracted by
    // asin(2/3) from it, it goes 0.4 - 0.8 √5/3 < 0 along the axis.
    const [y, z] = [0.6 * 7.999, 8 + 0.8 * 7.999];
    const [M, N] = [-0.8, 0.6];
    const ray = sent(ball, y - 5 * M, z - 5 * N, M, N);
    expect([ray.status[0], ray.surface[0]]).toEqual([MISSED, 0]);
    const two = surfaces([1 / 8, 1 / 30], [0, 5], [1, 1.5, 1], [Number.POSITIVE_INFINITY, 1]);
    const lost = sent(two, y - 5 * M, z - 5 * N, M, N);
    expect([lost.status[0], lost.surface[0]]).toEqual([CLIPPED, 1]);
  });
});
