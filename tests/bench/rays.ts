import type { Prescription } from '../../core/trace/prescription.ts';
import { type Rays, rays } from '../../core/trace/rays.ts';

/**
 * Rays through exactly three surfaces, as one would write it by hand for this lens alone: every surface's
 * numbers in locals, no status beyond 'lost', nothing general. What the general loop is measured against.
 */
export function byHand({ curvature, gap, index, clear }: Prescription, from: Rays, to: Rays): number {
  const [c1, c2, c3] = [curvature[0] as number, curvature[1] as number, curvature[2] as number];
  const [t2, t3] = [gap[1] as number, gap[2] as number];
  const [n1, n2] = [index[1] as number, index[2] as number];
  const [a1, a2, a3] = [clear[0] as number, clear[1] as number, clear[2] as number];
  const [i1, i2] = [1 / n1, 1 / n2];
  const [m1, m2] = [n1 * n1, n2 * n2];
  let lost = 0;
  for (let i = 0; i < from.count; i++) {
    let x = from.x[i] as number;
    let y = from.y[i] as number;
    let z = from.z[i] as number;
    let L = from.L[i] as number;
    let M = from.M[i] as number;
    let N = from.N[i] as number;

    let f = c1 * (x * x + y * y + z * z) - 2 * z;
    let g = N - c1 * (L * x + M * y + N * z);
    let square = g * g - c1 * f;
    let cosine = Math.sqrt(square);
    let step = f / (g + cosine);
    x += step * L;
    y += step * M;
    z += step * N;
    if (!(x * x + y * y <= a1)) {
      lost++;
      continue;
    }
    let path = (from.path[i] as number) + step;
    let bend = Math.sqrt(m1 - 1 + square) - cosine;
    L = (L - bend * c1 * x) * i1;
    M = (M - bend * c1 * y) * i1;
    N = (N + bend * (1 - c1 * z)) * i1;

    z -= t2;
    f = c2 * (x * x + y * y + z * z) - 2 * z;
    g = N - c2 * (L * x + M * y + N * z);
    square = g * g - c2 * f;
    cosine = Math.sqrt(square);
    step = f / (g + cosine);
    x += step * L;
    y += step * M;
    z += step * N;
    if (!(x * x + y * y <= a2)) {
      lost++;
      continue;
    }
    path += n1 * step;
    bend = Math.sqrt(m2 - m1 * (1 - square)) - n1 * cosine;
    L = (n1 * L - bend * c2 * x) * i2;
    M = (n1 * M - bend * c2 * y) * i2;
    N = (n1 * N + bend * (1 - c2 * z)) * i2;

    z -= t3;
    f = c3 * (x * x + y * y + z * z) - 2 * z;
    g = N - c3 * (L * x + M * y + N * z);
    square = g * g - c3 * f;
    cosine = Math.sqrt(square);
    step = f / (g + cosine);
    x += step * L;
    y += step * M;
    z += step * N;
    if (!(x * x + y * y <= a3)) {
      lost++;
      continue;
    }
    path += n2 * step;
    bend = Math.sqrt(1 - m2 * (1 - square)) - n2 * cosine;
    to.x[i] = x;
    to.y[i] = y;
    to.z[i] = z;
    to.L[i] = n2 * L - bend * c3 * x;
    to.M[i] = n2 * M - bend * c3 * y;
    to.N[i] = n2 * N + bend * (1 - c3 * z);
    to.path[i] = path;
  }
  return lost;
}

/** Puts one bundle's rays into another of the same size. */
export function copy(from: Rays, to: Rays): Rays {
  to.x.set(from.x);
  to.y.set(from.y);
  to.z.set(from.z);
  to.L.set(from.L);
  to.M.set(from.M);
  to.N.set(from.N);
  to.path.set(from.path);
  return to;
}

/** A bundle like this one. */
export const like = (bundle: Rays): Rays => copy(bundle, rays(bundle.count));
