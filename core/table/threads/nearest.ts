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

/** Where two ends come nearest to meeting, and the ring that would close it. */
export function nearest(from: End, to: End, pieces: readonly Piece[]): NoChain {
  const fronts = reachable(from, pieces);
  const rears = reachable(to, pieces);
  let best: { miss: Miss; a: End; b: End } | undefined;
  for (const a of fronts)
    for (const b of rears) {
      const miss = missOf(a, b);
      if (miss && (!best || miss.rank < best.miss.rank)) best = { miss, a, b };
    }
  // Ends that can each be reached and mate, but not with what is in the box at once.
  if (!best) return { miss: 'every piece that would do is used already', wouldDo: ringFor(from, to), gap: [from, to], near: true };
  const own = missOf(from, to) as Miss;
  const gap: readonly [End, End] = own.rank <= best.miss.rank ? [from, to] : [best.a, best.b];
  return {
    miss: `nothing joins ${endWords(from)} and ${endWords(to)}${best.miss.kind === 'unlike' ? '' : `: ${best.miss.words()}`}`,
    wouldDo: ringFor(...gap),
    gap,
    near: best.miss.kind !== 'unlike',
  };
}
