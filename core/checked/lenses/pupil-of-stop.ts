import { paraxialRay } from '../../trace/paraxial-rays.ts';
import type { Prescription } from '../../trace/prescription.ts';

/** From the entrance pupil to the first vertex, where a surface of the lens is its stop: the ray through the stop's middle comes from there. */
export function entrancePupilMm(lens: Prescription, stop: number): number {
  const parallel = paraxialRay(lens, 1, 0).height[stop] as number;
  const fromVertex = paraxialRay(lens, 0, 1).height[stop] as number;
  return -fromVertex / parallel;
}
