import { describe, expect, it } from 'vitest';
import { adapterOf, type Piece } from '../../../../core/table/threads/adapter.ts';
import { shortestChain } from '../../../../core/table/threads/chain.ts';
import { filterThread } from '../../../../core/table/threads/known.ts';
import { stockOf } from '../../../../core/table/threads/stock.ts';
import type { End, Sex } from '../../../../core/table/threads/thread.ts';

/** A way that is dearer up to some end must not be given up where it alone has left what is needed from there on. */

const end = (mm: number, sex: Sex): End => ({ thread: filterThread(mm), sex });
const ring = (a: number, sexA: Sex, b: number, sexB: Sex, lengthMm: number): Piece => ({
  ...adapterOf({
    ends: [
      { thread: String(a), sex: sexA },
      { thread: String(b), sex: sexB },
    ],
    lengthMm,
    owned: true,
  }),
});

describe('a chain', () => {
  // From male 67 to male 49: the coupling with two female ends is needed last, from male 62; the nearer way there has used it.
  const coupling = ring(49, 'female', 62, 'female', 2);
  const nearer = [ring(67, 'female', 49, 'male', 2), ring(62, 'male', 62, 'male', 2)] as const;
  const found = (lengths: readonly [number, number, number]) => {
    const around = [ring(67, 'female', 55, 'male', lengths[0]), ring(55, 'female', 58, 'male', lengths[1])];
    around.push(ring(58, 'female', 62, 'male', lengths[2]));
    const chain = shortestChain(end(67, 'male'), end(49, 'male'), stockOf([coupling, ...nearer, ...around]));
    return { pieces: 'miss' in chain ? undefined : chain.links.map(({ piece }) => piece), wanted: [...around, coupling] };
  };

  it('goes the longer way round where the shorter has used what comes last, whichever was there first', () => {
    for (const lengths of [
      [5, 5, 5],
      [1, 1, 20],
      [1, 1, 2],
    ] as const) {
      const { pieces, wanted } = found(lengths);
      expect(pieces).toEqual(wanted);
    }
  });
});
