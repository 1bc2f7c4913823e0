import type { Discs } from '../pupil/discs.ts';
import { launch, type PupilPoints } from '../trace/beam.ts';
import { oneFrame, type Parabola, valueAt } from '../trace/focus.ts';
import { ringsAndSpokes } from '../trace/points.ts';
import type { Prescription } from '../trace/prescription.ts';
import { type Rays, rays, THROUGH, trace } from '../trace/rays.ts';
import { spot } from '../trace/spot.ts';
import { UM_PER_MM } from '../units.ts';

/** Exact for spots of surfaces up to the fifteenth power of the aperture. */
const POINTS: PupilPoints = ringsAndSpokes(8, 16);

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
  const bundle = launch(rays(points.count), points, { pupilRadiusMm, pupilDistanceMm, slope });
  // A narrowest stop away from the pupil is seen from there off its middle.
  const middle = (discs.walk[discs.radius.indexOf(pupilRadiusMm)] as number) * slope;
  for (let i = 0; i < points.count; i++) {
    bundle.y[i] = (bundle.y[i] as number) + middle;
    bundle.path[i] = (bundle.path[i] as number) + (bundle.M[i] as number) * middle;
  }
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

/** Mean square blur of one field point on every plane, mm²; undefined where no ray comes through. */
export function blurOf(lens: Prescription, discs: Discs, pupilDistanceMm: number, slope: number, nearMm: number): Parabola | undefined {
  const beam = arrived(lens, POINTS, discs, pupilDistanceMm, slope);
  return beam && spot(beam.bundle, beam.weights, nearMm).square;
}

/** Whether all stops let the pupil's point through. */
export function inside({ walk, radius }: Discs, slope: number, x: number, y: number): boolean {
  for (let i = 0; i < walk.length; i++) {
    const dy = y - (walk[i] as number) * slope;
    const r = radius[i] as number;
    if (x * x + dy * dy > r * r * (1 + 1e-12)) return false;
  }
  return true;
}

/** Worst rms blur over field points, µm: on the one plane that serves them best, and each at its own. */
export function worstBlur(squares: readonly Parabola[]): { oneFrameUm: number; stackUm: number } | undefined {
  const plane = oneFrame(squares);
  if (plane === undefined) return undefined;
  return {
    oneFrameUm: UM_PER_MM * Math.sqrt(Math.max(...squares.map((s) => valueAt(s, plane)))),
    stackUm: UM_PER_MM * Math.sqrt(Math.max(...squares.map((s) => s.least))),
  };
}
