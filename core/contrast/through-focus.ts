import type { Pairs } from './pairs.ts';

/** Evenly spaced places of the focus, mm from the paraxial one. */
export interface FocusRange {
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

/**
 * Contrast at each place of the focus, relative to the same beam without aberrations. Where the phases
 * spread wider than the nodes follow next to nothing is left of it, and 0 is told: too few nodes would
 * come round to any value there.
 */
export function contrastThroughFocus(pairs: Pairs, range: FocusRange): Float64Array {
  const sums = pairs.real ? realSums(pairs, range) : moduli(pairs, range);
  const { focus, least, growth } = pairs.steady;
  for (let k = 0; k < range.count; k++) {
    const variance = least + growth * (range.from + k * range.step - focus) ** 2;
    sums[k] = variance > pairs.mostSpread ** 2 ? 0 : (sums[k] as number) / pairs.perfect;
  }
  return sums;
}

const TURN = 2 * Math.PI;

/** Of mirrored pairs the real part is left; below 0 the pattern is reversed, and that is no contrast. */
function realSums({ count: all, phase, rate, share }: Pairs, { from, step, count }: FocusRange): Float64Array {
  const sums = new Float64Array(count);
  for (let i = 0; i < all; i++) {
    const begin = TURN * ((phase[i] as number) + from * (rate[i] as number));
    const turn = TURN * step * (rate[i] as number);
    // A cosine from the two before it: cos(a + t) = 2 cos t cos a - cos(a - t). No cosine inside the loop.
    const twice = 2 * Math.cos(turn);
    let here = (share[i] as number) * Math.cos(begin);
    let before = (share[i] as number) * Math.cos(begin - turn);
    for (let k = 0; k < count; k++) {
      sums[k] = (sums[k] as number) + here;
      const next = twice * here - before;
      before = here;
      here = next;
    }
  }
  for (let k = 0; k < count; k++) sums[k] = Math.max(0, sums[k] as number);
  return sums;
}

function moduli({ count: all, phase, rate, share }: Pairs, { from, step, count }: FocusRange): Float64Array {
  const real = new Float64Array(count);
  const imaginary = new Float64Array(count);
  for (let i = 0; i < all; i++) {
    const begin = TURN * ((phase[i] as number) + from * (rate[i] as number));
    const turn = TURN * step * (rate[i] as number);
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    let re = (share[i] as number) * Math.cos(begin);
    let im = (share[i] as number) * Math.sin(begin);
    for (let k = 0; k < count; k++) {
      real[k] = (real[k] as number) + re;
      imaginary[k] = (imaginary[k] as number) + im;
      const next = re * c - im * s;
      im = re * s + im * c;
      re = next;
    }
  }
  for (let k = 0; k < count; k++) real[k] = Math.sqrt((real[k] as number) ** 2 + (imaginary[k] as number) ** 2);
  return real;
}

/** The same at one place. */
export const contrastAt = (pairs: Pairs, focus: number): number =>
  contrastThroughFocus(pairs, { from: focus, step: 0, count: 1 })[0] as number;

/**
 * The steadiest focus, and how far from there the variance has grown by as much as takes a fifth of the
 * contrast: for small aberrations contrast is `1 - 2π² variance` (Hopkins 1957, from memory).
 */
export const steadiest = ({ steady }: Pairs): { readonly focus: number; readonly reach: number } => ({
  focus: steady.focus,
  reach: Math.sqrt(0.2 / (2 * Math.PI ** 2 * steady.growth)),
});
