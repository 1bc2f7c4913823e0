import type { Pairs } from './pairs.ts';

/** Evenly spaced places of the focus, mm from the paraxial one. */
export interface FocusRange {
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

/** Contrast at each place of the focus, relative to the same beam without aberrations. */
export function contrastThroughFocus(pairs: Pairs, { from, step, count }: FocusRange): Float64Array {
  const out = new Float64Array(count);
  const imaginary = new Float64Array(count);
  const turn = 2 * Math.PI;
  for (let i = 0; i < pairs.count; i++) {
    const rate = pairs.rate[i] as number;
    const share = pairs.share[i] as number;
    const begin = turn * ((pairs.phase[i] as number) + from * rate);
    const [stepRe, stepIm] = [Math.cos(turn * step * rate), Math.sin(turn * step * rate)];
    // A phasor a pair, turned from one place to the next: no cosine inside the loop.
    let re = share * Math.cos(begin);
    let im = share * Math.sin(begin);
    for (let k = 0; k < count; k++) {
      out[k] = (out[k] as number) + re;
      imaginary[k] = (imaginary[k] as number) + im;
      const next = re * stepRe - im * stepIm;
      im = re * stepIm + im * stepRe;
      re = next;
    }
  }
  for (let k = 0; k < count; k++) {
    const [re, im] = [out[k] as number, imaginary[k] as number];
    // Of mirrored pairs the real part is left; below 0 the pattern is reversed, and that is no contrast.
    out[k] = (pairs.real ? Math.max(0, re) : Math.sqrt(re * re + im * im)) / pairs.perfect;
  }
  return out;
}

/** The same at one place. */
export const contrastAt = (pairs: Pairs, focus: number): number =>
  contrastThroughFocus(pairs, { from: focus, step: 0, count: 1 })[0] as number;

/**
 * Where the variance of the pairs' phases is least, and how far from there it has grown by as much as
 * halves nothing but takes a fifth of the contrast: for small aberrations contrast is
 * `1 - 2π² variance` (Hopkins 1957, from memory). mm from the paraxial focus.
 */
export function steadiest(pairs: Pairs): { readonly focus: number; readonly reach: number } {
  let [w, a, b, ab, bb] = [0, 0, 0, 0, 0];
  for (let i = 0; i < pairs.count; i++) {
    const [share, phase, rate] = [pairs.share[i] as number, pairs.phase[i] as number, pairs.rate[i] as number];
    w += share;
    a += share * phase;
    b += share * rate;
    ab += share * phase * rate;
    bb += share * rate * rate;
  }
  // Mirrored pairs have the opposite sign of both where only half of the pairs is listed.
  const mean = pairs.real ? 0 : 1;
  const covariance = ab / w - (mean * a * b) / (w * w);
  const variance = bb / w - (mean * b * b) / (w * w);
  return { focus: -covariance / variance, reach: Math.sqrt(0.2 / (2 * Math.PI ** 2 * variance)) };
}
