import type { Prescription } from '../../core/trace/prescription.ts';
import { type Rays, rays } from '../../core/trace/rays.ts';

/**
 * Rays through exactly three surfaces, as one would write it by hand for this lens alone: every surface's
 * numbers in locals, no status beyond 'lost', nothing general. What the general loop is measured against.
 */
export function byHand({ curvature, gap, index, clear }: Prescription, from: Rays, to: Rays): number {
  const [c1, c2, c3] = [curvature[0] as number, curvature[1] as number, curvature[2] as number];
  const [t2, t3] = [gap[1] as number, gap[2] as number];
  const [s1, s2] = [(index[1] as number) ** 2, (index[2] as number) ** 2];
  const [a1, a2, a3] = [clear[0] as number, clear[1] as number, clear[2] as number];
  let lost = 0;
  for (let i = 0; i < from.count; i++) {
    let x = from.x[i] as number;
    let y = from.y[i] as number;
    let z = from.z[i] as number;
    let p = from.L[i] as number;
    let q = from.M[i] as number;
    let r = from.N[i] as number;

    let f = c1 * (x * x + y * y + z * z) - 2 * z;
    let g = r - c1 * (p * x + q * y + r * z);
    let incident = g * g - c1 * f;
    let cosine = Math.sqrt(incident);
    let step = f / (g + cosine);
    x += step * p;
    y += step * q;
    z += step * r;
    if (!(x * x + y * y <= a1)) {
      lost++;
      continue;
    }
    let path = (from.path[i] as number) + step;
    let bend = Math.sqrt(s1 - 1 + incident) - cosine;
    let curved = bend * c1;
    p -= curved * x;
    q -= curved * y;
    r += bend - curved * z;

    z -= t2;
    f = c2 * (x * x + y * y + z * z) - 2 * z;
    g = r - c2 * (p * x + q * y + r * z);
    incident = g * g - s1 * c2 * f;
    cosine = Math.sqrt(incident);
    step = f / (g + cosine);
    x += step * p;
    y += step * q;
    z += step * r;
    if (!(x * x + y * y <= a2)) {
      lost++;
      continue;
    }
    path += s1 * step;
    bend = Math.sqrt(s2 - s1 + incident) - cosine;
    curved = bend * c2;
    p -= curved * x;
    q -= curved * y;
    r += bend - curved * z;

    z -= t3;
    f = c3 * (x * x + y * y + z * z) - 2 * z;
    g = r - c3 * (p * x + q * y + r * z);
    incident = g * g - s2 * c3 * f;
    cosine = Math.sqrt(incident);
    step = f / (g + cosine);
    x += step * p;
    y += step * q;
    z += step * r;
    if (!(x * x + y * y <= a3)) {
      lost++;
      continue;
    }
    path += s2 * step;
    bend = Math.sqrt(1 - s2 + incident) - cosine;
    curved = bend * c3;
    p -= curved * x;
    q -= curved * y;
    r += bend - curved * z;

    to.x[i] = x;
    to.y[i] = y;
    to.z[i] = z;
    to.L[i] = p;
    to.M[i] = q;
    to.N[i] = r;
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
