import { gaussLegendre } from '../gauss.ts';

/**
 * A wavefront over a round pupil, the same in every direction from its middle: its height, mm, where the share `u`
 * of the pupil's area lies inside (0 in the middle, 1 at the edge). Even by area, which is what images count.
 */
export type Wavefront = (u: number) => number;

/** What is left of a wavefront after the best piston and the best focus; every height in the unit of the wavefront. */
export interface Refocused {
  readonly rms: number;
  readonly peakToValley: number;
  /** Strehl ratio where one unit of the wavefront is `scale` waves: `|mean of exp(2πi W)|²` over the pupil, exact. */
  strehl(scale: number): number;
}

/** Exact for polynomials in `u` up to degree 39; an aperture within some per cent of its medium's index costs digits. */
const PUPIL = gaussLegendre(20, 0, 1);
const COUNT = PUPIL.nodes.length;
const weight = (i: number): number => PUPIL.weights[i] as number;
const ONES = new Float64Array(COUNT).fill(1);
/** Steps in which the highest and the lowest place are looked for. */
const STEPS = 16;

/** Mean over the pupil of the product of two functions at its nodes. */
function mean(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < COUNT; i++) sum += weight(i) * (a[i] as number) * (b[i] as number);
  return sum;
}

/** A function at the nodes, less its mean. */
function varying(of: Wavefront): Float64Array {
  const at = PUPIL.nodes.map(of);
  const middle = mean(at, ONES);
  for (let i = 0; i < COUNT; i++) at[i] = (at[i] as number) - middle;
  return at;
}

/**
 * Takes out of a wavefront the piston and as much of `focus` as leave the least rms over the pupil: least squares.
 *
 * @param focus what moving the stage, or the sensor, adds: `1 − cos θ` on that side
 */
export function refocused(wavefront: Wavefront, focus: Wavefront): Refocused {
  const left = varying(wavefront);
  const f = varying(focus);
  const slope = mean(left, f) / mean(f, f);
  for (let i = 0; i < COUNT; i++) left[i] = (left[i] as number) - slope * (f[i] as number);
  return {
    rms: Math.sqrt(mean(left, left)),
    get peakToValley() {
      const rest: Wavefront = (u) => wavefront(u) - slope * focus(u);
      return highest(rest) + highest((u) => -rest(u));
    },
    strehl(scale) {
      let [real, imaginary] = [0, 0];
      for (let i = 0; i < COUNT; i++) {
        const phase = 2 * Math.PI * scale * (left[i] as number);
        real += weight(i) * Math.cos(phase);
        imaginary += weight(i) * Math.sin(phase);
      }
      return Math.min(1, real * real + imaginary * imaginary);
    },
  };
}

/** The greatest value of a smooth function over `[low, high]`: the best of some steps, and again in finer ones about it. */
function highest(of: Wavefront, low = 0, high = 1, turns = 4): number {
  const step = (high - low) / STEPS;
  let [best, where] = [Number.NEGATIVE_INFINITY, low];
  for (let i = 0; i <= STEPS; i++) {
    const value = of(low + i * step);
    if (value > best) [best, where] = [value, low + i * step];
  }
  if (turns === 0) return best;
  return Math.max(best, highest(of, Math.max(low, where - step), Math.min(high, where + step), turns - 1));
}

/** Rms of a wavefront, in waves, that leaves a Strehl ratio: Maréchal's estimate, a good place to start from. */
export const rmsForStrehl = (ratio: number): number => Math.sqrt(-Math.log(ratio)) / (2 * Math.PI);

/** How much farther than the last place the next is looked at: not so far as to pass where the ratio rises again. */
const STRIDE = 1.25;
const MOST_LOOKS = 80;

/**
 * Where a Strehl ratio that falls from 1 at 0 has come down to `limit`, on the way from 0 to `end`; Infinity where it
 * has not. By secants of `√(−ln ratio)`, which is nearly a straight line, kept between a place that is sharp enough and
 * one that is not; as long as there is none such, outward.
 *
 * @param limit 0.4 or more: down to there spherical aberration only lowers the ratio
 */
export function whereStrehl(ratio: (x: number) => number, limit: number, estimate: number, end: number): number {
  const due = Math.sqrt(-Math.log(limit));
  let [sharp, soft] = [0, Number.POSITIVE_INFINITY];
  let [before, yBefore] = [0, 0];
  let x = Math.min(estimate, end);
  for (let look = 0; look < MOST_LOOKS; look++) {
    const y = Math.sqrt(-Math.log(ratio(x)));
    if (y < due) {
      if (x === end) return Number.POSITIVE_INFINITY;
      sharp = x;
    } else soft = x;
    const straight = x + ((due - y) * (x - before)) / (y - yBefore);
    const farthest = Math.min(soft, STRIDE * x, end);
    const next = straight > sharp && straight <= farthest ? straight : soft < Number.POSITIVE_INFINITY ? (sharp + soft) / 2 : farthest;
    if (Math.abs(next - x) <= 1e-13 * x) return next;
    [before, yBefore, x] = [x, y, next];
  }
  return x;
}

/** The scale, waves per unit of the wavefront, at which the Strehl ratio has first fallen to `limit`. */
export function scaleAtStrehl(wavefront: Refocused, limit: number): number {
  const estimate = rmsForStrehl(limit) / wavefront.rms;
  return Number.isFinite(estimate) ? whereStrehl(wavefront.strehl, limit, estimate, Number.MAX_VALUE) : Number.POSITIVE_INFINITY;
}
