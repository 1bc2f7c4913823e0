import { start } from '../trace/beam.ts';
import type { Prescription } from '../trace/prescription.ts';
import { type Rays, rays, THROUGH, trace } from '../trace/rays.ts';
import { overlapOf, type Region } from './region.ts';

/** One field point's beam: where it starts, and the part of the pupil that it fills. */
export interface FieldBeam {
  readonly slope: number;
  readonly pupilDistanceMm: number;
  readonly region: Region;
}

/** How far from the middle of the region, as a part of its size, the slopes of the rays are measured. */
const PART = 0.5;

/** How image-space direction cosines change with the place in the pupil, and where the middle ray goes. */
export interface Middle {
  /** Direction cosine in the image per mm of the pupil, across and along the field axis; both negative behind a positive lens. */
  readonly across: number;
  readonly along: number;
  /** Where the middle ray of the reference wavelength meets the paraxial focal plane, mm, and its slope there. */
  readonly heightMm: number;
  readonly slope: number;
  /** Of the region, as much as comes through the lens, mm². */
  readonly area: number;
}

/** @returns undefined where the middle of the beam does not come through */
export function middleOf(lens: Prescription, { slope, pupilDistanceMm, region }: FieldBeam, focusMm: number): Middle | undefined {
  const [low, high] = [region.low(0), region.high(0)];
  const [y, dy, dx] = [(low + high) / 2, (PART * (high - low)) / 2, PART * region.halfWidth];
  const five = rays(5);
  const points = [
    [0, y],
    [dx, y],
    [-dx, y],
    [0, y + dy],
    [0, y - dy],
  ] as const;
  points.forEach(([px, py], i) => {
    start(five, i, px, py, slope, pupilDistanceMm);
  });
  trace(lens, five);
  if (five.status.some((s) => s !== THROUGH)) return undefined;
  const { x: _, y: height, z, L, M, N } = five as Required<Rays>;
  const [L1, L2, M3, M4] = [L[1] as number, L[2] as number, M[3] as number, M[4] as number];
  return {
    across: (L1 - L2) / (2 * dx),
    along: (M3 - M4) / (2 * dy),
    heightMm: (height[0] as number) + ((focusMm - (z[0] as number)) * (M[0] as number)) / (N[0] as number),
    slope: (M[0] as number) / (N[0] as number),
    area: passedArea(lens, { slope, pupilDistanceMm, region }),
  };
}

function passedArea(lens: Prescription, { slope, pupilDistanceMm, region }: FieldBeam): number {
  const { count, x, y, area } = overlapOf(region, 0, 'tangential');
  const bundle = rays(count);
  for (let i = 0; i < count; i++) start(bundle, i, x[i] as number, y[i] as number, slope, pupilDistanceMm);
  trace(lens, bundle);
  return area.reduce((sum, a, i) => sum + (bundle.status[i] === THROUGH ? a : 0), 0);
}
