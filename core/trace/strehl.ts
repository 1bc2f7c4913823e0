import type { PupilPoints } from './beam.ts';

/** Below this a coordinate's mean square over the part of the pupil that comes through is rounding, not width. */
const NO_WIDTH = 1e-20;

/**
 * Takes mean and tilt, by least squares weighted by area, out of a wavefront in waves, in place; hands back
 * what is left as an rms by area, in waves.
 * @param weights what each ray counts, adding up to 1 (`through`)
 */
export function withoutTilt(waves: Float64Array, points: PupilPoints, weights: Float64Array): number {
  const mean = (a: Float64Array, b: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < a.length; i++) sum += (weights[i] as number) * (a[i] as number) * (b[i] as number);
    return sum;
  };
  // Gram and Schmidt: each direction is made free of those before it, so that one without width does no harm.
  const free: Float64Array[] = [];
  for (const direction of [points.share.map(() => 1), points.y.slice(), points.x.slice(), waves]) {
    for (const other of free) {
      const k = mean(direction, other) / mean(other, other);
      for (let i = 0; i < direction.length; i++) direction[i] = (direction[i] as number) - k * (other[i] as number);
    }
    if (mean(direction, direction) > NO_WIDTH) free.push(direction);
  }
  return Math.sqrt(mean(waves, waves));
}

/**
 * Strehl ratio of a wavefront in waves: how high the middle of its diffraction image stands beside that of
 * a perfect one through the same part of the pupil, `|mean of exp(2πi W)|²` by area, 0 to 1 (by its
 * definition). A tilt, which only moves the image, counts against it here: take it out first.
 */
export function strehl(waves: Float64Array, weights: Float64Array): number {
  let real = 0;
  let imaginary = 0;
  for (let i = 0; i < waves.length; i++) {
    const phase = 2 * Math.PI * (waves[i] as number);
    real += (weights[i] as number) * Math.cos(phase);
    imaginary += (weights[i] as number) * Math.sin(phase);
  }
  // Rounding may leave a perfect one a digit above 1.
  return Math.min(1, real * real + imaginary * imaginary);
}
