import { gaussLegendre } from '../../../core/gauss.ts';
import { LINES } from '../../../core/glass/lines.ts';
import type { Job } from '../../../core/lens/made/job.ts';
import { beam } from '../../../core/trace/beam.ts';
import { cardinal } from '../../../core/trace/cardinal.ts';
import type { Lens } from '../../../core/trace/lens.ts';
import { ringsAndSpokes } from '../../../core/trace/points.ts';
import { type Prescription, prescription } from '../../../core/trace/prescription.ts';
import { trace } from '../../../core/trace/rays.ts';

export const seenIn = (lens: Lens, line: keyof typeof LINES): Prescription => prescription(lens, LINES[line]);
export const focusIn = (lens: Lens, line: keyof typeof LINES): number => cardinal(seenIn(lens, line)).backFocalLengthMm;

const POINTS = ringsAndSpokes(6, 12);

/** Mean square distance from the centroid on a plane behind the last vertex, mm², by the rays' own points there. */
function squareAt(lens: Prescription, stopMm: number, radiusMm: number, slope: number): (z: number) => number {
  const bundle = beam(POINTS, { pupilRadiusMm: radiusMm, pupilDistanceMm: stopMm, slope });
  trace(lens, bundle);
  return (z) => {
    const at = [bundle.x, bundle.y].map((place, axis) =>
      Array.from(place, (p, i) => {
        const cosine = (axis === 0 ? bundle.L : bundle.M)[i] as number;
        return p + ((z - (bundle.z[i] as number)) * cosine) / (bundle.N[i] as number);
      }),
    );
    const mean = (values: readonly number[]): number => values.reduce((sum, v, i) => sum + v * (POINTS.share[i] as number), 0);
    return at.reduce((sum, values) => sum + mean(values.map((v) => v * v)) - mean(values) ** 2, 0);
  };
}

/** The least of a parabola through three of its values: nothing is known of the planes but that they are flat. */
function leastOf(square: (z: number) => number, near: number): { z: number; value: number } {
  const [a, b, c] = [square(near - 1), square(near), square(near + 1)];
  const z = near + (0.5 * (a - c)) / (a - 2 * b + c);
  return { z, value: square(z) };
}

/**
 * A job's rms blurs, µm, with five fields and many rays, by another route than the lens was bent with: over
 * the pictures, the largest of the same places on their planes, and in the middle at its own best focus.
 */
export function blursAtJob(lens: Lens, { stopsMm, stopRadiusMm, cornerSlope }: Job): { picture: number; worst: number; middle: number } {
  const inYellow = seenIn(lens, 'd');
  const near = cardinal(inYellow).backFocalLengthMm;
  const field = gaussLegendre(5, 0, 1);
  const pictures = stopsMm.map((stopMm) => {
    const at = (part: number) => squareAt(inYellow, stopMm, stopRadiusMm, cornerSlope * part);
    const squares = Array.from(field.nodes, (part) => at(Math.sqrt(part)));
    const { z, value } = leastOf((z) => squares.reduce((sum, square, i) => sum + (field.weights[i] as number) * square(z), 0), near);
    return { value, worst: Math.max(...[0, 0.25, 0.5, 0.75, 1].map((part) => at(part)(z))), middle: leastOf(at(0), near).value };
  });
  const rms = (square: number): number => 1000 * Math.sqrt(square);
  return {
    picture: rms(pictures.reduce((sum, p) => sum + p.value, 0) / pictures.length),
    worst: rms(Math.max(...pictures.map((p) => p.worst))),
    middle: rms(pictures[0]?.middle as number),
  };
}

/** Worst rms blur of full frame's diagonal behind a pupil of 11.2 mm, µm, on the flat plane that serves it best. */
export function worstAsRelay(lens: Lens, pupilDistanceMm: number): number {
  const inYellow = seenIn(lens, 'd');
  const { effectiveFocalLengthMm: f, backFocalLengthMm: near } = cardinal(inYellow);
  const squares = [0, 0.25, 0.5, 0.75, 1].map((part) => squareAt(inYellow, pupilDistanceMm, 5.6, (part * 21.63) / f));
  const worst = (z: number): number => Math.max(...squares.map((square) => square(z)));
  // The largest of parabolas that open upward is convex.
  let [low, high] = [near - 10, near + 10];
  for (let turn = 0; turn < 40; turn++) {
    const [left, right] = [low + (high - low) * 0.382, low + (high - low) * 0.618];
    if (worst(left) < worst(right)) high = right;
    else low = left;
  }
  return 1000 * Math.sqrt(worst((low + high) / 2));
}
