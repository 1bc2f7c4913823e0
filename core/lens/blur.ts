import type { Setting } from '../contrast/field.ts';
import { overlapOf, type Region, regionOf } from '../contrast/region.ts';
import type { Discs } from '../pupil/discs.ts';
import { launch, type PupilPoints, start } from '../trace/beam.ts';
import { oneFrame, type Parabola, parabola, valueAt } from '../trace/focus.ts';
import { ringsAndSpokes } from '../trace/points.ts';
import type { Prescription } from '../trace/prescription.ts';
import { type Rays, rays, THROUGH, trace } from '../trace/rays.ts';
import { meanAt, type Spot, spot } from '../trace/spot.ts';
import { through } from '../trace/through.ts';
import { UM_PER_MM } from '../units.ts';

/** Exact for spots of rays whose places go up to the fifth power of the aperture, and nearly so beyond. */
const POINTS: PupilPoints = ringsAndSpokes(6, 12);

/** A field point's beam as it arrives: its rays behind the lens, and what each counts (0 where it is stopped), adding up to 1. */
export interface Arrived {
  readonly bundle: Rays;
  readonly weights: Float64Array;
}

/** What arrives of a beam through `points` of the narrowest stop; undefined where nothing does. */
export function arrived(
  lens: Prescription,
  points: PupilPoints,
  discs: Discs,
  pupilDistanceMm: number,
  slope: number,
): Arrived | undefined {
  const pupilRadiusMm = Math.min(...discs.radius);
  // A narrowest stop away from the pupil is seen from there off its middle.
  const middle = (discs.walk[discs.radius.indexOf(pupilRadiusMm)] as number) * slope;
  const bundle = rays(points.count);
  for (let i = 0; i < points.count; i++)
    start(bundle, i, pupilRadiusMm * (points.x[i] as number), middle + pupilRadiusMm * (points.y[i] as number), slope, pupilDistanceMm);
  trace(lens, bundle);
  const weights = new Float64Array(points.count);
  let whole = 0;
  for (let i = 0; i < points.count; i++) {
    if (bundle.status[i] !== THROUGH) continue;
    if (!inside(discs, slope, pupilRadiusMm * (points.x[i] as number), middle + pupilRadiusMm * (points.y[i] as number))) continue;
    weights[i] = points.share[i] as number;
    whole += points.share[i] as number;
  }
  if (whole === 0) return undefined;
  for (let i = 0; i < points.count; i++) weights[i] = (weights[i] as number) / whole;
  return { bundle, weights };
}

/** A wavelength's spot and its share of the light. */
type Weighed = Spot & { readonly weight: number };

/** The spot of each wavelength of which anything arrives. */
export function spotsOf({ colours, discs, pupilDistanceMm }: Setting, slope: number): Weighed[] {
  const region = regionOf(discs, slope);
  if (!region) return [];
  const points = pointsOf(discs, slope, region);
  return colours.prescriptions.flatMap((lens, c) => {
    const bundle = launch(rays(points.count), points, { pupilRadiusMm: 1, pupilDistanceMm, slope });
    trace(lens, bundle);
    const came = through(bundle, points);
    return came.rays === 0 ? [] : { ...spot(bundle, came.weights, colours.focusMm), weight: colours.weights[c] as number };
  });
}

/**
 * Points of what the stops leave of the pupil, mm: rings and spokes of a whole disc, else along its chords, both sides
 * of the axis. What each counts is in proportion only: `through` makes shares of it.
 */
function pointsOf({ walk, radius }: Discs, slope: number, region: Region): PupilPoints {
  const narrowest = radius.indexOf(Math.min(...radius));
  const [r, middle] = [radius[narrowest] as number, (walk[narrowest] as number) * slope];
  const whole = radius.every((other, i) => Math.abs((walk[i] as number) * slope - middle) + r <= other * (1 + 1e-12));
  if (whole) return { ...POINTS, x: POINTS.x.map((x) => r * x), y: POINTS.y.map((y) => middle + r * y) };
  const { count, x, y, area } = overlapOf(region, 0, 'tangential');
  const both = (half: Float64Array, sign: 1 | -1): Float64Array => Float64Array.of(...half, ...half.map((v) => sign * v));
  return { count: 2 * count, x: both(x, -1), y: both(y, 1), share: both(area, 1) };
}

/**
 * Mean square blur of one field point on every plane about the middle of all its light, mm²: each
 * wavelength's own spot, and how far its middle is from the common one. Undefined where nothing arrives.
 */
export function blurOf(setting: Setting, slope: number): Parabola | undefined {
  const near = setting.colours.focusMm;
  const spots = spotsOf(setting, slope);
  const whole = spots.reduce((sum, { weight }) => sum + weight, 0);
  if (whole === 0) return undefined;
  const mean = (of: (s: (typeof spots)[number]) => number): number => spots.reduce((sum, s) => sum + s.weight * of(s), 0) / whole;
  const middle = mean((s) => meanAt(s.tangential, near));
  const drift = mean((s) => s.tangential.slope);
  // A spot's own parabola and the square of a straight line add up to a parabola again.
  return parabola(
    mean((s) => valueAt(s.square, near) + (meanAt(s.tangential, near) - middle) ** 2),
    mean((s) => s.square.rate * (near - s.square.at) + (meanAt(s.tangential, near) - middle) * (s.tangential.slope - drift)),
    mean((s) => s.square.rate + (s.tangential.slope - drift) ** 2),
    near,
  );
}

/** Whether all stops let the pupil's point through. */
function inside({ walk, radius }: Discs, slope: number, x: number, y: number): boolean {
  for (let i = 0; i < walk.length; i++) {
    const dy = y - (walk[i] as number) * slope;
    const r = radius[i] as number;
    if (x * x + dy * dy > r * r * (1 + 1e-12)) return false;
  }
  return true;
}

/** Worst rms blur over field points, µm: on the one plane that serves them best, in mm behind the last vertex, and each at its own. */
export function worstBlur(squares: readonly Parabola[]): { planeMm: number; oneFrameUm: number; stackUm: number } | undefined {
  const plane = oneFrame(squares);
  if (plane === undefined) return undefined;
  return {
    planeMm: plane,
    oneFrameUm: UM_PER_MM * Math.sqrt(Math.max(...squares.map((s) => valueAt(s, plane)))),
    stackUm: UM_PER_MM * Math.sqrt(Math.max(...squares.map((s) => s.least))),
  };
}
