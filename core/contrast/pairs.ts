import type { Prescription } from '../trace/prescription.ts';
import { type Rays, rays, THROUGH, trace } from '../trace/rays.ts';
import { type Direction, MOST_POINTS, overlapOf, type Region } from './region.ts';

/** A lens at the wavelengths of a spectrum. */
export interface Colours {
  readonly prescriptions: readonly Prescription[];
  readonly wavelengthsMm: readonly number[];
  /** Shares of the light: they add up to 1. */
  readonly weights: readonly number[];
  /** The wavelength that the focus is counted from, and by which the pupil is scaled. */
  readonly reference: Prescription;
  /** Paraxial focus of the reference wavelength, from the last vertex, mm. */
  readonly focusMm: number;
}

/** One field point's beam: where it starts, and the part of the pupil that it fills. */
export interface FieldBeam {
  readonly slope: number;
  readonly pupilDistanceMm: number;
  readonly region: Region;
}

/**
 * Pairs of rays that a pattern of one frequency and direction makes interfere. Contrast is the sum over
 * the pairs of `share · exp(2πi (phase + focus · rate))`, focus in mm from the paraxial one.
 */
export interface Pairs {
  readonly count: number;
  /** Difference of the two rays' paths to the image point, in waves. */
  readonly phase: Float64Array;
  /** Waves that the difference changes by for a mm of focus, the image point going along the beam's middle ray. */
  readonly rate: Float64Array;
  /** Area over the whole region's, times the wavelength's share of the light. */
  readonly share: Float64Array;
  /** Contrast of the same region without aberrations: the sum of the shares. */
  readonly perfect: number;
  /** True where each pair's mirror image has the opposite phase, so that only the real part is left. */
  readonly real: boolean;
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
    put(five, i, px, py, slope, pupilDistanceMm);
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
  };
}

/** Puts the ray through the pupil's point `x, y` into a bundle. */
function put(bundle: Rays, i: number, x: number, y: number, slope: number, pupilDistanceMm: number): void {
  const N = 1 / Math.sqrt(1 + slope * slope);
  bundle.x[i] = x;
  bundle.y[i] = y;
  bundle.z[i] = -pupilDistanceMm;
  bundle.L[i] = 0;
  bundle.M[i] = slope * N;
  bundle.N[i] = N;
  bundle.path[i] = slope * N * y;
}

/**
 * The pairs of a pattern of `frequency` lines per mm in the image. Two rays whose direction cosines
 * differ by wavelength times frequency interfere to make it: Hopkins's difference function (1957, from
 * memory), with the paths of real rays to the point where the beam's middle ray meets the paraxial focal
 * plane. Pairs of which a ray does not come through the lens count on neither side.
 *
 * @returns undefined where nothing overlaps
 */
export function pairsOf(colours: Colours, field: FieldBeam, middle: Middle, frequency: number, direction: Direction): Pairs | undefined {
  const most = colours.weights.length * MOST_POINTS;
  const [phase, rate, share] = [new Float64Array(most), new Float64Array(most), new Float64Array(most)];
  const bundle = rays(2 * MOST_POINTS);
  let count = 0;
  let perfect = 0;
  for (let c = 0; c < colours.weights.length; c++) {
    const lambda = colours.wavelengthsMm[c] as number;
    const shear = (lambda * frequency) / Math.abs(direction === 'sagittal' ? middle.across : middle.along);
    const overlap = overlapOf(field.region, shear, direction);
    if (overlap.count === 0) continue;
    const [dx, dy] = direction === 'sagittal' ? [shear / 2, 0] : [0, shear / 2];
    for (let i = 0; i < overlap.count; i++) {
      const [x, y] = [overlap.x[i] as number, overlap.y[i] as number];
      put(bundle, 2 * i, x + dx, y + dy, field.slope, field.pupilDistanceMm);
      put(bundle, 2 * i + 1, x - dx, y - dy, field.slope, field.pupilDistanceMm);
    }
    trace(colours.prescriptions[c] as Prescription, bundle);
    for (let i = 0; i < overlap.count; i++) {
      const [a, b] = [2 * i, 2 * i + 1];
      if (bundle.status[a] !== THROUGH || bundle.status[b] !== THROUGH) continue;
      const s = ((overlap.area[i] as number) / field.region.area) * (colours.weights[c] as number);
      phase[count] = (pathTo(bundle, a, middle.heightMm, colours.focusMm) - pathTo(bundle, b, middle.heightMm, colours.focusMm)) / lambda;
      // The image point moves along the middle ray: so the rays' own directions count as little as can be.
      rate[count] =
        ((bundle.N[a] as number) - (bundle.N[b] as number) + middle.slope * ((bundle.M[a] as number) - (bundle.M[b] as number))) / lambda;
      share[count] = s;
      perfect += s;
      count++;
    }
  }
  return perfect > 0 ? { count, phase, rate, share, perfect, real: direction === 'sagittal' } : undefined;
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
