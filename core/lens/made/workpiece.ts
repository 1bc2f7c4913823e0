import { LINES, type Line } from '../../glass/lines.ts';
import type { Medium } from '../../glass/medium.ts';
import type { Prescription } from '../../trace/prescription.ts';
import { type Limits, leastThickness, steepestCurvature } from './workshop.ts';

/** A lens in the making: one set of surfaces, seen in three colours, shaped in place. */
export interface Workpiece {
  readonly media: readonly Medium[];
  readonly d: Prescription;
  readonly F: Prescription;
  readonly C: Prescription;
}

/** Plane surfaces with these media between them. */
export function workpiece(media: readonly Medium[]): Workpiece {
  const count = media.length + 1;
  const surfaces = {
    count,
    curvature: new Float64Array(count),
    gap: new Float64Array(count),
    clear: new Float64Array(count).fill(Number.POSITIVE_INFINITY),
  };
  const inColour = (line: Line): Prescription => ({
    ...surfaces,
    index: Float64Array.of(1, ...media.map((m) => m.indexAt(LINES[line])), 1),
  });
  return { media, d: inColour('d'), F: inColour('F'), C: inColour('C') };
}

/**
 * The paraxial ray that comes in at height 1 along the axis, before it is refracted at surface `k` or,
 * with `k` the count, behind the lens: its height at the last surface it met and index times slope. By
 * itself and not out of a matrix, since the making of one lens asks for it some ten thousand times.
 */
function marginalRay({ count, curvature, gap, index }: Prescription, k: number): readonly [height: number, nu: number] {
  let y = 1;
  let nu = 0;
  for (let i = 0; i < k; i++) {
    nu -= y * ((index[i + 1] as number) - (index[i] as number)) * (curvature[i] as number);
    if (i + 1 < count) y += (nu * (gap[i + 1] as number)) / (index[i + 1] as number);
  }
  return [y, nu];
}

/** From the last vertex to the paraxial focus, mm. */
export function backFocus(lens: Prescription): number {
  const [y, nu] = marginalRay(lens, lens.count);
  return -y / nu;
}

/** Back focus in blue (F) less that in red (C), mm: negative where blue comes to a focus first. */
export const axialColour = ({ F, C }: Workpiece): number => backFocus(F) - backFocus(C);

/** The last curvature for a focal length: the ray that came in at height 1 leaves with the slope -1/f. */
function lastCurvature({ d }: Workpiece, focalLengthMm: number): number {
  const last = d.count - 1;
  const [y, nu] = marginalRay(d, last);
  return (nu + 1 / focalLengthMm) / (y * (1 - (d.index[last] as number)));
}

/**
 * Takes all curvatures but the last as given, and makes the thicknesses the least that can be made and
 * the last radius what the focal length for d asks for. False where a surface becomes too steep.
 */
export function closed(work: Workpiece, focalLengthMm: number, limits: Limits): boolean {
  const { count, curvature, gap } = work.d;
  const last = count - 1;
  const c = (k: number): number => curvature[k] as number;
  // Written so that NaN is too steep.
  const tooSteep = (k: number): boolean => !(Math.abs(c(k)) <= steepestCurvature(k === 0 || k === last, limits));
  for (let k = 0; k < last; k++) if (tooSteep(k)) return false;
  for (let k = 1; k < last; k++) gap[k] = leastThickness(work.media[k - 1] as Medium, c(k - 1), c(k), limits);
  // Thickness and radius ask for each other; each turn is nearer by two digits or so.
  for (let turn = 0; turn < 20; turn++) {
    curvature[last] = lastCurvature(work, focalLengthMm);
    if (tooSteep(last)) return false;
    const thickness = leastThickness(work.media.at(-1) as Medium, c(last - 1), c(last), limits);
    if (Math.abs(thickness - (gap[last] as number)) <= 1e-12 * limits.blankRadiusMm) return true;
    gap[last] = thickness;
  }
  return false;
}

/**
 * The same with the second curvature chosen, near the present one, so that blue and red meet at one focus
 * of the lens as it stands, thick: a secant's root. False where it cannot be made.
 */
export function achromatised(work: Workpiece, focalLengthMm: number, limits: Limits): boolean {
  const { curvature } = work.d;
  const colourAt = (c: number): number => {
    curvature[1] = c;
    return closed(work, focalLengthMm, limits) ? axialColour(work) : Number.NaN;
  };
  let before = curvature[1] as number;
  let here = before + 0.02 / focalLengthMm;
  let [was, is] = [colourAt(before), colourAt(here)];
  for (let turn = 0; turn < 12 && !Number.isNaN(is); turn++) {
    if (Math.abs(is) <= 1e-12 * focalLengthMm) return true;
    const next = here - (is * (here - before)) / (is - was);
    [before, was] = [here, is];
    [here, is] = [next, colourAt(next)];
  }
  return false;
}
