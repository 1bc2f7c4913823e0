import { type Rays, rays } from './rays.ts';

/** Points of a unit disc, each with its share of the area: the shares add up to 1. */
export interface PupilPoints {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly share: Float64Array;
}

/** A collimated beam from the objective's exit pupil. */
export interface Beam {
  readonly pupilRadiusMm: number;
  /** From the pupil to the lens's first vertex, mm. */
  readonly pupilDistanceMm: number;
  /** Tangent of its angle to the axis, toward +y. */
  readonly slope: number;
}

/** Makes ray `i` of a bundle that of a collimated beam through the pupil's point `x, y`, mm. */
export function start(bundle: Rays, i: number, x: number, y: number, slope: number, pupilDistanceMm: number): void {
  const N = 1 / Math.sqrt(1 + slope * slope);
  bundle.x[i] = x;
  bundle.y[i] = y;
  bundle.z[i] = -pupilDistanceMm;
  bundle.L[i] = 0;
  bundle.M[i] = slope * N;
  bundle.N[i] = N;
  // From the plane wavefront through the middle of the pupil.
  bundle.path[i] = slope * N * y;
}

/** Puts a beam's rays, on their way through the given points of the pupil, into `bundle`; returns it. */
export function launch(bundle: Rays, points: PupilPoints, { pupilRadiusMm, pupilDistanceMm, slope }: Beam): Rays {
  for (let i = 0; i < points.count; i++)
    start(bundle, i, pupilRadiusMm * (points.x[i] as number), pupilRadiusMm * (points.y[i] as number), slope, pupilDistanceMm);
  return bundle;
}

/** The beam's rays, in a bundle of their own. */
export const beam = (points: PupilPoints, of: Beam): Rays => launch(rays(points.count), points, of);
