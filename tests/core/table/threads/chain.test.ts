import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adapterOf, COMMON_RINGS, type Piece } from '../../../../core/table/threads/adapter.ts';
import { type Chain, MOST_LINKS, shortestChain } from '../../../../core/table/threads/chain.ts';
import { filterThread, M25, M26, M32, M42, RMS } from '../../../../core/table/threads/known.ts';
import { stockOf } from '../../../../core/table/threads/stock.ts';
import type { End, Sex, Thread } from '../../../../core/table/threads/thread.ts';
import { anyEnd, anyRing } from './arbitrary-ends.ts';

const RUNS = Number(process.env.RUNS ?? 250);
const end = (thread: Thread, sex: Sex): End => ({ thread, sex });

/** Written again from the words: one goes into the other, and every nominal measure is the same to a thousandth of a millimetre. */
const screwsOn = (a: End, b: End): boolean =>
  new Set([a.sex, b.sex]).size === 2 &&
  Math.round(1000 * a.thread.diameterMm) === Math.round(1000 * b.thread.diameterMm) &&
  Math.round(1000 * a.thread.pitchMm) === Math.round(1000 * b.thread.pitchMm) &&
  a.thread.angleDeg === b.thread.angleDeg;

type Cost = [first: number, second: number, tenths: number];

/**
 * Every path there is, down to so many pieces: in any order and either way round, what is owned once, what is
 * bought again and again.
 */
function bruteForce(from: End, to: End, pieces: readonly Piece[], preferOwned: boolean, deepest: number): Cost | undefined {
  let best: Cost | undefined;
  const less = (a: Cost, b: Cost): boolean => {
    const i = a.findIndex((x, j) => x !== b[j]);
    return i >= 0 && (a[i] as number) < (b[i] as number);
  };
  const walk = (at: End, used: ReadonlySet<number>, count: number, buys: number, tenths: number): void => {
    if (screwsOn(at, to)) {
      const cost: Cost = preferOwned ? [buys, count, tenths] : [count, buys, tenths];
      if (!best || less(cost, best)) best = cost;
    }
    if (count === deepest) return;
    pieces.forEach(({ ends: [a, b], owned, lengthMm }, i) => {
      if (used.has(i)) return;
      const left = owned ? new Set([...used, i]) : used;
      const more = [left, count + 1, buys + (owned ? 0 : 1), tenths + Math.round(10 * lengthMm)] as const;
      if (screwsOn(at, a)) walk(b, ...more);
      if (screwsOn(at, b)) walk(a, ...more);
    });
  };
  walk(from, new Set(), 0, 0, 0);
  return best;
}

const costOf = ({ links, toBuy, lengthMm }: Chain, preferOwned: boolean): Cost => {
  const tenths = Math.round(10 * lengthMm);
  return preferOwned ? [toBuy, links.length, tenths] : [links.length, toBuy, tenths];
};

/** That every joint of a chain, the first and the last included, is one that screws. */
function expectScrewed(from: End, to: End, { links, lengthMm, toBuy }: Chain): void {
  let at = from;
  for (const { piece, front, rear } of links) {
    expect(screwsOn(at, front)).toBe(true);
    expect([...piece.ends].map((e) => `${e.sex} ${e.thread.label}`).sort()).toEqual(
      [front, rear].map((e) => `${e.sex} ${e.thread.label}`).sort(),
    );
    at = rear;
  }
  expect(screwsOn(at, to)).toBe(true);
  expect(lengthMm).toBeCloseTo(
    links.reduce((sum, { piece }) => sum + piece.lengthMm, 0),
    9,
  );
  expect(toBuy).toBe(links.filter(({ piece }) => !piece.owned).length);
  const owned = links.map(({ piece }) => piece).filter((piece) => piece.owned);
  expect(new Set(owned).size).toBe(owned.length);
}

