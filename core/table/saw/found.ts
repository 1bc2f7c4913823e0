import type { Bench } from './bench.ts';
import type { Covariance, Standing } from './weigh.ts';

/** A value of one unknown with the ends of its 95 %. */
export interface Found {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Whether the readings leave it open below, above. */
  readonly open: readonly [below: boolean, above: boolean];
}

export interface Solved {
  /** For each way in which the readings can be met, the likelier first: every unknown's value. */
  readonly ways: readonly (readonly Found[])[];
  readonly chiSquare: number;
  /** Readings less unknowns. */
  readonly freedom: number;
  /** By so much the ± are widened: 1 where the readings agree. */
  readonly birge: number;
  readonly standings: readonly Standing[];
  readonly covariance: Covariance;
}

/** No values of the unknowns come near a reading: the least and greatest that the pairing could give of each. */
export interface Unmet {
  readonly spans: readonly { readonly place: number; readonly least: number; readonly greatest: number }[];
}

export type Outcome = { readonly solved: Solved; readonly unmet?: undefined } | { readonly unmet: Unmet; readonly solved?: undefined };

/** Values that are looked through, evenly in the unknown or in its logarithm. */
export interface Axis {
  readonly from: number;
  readonly to: number;
  at(x: number): number;
  of(value: number): number;
}

export const axis = (ratio: boolean, [least, greatest]: readonly [number, number]): Axis =>
  ratio
    ? { from: Math.log(least), to: Math.log(greatest), at: Math.exp, of: Math.log }
    : { from: least, to: greatest, at: (x) => x, of: (x) => x };

export const along = ({ from, to }: Axis, count: number): number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));

/** What each reading could be at all, over the places that were looked through. */
export function spansOf({ readings }: Bench, rows: readonly (readonly number[])[]): Unmet['spans'] {
  return readings.map(({ place, shown }, i) => {
    const seen = rows.map((row) => shown(row[i] as number)).filter((x) => !Number.isNaN(x));
    return { place, least: Math.min(...seen), greatest: Math.max(...seen) };
  });
}
