import type { Tube } from '../threads/adapter.ts';
import type { Wanted } from './wanted.ts';

/** Tubes in a row, all of one thread. */
export interface Filling {
  readonly tubes: readonly Tube[];
  /** As long as they are set: the length wanted where focusing reaches it. */
  readonly lengthMm: number;
  readonly least: number;
  readonly most: number;
  readonly toBuy: number;
}

/** Lengths are told apart by this much, mm. */
const GRID = 0.1;
/** A run that is as near as this to what is wanted is as good as one that is exact, mm. */
export const GOOD_ENOUGH = 1;
/** Of two costs the second only decides between equals of the first. */
const MINOR = 1e-3;

interface Rows {
  /** What the cheapest row of this many grid steps costs; Infinity where none is as long. */
  costOf(steps: number): number;
  row(steps: number): readonly Tube[];
}

/** The cheapest row of plain tubes for every length up to one: what is owned once, what is bought as often as needed. */
function rowsUpTo(steps: number, tubes: readonly Tube[], costOf: (tube: Tube) => number): Rows {
  let costs = new Float64Array(steps + 1).fill(Number.POSITIVE_INFINITY);
  costs[0] = 0;
  /** For each tube, the lengths whose cheapest row so far ends with it. */
  const ends = tubes.map((tube) => {
    const step = Math.round(tube.lengthMm / GRID);
    const before = costs;
    const here = new Uint8Array(steps + 1);
    costs = before.slice();
    for (let i = step; i <= steps; i++) {
      const cost = ((tube.owned ? before : costs)[i - step] as number) + costOf(tube);
      if (cost < (costs[i] as number)) {
        costs[i] = cost;
        here[i] = 1;
      }
    }
    return { step, here };
  });
  return {
    costOf: (i) => costs[i] as number,
    row(i) {
      const found: Tube[] = [];
      let at = i;
      for (let item = tubes.length - 1; at > 0; ) {
        const { step, here } = ends[item] as (typeof ends)[number];
        const tube = tubes[item] as Tube;
        const is = here[at] === 1;
        if (is) {
          found.push(tube);
          at -= step;
        }
        // What can be bought may be there once more.
        if (!is || tube.owned) item--;
      }
      return found;
    },
  };
}

const sum = (tubes: readonly Tube[]): number => tubes.reduce((total, { lengthMm }) => total + lengthMm, 0);

/**
 * Tubes that are as long as wanted, fewest first among those that are near enough; a focusing tube among them where
 * the length is only known within an interval, so that turning it finds the focus.
 *
 * @param wanted value and the interval that it lies in
 * @param preferOwned fewest to buy before fewest tubes
 */
export function filling(
  tubes: readonly Tube[],
  { value, low, high, within = GOOD_ENOUGH }: Wanted,
  preferOwned = false,
): Filling | undefined {
  if (!(value >= -GOOD_ENOUGH)) return undefined;
  const costOf = ({ owned }: Tube): number => (preferOwned ? MINOR + (owned ? 0 : 1) : 1 + (owned ? 0 : MINOR));
  const plain = tubes.filter(({ reachMm }) => reachMm === 0);
  const longest = Math.max(0, ...plain.map(({ lengthMm }) => lengthMm));
  const steps = Math.ceil((Math.max(0, value) + longest) / GRID);
  const rows = rowsUpTo(steps, plain, costOf);
  // No tubes at all are a row too, and the first that is tried.
  let best: { i: number; one: Tube | undefined; rank: readonly number[] } = { i: 0, one: undefined, rank: [Number.POSITIVE_INFINITY] };
  for (const one of [undefined, ...tubes.filter(({ reachMm }) => reachMm > 0)]) {
    for (let i = 0; i <= steps; i++) {
      const cost = rows.costOf(i);
      if (cost === Number.POSITIVE_INFINITY) continue;
      const least = i * GRID + (one?.lengthMm ?? 0);
      const most = least + (one?.reachMm ?? 0);
      // How much of the interval is out of reach, beyond what is good enough.
      const missed = Math.round(Math.max(0, least - low - within, high - most - within) / GRID);
      const off = Math.abs(Math.min(most, Math.max(least, value)) - value);
      const rank = [missed, cost + (one ? costOf(one) : 0), off];
      if (before(rank, best.rank)) best = { i, one, rank };
    }
  }
  const all = [...rows.row(best.i), ...(best.one ? [best.one] : [])];
  const least = sum(all);
  const most = least + (best.one?.reachMm ?? 0);
  return { tubes: all, least, most, lengthMm: Math.min(most, Math.max(least, value)), toBuy: all.filter(({ owned }) => !owned).length };
}

function before(a: readonly number[], b: readonly number[]): boolean {
  for (const [i, value] of a.entries()) {
    const apart = value - (b[i] as number);
    if (Math.abs(apart) > 1e-9) return apart < 0;
  }
  return false;
}
