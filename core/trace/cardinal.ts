import { gap, type Matrix, thinLens, train } from '../paraxial/matrix.ts';
import type { Prescription } from './prescription.ts';

/**
 * Cardinal points of a lens in air, mm. Principal planes and focal points of a lens without power do not
 * exist: then all but the matrix are infinite.
 */
export interface Cardinal {
  /** From the first vertex to the last. */
  readonly matrix: Matrix;
  readonly effectiveFocalLengthMm: number;
  /** From the last vertex to the rear focal point. */
  readonly backFocalLengthMm: number;
  /** From the first vertex to the front focal point: negative where it lies before the lens. */
  readonly frontFocalLengthMm: number;
  /** From the first vertex to the front principal plane, positive into the lens. */
  readonly frontPrincipalPlaneMm: number;
  /** From the last vertex to the rear principal plane, negative where it lies inside. */
  readonly rearPrincipalPlaneMm: number;
}

/** With index times slope in the place of slope, refraction and transfer are matrices as in air. Any optics text. */
export function cardinal({ count, curvature, gap: gaps, index }: Prescription): Cardinal {
  const elements: Matrix[] = [];
  for (let k = 0; k < count; k++) {
    elements.push(gap((gaps[k] as number) / (index[k] as number)));
    elements.push(thinLens(1 / (((index[k + 1] as number) - (index[k] as number)) * (curvature[k] as number))));
  }
  const matrix = train(...elements);
  const f = -1 / matrix.c;
  return {
    matrix,
    effectiveFocalLengthMm: f,
    backFocalLengthMm: f * matrix.a,
    frontFocalLengthMm: -f * matrix.d,
    frontPrincipalPlaneMm: f * (1 - matrix.d),
    rearPrincipalPlaneMm: f * (matrix.a - 1),
  };
}
