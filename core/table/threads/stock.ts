import type { Piece } from './adapter.ts';
import { type End, endKey } from './thread.ts';

/** One way in which pieces that are alike can be put on. */
export interface Way {
  /** The shortest first, of equals the one told first: which of them is free is all that counts. */
  readonly alike: readonly Placed[];
  readonly front: End;
  readonly rear: End;
  readonly rearKey: string;
  readonly turned: 0 | 1;
}

interface Placed {
  readonly piece: Piece;
  readonly place: number;
}

/** Pieces to make chains of, by the end that they are put on with. */
export interface Stock {
  readonly pieces: readonly Piece[];
  readonly byFront: ReadonlyMap<string, readonly Way[]>;
}

export function stockOf(pieces: readonly Piece[]): Stock {
  const kinds = new Map<string, Placed[]>();
  for (const [place, piece] of pieces.entries()) {
    const key = `${piece.ends.map(endKey).sort().join(' ')} ${piece.owned}`;
    kinds.set(key, [...(kinds.get(key) ?? []), { piece, place }]);
  }
  const byFront = new Map<string, Way[]>();
  for (const alike of kinds.values()) {
    alike.sort((a, b) => a.piece.lengthMm - b.piece.lengthMm);
    const [a, b] = (alike[0] as Placed).piece.ends;
    const ways: readonly (readonly [End, End])[] =
      endKey(a) === endKey(b)
        ? [[a, b]]
        : [
            [a, b],
            [b, a],
          ];
    ways.forEach(([front, rear], i) => {
      const way: Way = { alike, front, rear, rearKey: endKey(rear), turned: i === 0 ? 0 : 1 };
      byFront.set(endKey(front), [...(byFront.get(endKey(front)) ?? []), way]);
    });
  }
  return { pieces, byFront };
}
