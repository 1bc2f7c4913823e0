import type { Piece } from './adapter.ts';
import { type Miss, missOf, ringFor } from './miss.ts';
import { type End, endKey, endWords, mates } from './thread.ts';

/** Why nothing joins two ends, where it comes nearest, and what would. */
export interface NoChain {
  readonly miss: string;
  readonly wouldDo: string;
  /** The ends that `wouldDo` goes between, free from either side. */
  readonly gap: readonly [End, End];
  /** Whether those ends are nearly alike; where they are not, any others would do as well. */
  readonly near: boolean;
}

/** Every kind of end that can be made to stand free, beginning from one. */
export function reachable(from: End, pieces: readonly Piece[]): readonly End[] {
  const found = new Map([[endKey(from), from]]);
  for (const end of found.values())
    for (const { ends } of pieces)
      for (const i of [0, 1] as const) {
        const rear = ends[1 - i] as End;
        if (mates(end, ends[i]) && !found.has(endKey(rear))) found.set(endKey(rear), rear);
      }
  return [...found.values()];
}

/** Where two ends that do not mate come nearest to it, and the ring that would close it. */
export function nearest(from: End, to: End, pieces: readonly Piece[]): NoChain {
  const rears = reachable(to, pieces);
  let best = { miss: missOf(from, to) as Miss, a: from, b: to };
  for (const a of reachable(from, pieces))
    for (const b of rears) {
      const miss = missOf(a, b);
      if (miss && miss.rank < best.miss.rank) best = { miss, a, b };
    }
  return {
    miss: `nothing joins ${endWords(from)} and ${endWords(to)}${best.miss.kind === 'unlike' ? '' : `: ${best.miss.words()}`}`,
    wouldDo: ringFor(best.a, best.b),
    gap: [best.a, best.b],
    near: best.miss.kind !== 'unlike',
  };
}
