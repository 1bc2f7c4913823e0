import type { Prescription } from './prescription.ts';

/** A paraxial ray on its way through a lens. Heights in mm, slopes as tangents. */
export interface ParaxialRay {
  /** At each surface's vertex plane. */
  readonly height: Float64Array;
  /** Before each surface, and behind the last: one more than surfaces. */
  readonly slope: Float64Array;
  /** At each surface, refractive index times angle of incidence, `n (u + h c)`: the same on both its sides. */
  readonly incidence: Float64Array;
}

/** The ray that meets the first surface at `height` with `slope` before it. */
export function paraxialRay({ count, curvature, gap, index }: Prescription, height: number, slope: number): ParaxialRay {
  const ray = { height: new Float64Array(count), slope: new Float64Array(count + 1), incidence: new Float64Array(count) };
  let h = height;
  let u = slope;
  ray.slope[0] = u;
  for (let k = 0; k < count; k++) {
    h += u * (gap[k] as number);
    const c = curvature[k] as number;
    const incidence = (index[k] as number) * (u + h * c);
    // Snell's law for small angles: n i = n' i'. Any optics text.
    u = incidence / (index[k + 1] as number) - h * c;
    ray.height[k] = h;
    ray.incidence[k] = incidence;
    ray.slope[k + 1] = u;
  }
  return ray;
}

/** The two paraxial rays that third-order theory is written in. */
export interface RayPair {
  /** From the axial object point through the pupil's edge. */
  readonly marginal: ParaxialRay;
  /** From the field's edge through the middle of the pupil. */
  readonly chief: ParaxialRay;
}

/** Where the light comes from: an object plane and an entrance pupil, both before the first vertex unless negative. */
export interface Illuminated {
  readonly pupilRadiusMm: number;
  /** From the entrance pupil to the first vertex. */
  readonly pupilDistanceMm: number;
  /** Of the chief ray before the lens. */
  readonly slope: number;
  /** From the object to the first vertex; Infinity, or left out, for collimated light. It must not lie in the pupil. */
  readonly objectDistanceMm?: number;
}

export function rayPair(lens: Prescription, light: Illuminated): RayPair {
  const { pupilRadiusMm, pupilDistanceMm, slope, objectDistanceMm = Number.POSITIVE_INFINITY } = light;
  const marginalSlope = pupilRadiusMm / (objectDistanceMm - pupilDistanceMm);
  return {
    marginal: paraxialRay(lens, pupilRadiusMm + marginalSlope * pupilDistanceMm, marginalSlope),
    chief: paraxialRay(lens, slope * pupilDistanceMm, slope),
  };
}
