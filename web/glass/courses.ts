import { type Beam, beam, type Prescription, THROUGH, trace } from '../../core/glassworks.ts';
import type { Point } from '../plates/path-rays.ts';

/** The course of one ray of the field's plane through a lens. */
export interface RayCourse {
  /** Where it meets each surface, as far as it gets: z from the first vertex and height, mm. */
  points: Point[];
  /** Its slope behind the last surface; undefined where it does not come so far. */
  slope: number | undefined;
}

/**
 * Rays of one beam, surface by surface, as if no rim stopped any of them.
 * @param at where they leave the exit pupil, as a part of its radius, -1 to 1
 */
export function coursesThrough(prescription: Prescription, vertices: readonly number[], at: readonly number[], of: Beam): RayCourse[] {
  const points = {
    count: at.length,
    x: new Float64Array(at.length),
    y: Float64Array.from(at),
    share: new Float64Array(at.length).fill(1 / at.length),
  };
  const open = { ...prescription, clear: new Float64Array(prescription.count).fill(Number.POSITIVE_INFINITY) };
  const courses = at.map((): RayCourse => ({ points: [], slope: undefined }));
  for (let k = 1; k <= prescription.count; k++) {
    const here = beam(points, of);
    trace({ ...open, count: k }, here);
    courses.forEach((course, i) => {
      if (here.status[i] !== THROUGH) return;
      course.points.push([(vertices[k - 1] as number) + (here.z[i] as number), here.y[i] as number]);
      if (k === prescription.count) course.slope = (here.M[i] as number) / (here.N[i] as number);
    });
  }
  return courses;
}
