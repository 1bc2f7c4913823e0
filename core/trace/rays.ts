import type { Prescription } from './prescription.ts';

/** What became of a ray. */
export const THROUGH = 0;
/** It met a surface beyond the height to which that lets light through. */
export const CLIPPED = 1;
/** It passed beside the sphere, or was bent so far that it came back. */
export const MISSED = 2;
/** It was totally reflected. */
export const REFLECTED = 3;

/**
 * Many rays, one entry each. Before tracing: a point (z from the first vertex, mm), the direction
 * cosines, the optical path so far. After: the point on the last surface (z from the last vertex), the
 * direction behind it, the path up to there; `status`, and in `surface` where a ray ended that did not
 * come through, whose other entries are then left as they were.
 */
export interface Rays {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly L: Float64Array;
  readonly M: Float64Array;
  readonly N: Float64Array;
  readonly path: Float64Array;
  readonly status: Uint8Array;
  readonly surface: Uint8Array;
}

export const rays = (count: number): Rays => ({
  count,
  x: new Float64Array(count),
  y: new Float64Array(count),
  z: new Float64Array(count),
  L: new Float64Array(count),
  M: new Float64Array(count),
  N: new Float64Array(count),
  path: new Float64Array(count),
  status: new Uint8Array(count),
  surface: new Uint8Array(count),
});

/**
 * Exact skew rays through spheres and planes, in place. A ray meets the sphere `c(x²+y²+z²) = 2z` at the
 * root nearer to the vertex; refraction keeps `n sin i` and the plane of incidence, as vectors
 * (Welford 1986, from memory). Directions are carried as cosines times the index, so that nothing has to
 * be divided by it on the way. N must be positive.
 */
export function trace({ count, curvature, gap, index, clear }: Prescription, bundle: Rays): void {
  const { x: xs, y: ys, z: zs, L: Ls, M: Ms, N: Ns, path: paths, status: states, surface: surfaces } = bundle;
  const all = bundle.count;
  const before = index[0] as number;
  const behind = index[count] as number;
  for (let i = 0; i < all; i++) {
    let x = xs[i] as number;
    let y = ys[i] as number;
    let z = zs[i] as number;
    let p = before * (Ls[i] as number);
    let q = before * (Ms[i] as number);
    let r = before * (Ns[i] as number);
    let path = paths[i] as number;
    let square = before * before;
    let status = THROUGH;
    let k = 0;
    while (k < count) {
      const c = curvature[k] as number;
      z -= gap[k] as number;
      const f = c * (x * x + y * y + z * z) - 2 * z;
      const g = r - c * (p * x + q * y + r * z);
      // The cosine of incidence times the index, squared.
      const incident = g * g - square * c * f;
      if (incident < 0) {
        status = MISSED;
        break;
      }
      const cosine = Math.sqrt(incident);
      // The same root both ways; from beyond the centre the first one would lose its digits.
      const step = g > 0 ? f / (g + cosine) : (g - cosine) / (square * c);
      x += step * p;
      y += step * q;
      z += step * r;
      if (!(x * x + y * y <= (clear[k] as number))) {
        status = CLIPPED;
        break;
      }
      path += square * step;
      const m = index[k + 1] as number;
      const refracted = m * m - square + incident;
      if (refracted < 0) {
        status = REFLECTED;
        break;
      }
      const bend = Math.sqrt(refracted) - cosine;
      const curved = bend * c;
      p -= curved * x;
      q -= curved * y;
      r += bend - curved * z;
      square = m * m;
      k++;
    }
    if (status === THROUGH && !(r > 0)) {
      status = MISSED;
      k = count - 1;
    }
    states[i] = status;
    surfaces[i] = k;
    if (status !== THROUGH) continue;
    xs[i] = x;
    ys[i] = y;
    zs[i] = z;
    Ls[i] = p / behind;
    Ms[i] = q / behind;
    Ns[i] = r / behind;
    paths[i] = path;
  }
}
