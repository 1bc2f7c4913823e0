import { MM_PER_NM } from '../units.ts';
import { type Beam, beam, type PupilPoints } from './beam.ts';
import type { Prescription } from './prescription.ts';
import { type Rays, THROUGH, trace } from './rays.ts';

/** One ray of a traced bundle. */
export interface Ray {
  readonly of: Rays;
  readonly index: number;
}

const MIDDLE: PupilPoints = { count: 1, x: Float64Array.of(0), y: Float64Array.of(0), share: Float64Array.of(1) };

/**
 * The ray through the middle of the pupil, whether or not the glass is high enough for it. Where even the
 * spheres are not, or it is totally reflected: the ray of the bundle nearest to the middle that came through.
 */
export function chiefRay(lens: Prescription, from: Beam, bundle: Rays, points: PupilPoints): Ray {
  const middle = beam(MIDDLE, from);
  trace({ ...lens, clear: lens.clear.map(() => Number.POSITIVE_INFINITY) }, middle);
  if (middle.status[0] === THROUGH) return { of: middle, index: 0 };
  let index = 0;
  let nearest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < bundle.count; i++) {
    const off = (points.x[i] as number) ** 2 + (points.y[i] as number) ** 2;
    if (bundle.status[i] === THROUGH && off < nearest) [index, nearest] = [i, off];
  }
  return { of: bundle, index };
}

/**
 * How much longer each ray's optical path is than the chief ray's, in waves, at the sphere whose centre is
 * where the chief ray meets the plane `planeMm` behind the last vertex and which passes through the point
 * where it leaves the lens (Welford 1986, from memory). A ray that passes beside so small a sphere is
 * followed to the point nearest to its centre. 0 for rays that did not come through.
 */
export function wavefront(bundle: Rays, chief: Ray, planeMm: number, wavelengthNm: number): Float64Array {
  const { of, index } = chief;
  const to = (planeMm - (of.z[index] as number)) / (of.N[index] as number);
  const centreX = (of.x[index] as number) + to * (of.L[index] as number);
  const centreY = (of.y[index] as number) + to * (of.M[index] as number);
  const waves = new Float64Array(bundle.count);
  for (let i = 0; i < bundle.count; i++) {
    if (bundle.status[i] !== THROUGH) continue;
    const x = centreX - (bundle.x[i] as number);
    const y = centreY - (bundle.y[i] as number);
    const z = planeMm - (bundle.z[i] as number);
    // To the foot of the perpendicular from the centre, then back to the sphere, on the lens's side of it.
    const foot = x * (bundle.L[i] as number) + y * (bundle.M[i] as number) + z * (bundle.N[i] as number);
    const chord = Math.sqrt(Math.max(0, to * to - (x * x + y * y + z * z - foot * foot)));
    const step = foot - Math.sign(to) * chord;
    waves[i] = ((bundle.path[i] as number) + step - (of.path[index] as number)) / (wavelengthNm * MM_PER_NM);
  }
  return waves;
}
