import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A seeded source of even draws: the same seed gives the same run. */
export interface Random {
  between(low: number, high: number): number;
  integer(low: number, high: number): number;
  oneOf<T>(items: readonly T[]): T;
  chance(p: number): boolean;
}

export function random(seed: number): Random {
  const source = xoroshiro128plus(seed);
  const between = (low: number, high: number): number => low + (high - low) * uniformFloat64(source);
  const integer = (low: number, high: number): number => uniformInt(source, low, high);
  return {
    between,
    integer,
    oneOf: (items) => items[integer(0, items.length - 1)] as (typeof items)[number],
    chance: (p) => between(0, 1) < p,
  };
}
