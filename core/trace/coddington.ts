import type { Matrix } from '../paraxial/matrix.ts';
import type { Prescription } from './prescription.ts';
import { MISSED, REFLECTED, rays, THROUGH, trace } from './rays.ts';

/** A real ray through the middle of the pupil. */
export interface ChiefRay {
  /** From the pupil to the first vertex, mm; negative where the pupil lies behind that. */
  readonly pupilDistanceMm: number;
  /** Tangent of its angle to the axis, toward +y. */
  readonly slope: number;
}

/**
 * The rays close to a chief ray, as matrices from the middle of the pupil to where it leaves the last
 * surface: height from it, square to it, in mm, and angle to it; across the field axis (sagittal) and
 * along it (tangential). With the chief ray itself behind the lens: its height, z from the last vertex, and
 * direction cosines.
 */
export interface ClosePencil {
  readonly status: typeof THROUGH;
  readonly sagittal: Matrix;
  readonly tangential: Matrix;
  readonly y: number;
  readonly z: number;
  readonly M: number;
  readonly N: number;
}

/** A chief ray that passed beside the sphere of `surface`, or was totally reflected there. */
export interface LostChiefRay {
  readonly status: typeof MISSED | typeof REFLECTED;
  readonly surface: number;
}

/**
 * Coddington's equations, `n' cos²i'/t' - n cos²i/t = (n' cos i' - n cos i) c` along the field axis and the
 * same without the squares across it, written for heights and angles (a textbook's, from memory).
 * The chief ray is followed whether or not the glass is high enough for it: what a surface clips is not asked.
 */
export function closePencil(lens: Prescription, { pupilDistanceMm, slope }: ChiefRay): ClosePencil | LostChiefRay {
  const ray = rays(1);
  const N = 1 / Math.sqrt(1 + slope * slope);
  [ray.z[0], ray.M[0], ray.N[0]] = [-pupilDistanceMm, slope * N, N];
  const sagittal = { a: 1, b: 0, c: 0, d: 1 };
  const tangential = { a: 1, b: 0, c: 0, d: 1 };
  for (let k = 0; k < lens.count; k++) {
    const c = lens.curvature[k] as number;
    const [n, m] = [lens.index[k] as number, lens.index[k + 1] as number];
    const [M, N, path] = [ray.M[0] as number, ray.N[0] as number, ray.path[0] as number];
    trace(surfaceOf(lens, k), ray);
    if (ray.status[0] !== THROUGH) return { status: ray.status[0] === REFLECTED ? REFLECTED : MISSED, surface: k };
    const [y, z] = [ray.y[0] as number, ray.z[0] as number];
    const cosine = N - c * (M * y + N * z);
    const refracted = (ray.N[0] as number) - c * ((ray.M[0] as number) * y + (ray.N[0] as number) * z);
    const power = (m * refracted - n * cosine) * c;
    const way = ((ray.path[0] as number) - path) / n;
    refract(sagittal, way, 1, power / m, n / m);
    refract(tangential, way, refracted / cosine, power / (m * cosine * refracted), (n * cosine) / (m * refracted));
  }
  return {
    status: THROUGH,
    sagittal,
    tangential,
    y: ray.y[0] as number,
    z: ray.z[0] as number,
    M: ray.M[0] as number,
    N: ray.N[0] as number,
  };
}

/** One surface of a lens, as wide as its sphere. */
const surfaceOf = ({ curvature, gap, index }: Prescription, k: number): Prescription => ({
  count: 1,
  curvature: curvature.subarray(k),
  gap: gap.subarray(k),
  index: index.subarray(k),
  clear: Float64Array.of(Number.POSITIVE_INFINITY),
});

type Rows = { -readonly [K in keyof Matrix]: Matrix[K] };

/** Puts a way, and a surface behind it, to a matrix, in place: heights grow `by`, angles become `keep` times theirs less `power` times the height. */
function refract(of: Rows, way: number, by: number, power: number, keep: number): void {
  const a = of.a + way * of.c;
  const b = of.b + way * of.d;
  of.c = keep * of.c - power * a;
  of.d = keep * of.d - power * b;
  of.a = by * a;
  of.b = by * b;
}

/** Where close rays meet, mm from the last vertex along z; infinite where they leave the lens in parallel. */
export interface CloseFoci {
  readonly sagittalMm: number;
  readonly tangentialMm: number;
}

/** @param objectMm from the object point to the pupil's middle along the chief ray; Infinity for collimated light */
export function closeFoci({ sagittal, tangential, z, N }: ClosePencil, objectMm = Number.POSITIVE_INFINITY): CloseFoci {
  const focus = ({ a, b, c, d }: Matrix): number => {
    const [height, angle] = Number.isFinite(objectMm) ? [a * objectMm + b, c * objectMm + d] : [a, c];
    return z - (N * height) / angle;
  };
  return { sagittalMm: focus(sagittal), tangentialMm: focus(tangential) };
}
