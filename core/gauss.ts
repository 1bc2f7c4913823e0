/** A rule of quadrature: a sum of the weights times a function at the nodes stands for its integral. */
export interface Rule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/**
 * Gauss's rule over `[low, high]`: exact for polynomials of degree below `2 count`. The nodes are the
 * zeros of the Legendre polynomial, by Newton's method from their asymptotic places (Abramowitz & Stegun
 * 25.4.29 and 22.16.6, from memory).
 */
export function gaussLegendre(count: number, low: number, high: number): Rule {
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  const half = (high - low) / 2;
  for (let i = 0; i < count; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let rate = 1;
    for (let turn = 0; turn < 12; turn++) {
      let before = 0;
      let here = 1;
      for (let k = 1; k <= count; k++) [before, here] = [here, ((2 * k - 1) * x * here - (k - 1) * before) / k];
      rate = (count * (x * here - before)) / (x * x - 1);
      const step = here / rate;
      x -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    nodes[i] = low + half * (1 - x);
    weights[i] = (2 * half) / ((1 - x * x) * rate * rate);
  }
  return { nodes, weights };
}
