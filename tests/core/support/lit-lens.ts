import fc from 'fast-check';
import type { Lens } from '../../../core/trace/lens.ts';
import { type Illuminated, rayPair } from '../../../core/trace/paraxial-rays.ts';
import { prescription } from '../../../core/trace/prescription.ts';
import { rays, THROUGH, trace } from '../../../core/trace/rays.ts';
import { ANY_NM, lensesUpTo } from './arbitrary-lens.ts';
import { between } from './arbitrary-train.ts';

export interface Lit {
  readonly lens: Lens;
  readonly light: Illuminated;
  /** Of the marginal ray behind the lens. */
  readonly imageSlope: number;
  /** From the last vertex. */
  readonly imageMm: number;
  /** Paraxial, at the edge of the field. */
  readonly imageHeightMm: number;
}

function lit(lens: Lens, light: Illuminated): Lit {
  const { marginal, chief } = rayPair(prescription(lens, ANY_NM), light);
  const last = lens.radiiMm.length;
  const imageSlope = marginal.slope[last] as number;
  const imageMm = -(marginal.height[last - 1] as number) / imageSlope;
  return { lens, light, imageSlope, imageMm, imageHeightMm: (chief.height[last - 1] as number) + imageMm * (chief.slope[last] as number) };
}

/** Lenses with a small pupil and field, the object far off or not, that form an image nearer than a metre or two. */
export const anyLit: fc.Arbitrary<Lit> = fc
  .record({
    lens: lensesUpTo(Number.POSITIVE_INFINITY),
    light: fc.record({
      pupilRadiusMm: between(0.4, 0.8),
      pupilDistanceMm: between(-15, 60),
      slope: between(0.008, 0.016),
      objectDistanceMm: fc.oneof(fc.constant(Number.POSITIVE_INFINITY), between(200, 500)),
    }),
  })
  .map(({ lens, light }) => lit(lens, light))
  .filter(({ light, imageSlope, imageMm }) => Math.abs(imageSlope) > light.pupilRadiusMm / 800 && Math.abs(imageMm) < 2000);

/** The same with pupil and field `k` times as large. */
export const dimmed = ({ lens, light }: Lit, k: number): Lit =>
  lit(lens, { ...light, pupilRadiusMm: k * light.pupilRadiusMm, slope: k * light.slope });

/**
 * Where the real ray through a point of the pupil (unit disc) from a point of the field (1 its edge)
 * meets the paraxial image plane, from where the paraxial one does, mm.
 */
export function miss({ lens, light, imageMm, imageHeightMm }: Lit, field: number, px: number, py: number): { x: number; y: number } {
  const { pupilRadiusMm, pupilDistanceMm, slope, objectDistanceMm = Number.POSITIVE_INFINITY } = light;
  const way = objectDistanceMm - pupilDistanceMm;
  const [tx, ty] = [(pupilRadiusMm * px) / way, field * slope + (pupilRadiusMm * py) / way];
  const ray = rays(1);
  const N = 1 / Math.sqrt(1 + tx * tx + ty * ty);
  [ray.x[0], ray.y[0], ray.z[0]] = [pupilRadiusMm * px, pupilRadiusMm * py, -pupilDistanceMm];
  [ray.L[0], ray.M[0], ray.N[0]] = [tx * N, ty * N, N];
  trace(prescription(lens, ANY_NM), ray);
  if (ray.status[0] !== THROUGH) throw new Error('a ray close to the axis was lost');
  const to = (imageMm - (ray.z[0] as number)) / (ray.N[0] as number);
  return {
    x: (ray.x[0] as number) + to * (ray.L[0] as number),
    y: (ray.y[0] as number) + to * (ray.M[0] as number) - field * imageHeightMm,
  };
}
