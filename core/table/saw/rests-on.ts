import type { Bench, Doubts } from './bench.ts';
import type { Found, Solved } from './found.ts';
import { dot } from './matrix.ts';
import { gainOf, slopesAt } from './weigh.ts';

/** An input, and what it makes of a variance. */
export interface Share {
  readonly path: string;
  readonly share: number;
}

/** Shares of the variance of unknown `k` that come from the pairing's own inputs. */
export function restsOn(bench: Bench, { covariance, ways }: Solved, xs: readonly number[], k: number): Share[] {
  const steps = (ways[0] as readonly Found[]).map(({ low, high }) => Math.max((high - low) / 20, 1e-9));
  const gain = gainOf(covariance.inverse, slopesAt(bench, xs, steps))?.[k];
  if (!gain) return [];
  const parts = bench.shared.map((input, s) => ({
    path: input.path,
    square:
      dot(
        gain,
        covariance.doubts.map(({ shared }) => shared[s] as number),
      ) ** 2,
  }));
  const own = bench.readings.reduce((sum, { plusMinus }, i) => {
    const { own } = covariance.doubts[i] as Doubts;
    return sum + (gain[i] as number) ** 2 * (plusMinus ** 2 + dot(own, own));
  }, 0);
  const whole = own + parts.reduce((sum, { square }) => sum + square, 0);
  return parts
    .map(({ path, square }) => ({ path, share: square / whole }))
    .filter(({ share }) => share > 1e-3)
    .toSorted((a, b) => b.share - a.share);
}