describe('the shortest chain', () => {
  it('is as short as the best of all paths, and there where any is, on random rings', () => {
    let joined = 0;
    let apart = 0;
    fc.assert(
      fc.property(anyEnd, anyEnd, fc.array(anyRing, { maxLength: 7 }), fc.boolean(), (from, to, rings, preferOwned) => {
        const found = shortestChain(from, to, stockOf(rings), { preferOwned });
        // Seven rings seldom need more than five of them.
        const best = bruteForce(from, to, rings, preferOwned, Math.min(MOST_LINKS, 5));
        if ('miss' in found) {
          apart++;
          expect(best).toBeUndefined();
          expect(found.wouldDo).toMatch(/ring with/);
        } else if (best || found.links.length <= 5) {
          joined++;
          expect(costOf(found, preferOwned)).toEqual(best);
          expectScrewed(from, to, found);
        }
      }),
      { numRuns: RUNS, seed: 71_001 },
    );
    expect(apart).toBeGreaterThan(RUNS / 10);
    expect(joined).toBeGreaterThan(RUNS / 20);
  });

  it('is the best on rings that hang together, where chains are long', () => {
    const sizes = [M42, RMS, M25, M26].flatMap((thread) => [end(thread, 'male'), end(thread, 'female')]);
    const anyOf = fc.constantFrom(...sizes);
    const ring = fc.tuple(anyOf, anyOf, fc.integer({ min: 10, max: 30 }), fc.boolean()).map(
      ([a, b, tenths, owned]): Piece => ({
        ...adapterOf({
          ends: [
            { thread: 'C', sex: 'male' },
            { thread: 'C', sex: 'male' },
          ],
        }),
        ends: [a, b],
        lengthMm: tenths / 10,
        owned,
      }),
    );
    const lengths = new Map<number, number>();
    fc.assert(
      fc.property(anyOf, anyOf, fc.array(ring, { minLength: 4, maxLength: 9 }), fc.boolean(), (from, to, rings, preferOwned) => {
        const found = shortestChain(from, to, stockOf(rings), { preferOwned });
        const best = bruteForce(from, to, rings, preferOwned, 6);
        if ('miss' in found) expect(best).toBeUndefined();
        else if (best || found.links.length <= 6) {
          expect(costOf(found, preferOwned)).toEqual(best);
          expectScrewed(from, to, found);
          lengths.set(found.links.length, (lengths.get(found.links.length) ?? 0) + 1);
        }
      }),
      { numRuns: RUNS, seed: 71_002 },
    );
    expect([...lengths.keys()].filter((n) => n >= 3).length).toBeGreaterThan(0);
    expect(lengths.get(2) ?? 0).toBeGreaterThan(5);
  });

  it('never joins what does not screw, whatever can be bought', () => {
    const ends = fc.constantFrom(...COMMON_RINGS.flatMap(({ ends: both }) => both));
    fc.assert(
      fc.property(ends, ends, fc.array(anyRing, { maxLength: 4 }), (from, to, own) => {
        const found = shortestChain(from, to, stockOf([...own, ...COMMON_RINGS]));
        if (!('miss' in found)) expectScrewed(from, to, found);
      }),
      { numRuns: Math.min(RUNS, 60), seed: 71_003 },
    );
  });

  it('is the same whatever the order in which equal rings lie in the box', () => {
    fc.assert(
      fc.property(anyEnd, anyEnd, fc.array(anyRing, { maxLength: 7 }), (from, to, rings) => {
        const there = shortestChain(from, to, stockOf(rings));
        const back = shortestChain(from, to, stockOf(rings.toReversed()));
        expect('miss' in there).toBe('miss' in back);
        if (!('miss' in there) && !('miss' in back)) expect(costOf(back, false)).toEqual(costOf(there, false));
        expect(shortestChain(from, to, stockOf(rings))).toEqual(there);
      }),
      { numRuns: Math.min(RUNS, 100), seed: 71_004 },
    );
  });

  it('uses what is owned once, and buys as often as it takes', () => {
    const plate = adapterOf({
      ends: [
        { thread: 'M25', sex: 'female' },
        { thread: 'M42 x 1', sex: 'male' },
      ],
    });
    const coupler = adapterOf({
      ends: [
        { thread: 'M42 x 1', sex: 'female' },
        { thread: 'M42 x 1', sex: 'female' },
      ],
    });
    const objective = end(M25, 'male');
    expect(shortestChain(objective, objective, stockOf([plate, coupler]))).toHaveProperty('miss');
    const bought = shortestChain(objective, objective, stockOf([{ ...plate, owned: false }, coupler])) as Chain;
    expect(bought.links.map(({ piece }) => piece.owned)).toEqual([false, true, false]);
    expect((shortestChain(objective, objective, stockOf([plate, { ...plate }, coupler])) as Chain).toBuy).toBe(0);
  });

  it('takes the longer way in where the shorter one needs a ring that the way out cannot do without', () => {
    const ring = (a: string, sexA: Sex, b: string, sexB: Sex) =>
      adapterOf({
        ends: [
          { thread: a, sex: sexA },
          { thread: b, sex: sexB },
        ],
      });
    const rings = [
      ring('RMS', 'female', 'M25', 'male'),
      ring('M25', 'female', 'M42 x 1', 'male'),
      ring('RMS', 'female', '49', 'male'),
      ring('49', 'female', '52', 'male'),
      ring('52', 'female', 'M42 x 1', 'male'),
      ring('M42 x 1', 'female', 'M42 x 1', 'female'),
      ring('M25', 'male', 'M32', 'male'),
    ];
    const found = shortestChain(end(RMS, 'male'), end(M32, 'female'), stockOf(rings)) as Chain;
    expect(found.links.map(({ piece }) => rings.indexOf(piece))).toEqual([2, 3, 4, 5, 1, 6]);
  });

  it('prefers fewer rings, and fewer to buy where that is asked for', () => {
    const size = (mm: number) => end(filterThread(mm), 'female');
    const owned = [
      adapterOf({
        ends: [
          { thread: '58', sex: 'male' },
          { thread: '55', sex: 'female' },
        ],
      }),
      adapterOf({
        ends: [
          { thread: '55', sex: 'male' },
          { thread: '52', sex: 'female' },
        ],
      }),
      adapterOf({
        ends: [
          { thread: '52', sex: 'male' },
          { thread: '52', sex: 'male' },
        ],
      }),
    ];
    const pieces = stockOf([...owned, ...COMMON_RINGS]);
    const few = shortestChain(size(58), size(52), pieces) as Chain;
    const cheap = shortestChain(size(58), size(52), pieces, { preferOwned: true }) as Chain;
    expect([few.links.length, few.toBuy]).toEqual([2, 1]);
    expect([cheap.links.length, cheap.toBuy]).toEqual([3, 0]);
  });
});

describe('where nothing joins two ends', () => {
  it('the nearest miss and the ring that would do are told', () => {
    const near = shortestChain(
      end(M26, 'male'),
      { thread: { label: 'M26 x 0.75', diameterMm: 26, pitchMm: 0.75, angleDeg: 60 }, sex: 'female' },
      stockOf([]),
    );
    expect(near).toMatchObject({
      near: true,
      miss: 'nothing joins male M26 x 36 TPI and female M26 x 0.75: M26 x 36 TPI and M26 x 0.75 are as wide as each other, but their pitches are 0.7056 and 0.75 mm: they start and bind after a turn or two',
      wouldDo: 'a ring with female M26 x 36 TPI on one side and male M26 x 0.75 on the other',
    });
  });
});
