import type { Input } from '../../../../core/pairing/input.ts';
import type { Bench, Doubts } from '../../../../core/table/saw/bench.ts';
import type { Reading } from '../../../../core/table/saw/readings.ts';
import type { Unknown } from '../../../../core/table/saw/unknowns.ts';

/** A reading of which a plain function of the unknowns foretells the value. */
export interface Made {
  readonly value: number;
  readonly plusMinus: number;
  readonly place?: number;
  of(...xs: readonly number[]): number;
  doubts?(...xs: readonly number[]): Partial<Doubts>;
}

/** Readings without a rig: what is solved backward is known by hand. */
export function madeBench(made: readonly Made[], unknowns = 1, { ratio = false, shared = [] as string[] } = {}): Bench {
  return {
    readings: made.map(
      ({ value, plusMinus, place }, i) =>
        ({ value, plusMinus, place: place ?? i, own: [], stood: [], shown: (x: number) => x }) as unknown as Reading,
    ),
    unknowns: Array.from({ length: unknowns }, () => ({ ratio }) as Unknown),
    shared: shared.map((path) => ({ path }) as Input),
    spaces: [],
    foretold: (i, xs) => (made[i] as Made).of(...xs),
    missing: () => [],
    asTheyStand: () => [],
    doubts: (i, xs) => ({ own: [], shared: shared.map(() => 0), ...(made[i] as Made).doubts?.(...xs) }),
  };
}

/** A half-width in standard uncertainties: evenly spread, a/√3. */
export const ROOT_3 = Math.sqrt(3);
