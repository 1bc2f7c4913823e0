import { type Parabola, parabola } from './focus.ts';
import type { Rays } from './rays.ts';

/** Where a bundle's rays go in one direction across the axis. */
export interface Spread {
  /** Their mean on the plane of the last vertex, mm, and how fast it moves behind that. */
  readonly vertexMm: number;
  readonly slope: number;
  /** Mean square about that mean, mm². */
  readonly square: Parabola;
}

/** A traced bundle as a spot on every plane behind the lens. */
export interface Spot {
  /** Across the field axis (x) and along it (y). */
  readonly sagittal: Spread;
  readonly tangential: Spread;
  /** Mean square distance from the centroid, mm²: the two together. */
  readonly square: Parabola;
}

/** The mean of a spread on a plane, mm. */
export const meanAt = (spread: Spread, z: number): number => spread.vertexMm + spread.slope * z;

/**
 * What came through, as a spot.
 * @param weights what each ray counts, adding up to 1 (`through`)
 * @param nearMm a plane near the focus, mm from the last vertex: the digits are best there, and rays that meet nowhere are taken to meet there
 */
export function spot(bundle: Rays, weights: Float64Array, nearMm: number): Spot {
  const across = moments(bundle, bundle.x, bundle.L, weights, nearMm);
  const along = moments(bundle, bundle.y, bundle.M, weights, nearMm);
  return {
    sagittal: spread(across, nearMm),
    tangential: spread(along, nearMm),
    square: parabola(across.a + along.a, across.b + along.b, across.c + along.c, nearMm),
  };
}

/** On the plane `near`: means of places and slopes, and of their squares and product about the means. */
interface Moments {
  readonly place: number;
  readonly slope: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

const spread = ({ place, slope, a, b, c }: Moments, near: number): Spread => ({
  vertexMm: place - slope * near,
  slope,
  square: parabola(a, b, c, near),
});

function moments({ count, z, N }: Rays, at: Float64Array, cosine: Float64Array, weights: Float64Array, near: number): Moments {
  let place = 0;
  let slope = 0;
  for (let i = 0; i < count; i++) {
    const weight = weights[i] as number;
    const tangent = (cosine[i] as number) / (N[i] as number);
    place += weight * ((at[i] as number) + (near - (z[i] as number)) * tangent);
    slope += weight * tangent;
  }
  let a = 0;
  let b = 0;
  let c = 0;
  for (let i = 0; i < count; i++) {
    const weight = weights[i] as number;
    const tangent = (cosine[i] as number) / (N[i] as number);
    const off = (at[i] as number) + (near - (z[i] as number)) * tangent - place;
    const tilt = tangent - slope;
    a += weight * off * off;
    b += weight * off * tilt;
    c += weight * tilt * tilt;
  }
  return { place, slope, a, b, c };
}
