/** Variance of the pairs' phases through focus, waves²: `least + growth (focus - steadiest focus)²`. */
export interface Steady {
  readonly focus: number;
  readonly least: number;
  readonly growth: number;
}

/** Waves, waves per mm of focus, and shares of the light: one of each for a pair of rays. */
interface Phased {
  readonly phase: Float64Array;
  readonly rate: Float64Array;
  readonly share: Float64Array;
}

/**
 * The mean square of the phases about their mean over the places of the focus: a parabola.
 *
 * @param real whether half of each mirrored set of pairs is listed, for all of it
 */
export function steadyOf({ phase, rate, share }: Phased, count: number, real: boolean): Steady {
  let [w, a, b, aa, ab, bb] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < count; i++) {
    const [s, p, r] = [share[i] as number, phase[i] as number, rate[i] as number];
    w += s;
    a += s * p;
    b += s * r;
    aa += s * p * p;
    ab += s * p * r;
    bb += s * r * r;
  }
  // Of mirrored pairs, of which half is listed, the other half has the opposite sign: their mean is 0.
  const [p, r] = real ? [0, 0] : [a / w, b / w];
  const [variance, covariance, slope] = [aa / w - p * p, ab / w - p * r, bb / w - r * r];
  return { focus: -covariance / slope, least: Math.max(0, variance - (covariance * covariance) / slope), growth: slope };
}
