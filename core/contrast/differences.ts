import { start } from '../trace/beam.ts';
import { type Rays, rays, THROUGH, trace } from '../trace/rays.ts';
import type { Colours } from './colours.ts';
import type { FieldBeam, Middle } from './middle.ts';
import { type Direction, type Nodes, overlapOf } from './region.ts';

/** Differences of pairs of rays, the same places in the overlap for each wavelength. */
export interface Differences {
  readonly phase: readonly Float64Array[];
  readonly rate: readonly Float64Array[];
  /** mm²; 0 where a ray of the pair is lost. */
  readonly area: readonly Float64Array[];
}

export function differencesOf(
  colours: Colours,
  field: FieldBeam,
  middle: Middle,
  frequency: number,
  direction: Direction,
  nodes: Nodes,
): Differences {
  const points = nodes * nodes;
  const bundle = rays(2 * points);
  const [phase, rate, area]: [Float64Array[], Float64Array[], Float64Array[]] = [[], [], []];
  for (const [c, lens] of colours.prescriptions.entries()) {
    const [phases, rates, areas] = [new Float64Array(points), new Float64Array(points), new Float64Array(points)];
    phase.push(phases);
    rate.push(rates);
    area.push(areas);
    const lambda = colours.wavelengthsMm[c] as number;
    const shear = (lambda * frequency) / Math.abs(direction === 'sagittal' ? middle.across : middle.along);
    const overlap = overlapOf(field.region, shear, direction, nodes);
    if (overlap.count === 0) continue;
    const [dx, dy] = direction === 'sagittal' ? [shear / 2, 0] : [0, shear / 2];
    for (let i = 0; i < points; i++) {
      const [x, y] = [overlap.x[i] as number, overlap.y[i] as number];
      start(bundle, 2 * i, x + dx, y + dy, field.slope, field.pupilDistanceMm);
      start(bundle, 2 * i + 1, x - dx, y - dy, field.slope, field.pupilDistanceMm);
    }
    trace(lens, bundle);
    for (let i = 0; i < points; i++) {
      const [a, b] = [2 * i, 2 * i + 1];
      if (bundle.status[a] !== THROUGH || bundle.status[b] !== THROUGH) continue;
      areas[i] = overlap.area[i] as number;
      phases[i] = (pathTo(bundle, a, middle.heightMm, colours.focusMm) - pathTo(bundle, b, middle.heightMm, colours.focusMm)) / lambda;
      // The image point moves along the middle ray: so the rays' own directions count as little as can be.
      rates[i] =
        ((bundle.N[a] as number) - (bundle.N[b] as number) + middle.slope * ((bundle.M[a] as number) - (bundle.M[b] as number))) / lambda;
    }
  }
  return { phase, rate, area };
}

/** Path along ray `i` to the foot of the perpendicular from the image point at `height` in the plane at `focus`, mm. */
function pathTo(bundle: Rays, i: number, height: number, focus: number): number {
  const [x, y, z] = [bundle.x[i] as number, bundle.y[i] as number, bundle.z[i] as number];
  return (
    (bundle.path[i] as number) -
    (bundle.L[i] as number) * x +
    (bundle.M[i] as number) * (height - y) +
    (bundle.N[i] as number) * (focus - z)
  );
}
