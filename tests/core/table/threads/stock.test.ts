import { describe, expect, it } from 'vitest';
import { adapterOf, type Piece } from '../../../../core/table/threads/adapter.ts';
import { type Chain, MOST_LINKS, shortestChain } from '../../../../core/table/threads/chain.ts';
import { M25, M32, M42 } from '../../../../core/table/threads/known.ts';
import { nearest, reachable } from '../../../../core/table/threads/nearest.ts';
import { stockOf } from '../../../../core/table/threads/stock.ts';
import { type End, endKey, endWords, mateOf, type Sex } from '../../../../core/table/threads/thread.ts';

const ring = (a: string, sexA: Sex, b: string, sexB: Sex, lengthMm = 3): Piece =>
  adapterOf({
    ends: [
      { thread: a, sex: sexA },
      { thread: b, sex: sexB },
    ],
    lengthMm,
  });
const [OBJECTIVE, RELAY]: End[] = [
  { thread: M25, sex: 'male' },
  { thread: M42, sex: 'female' },
];

describe('pieces by the end that they are put on with', () => {
  const ways = (end: End, ...pieces: Piece[]) => stockOf(pieces).byFront.get(endKey(end)) ?? [];
  const FEMALE: End = { thread: M25, sex: 'female' };

  it('are alike whichever end is told first, the shortest first and then as they were told', () => {
    const [long, turned, short] = [
      ring('M25', 'female', '58', 'male', 5),
      ring('58', 'male', 'M25', 'female', 5),
      ring('M25', 'female', '58', 'male', 4),
    ];
    const found = ways(FEMALE, long, turned, short);
    expect(found.length).toBe(1);
    expect(found[0]?.alike.map(({ piece }) => piece)).toEqual([short, long, turned]);
    expect(found[0]?.alike.map(({ place }) => place)).toEqual([2, 0, 1]);
    expect(ways(FEMALE, long, { ...long, owned: false }).length).toBe(2);
  });

  it('go on either way round, told apart, and one way where both ends are alike', () => {
    const one = ring('M25', 'female', '58', 'male');
    expect(ways(FEMALE, one).map(({ turned }) => turned)).toEqual([0]);
    expect(ways({ ...FEMALE, thread: one.ends[1].thread, sex: 'male' }, one).map(({ turned, rear }) => [turned, rear])).toEqual([
      [1, FEMALE],
    ]);
    expect(ways(FEMALE, ring('M25', 'female', 'M25', 'female')).length).toBe(1);
  });
});

describe('a chain', () => {
  const chain = (...pieces: Piece[]) => shortestChain(OBJECTIVE as End, RELAY as End, stockOf(pieces)) as Chain;
  const through = (thread: string, lengthMm: number, more = 0) => [
    ring('M25', 'female', thread, 'male', lengthMm),
    ring(thread, 'female', 'M42 x 1', 'male', lengthMm + more),
  ];

  it('is as long as its pieces, and of two as short the one told first', () => {
    const [x, y] = [through('58', 5), through('52', 5)];
    expect(chain(...x)).toMatchObject({ lengthMm: 10, toBuy: 0 });
    expect(chain(...x, ...y).links.map(({ piece }) => piece)).toEqual(x);
    expect(chain(...y, ...x).links.map(({ piece }) => piece)).toEqual(y);
    expect(chain(...through('52', 5, 0.5), ...x).links.map(({ piece }) => piece)).toEqual(x);
  });

  it('takes no shorter way than the shortest, wherever that is told, and nothing that is used elsewhere', () => {
    const [short, long] = [through('58', 5), through('52', 5, 0.5)];
    expect(chain(...short, ...long).links.map(({ piece }) => piece)).toEqual(short);
    const without = new Set([short[0] as Piece]);
    const found = shortestChain(OBJECTIVE as End, RELAY as End, stockOf([...short, ...long]), {}, without) as Chain;
    expect(found.links.map(({ piece }) => piece)).toEqual(long);
  });

  it('has eight pieces at most', () => {
    // Each goes one place on in a row of threads that only it joins.
    const row = ['M25', '37', '43', '46', '49', '52', '55', '58', '62', '67'];
    const pieces = row.slice(1).map((thread, i) => ring(row[i] as string, 'female', thread, 'male'));
    const to = (count: number) => {
      const last = (pieces[count - 1] as Piece).ends[1];
      return shortestChain(OBJECTIVE as End, mateOf(last), stockOf(pieces));
    };
    expect(MOST_LINKS).toBe(8);
    expect((to(8) as Chain).links.length).toBe(8);
    expect(to(9)).toHaveProperty('miss');
  });
});

describe('where nothing joins two ends', () => {
  const words = ({ gap }: ReturnType<typeof nearest>) => gap.map(endWords);
  const FEMALE_M32: End = { thread: M32, sex: 'female' };

  it('every end counts that pieces make of them, each kind once', () => {
    const pieces = [ring('M25', 'female', '58', 'male'), ring('58', 'female', '52', 'male'), ring('58', 'female', 'M25', 'male')];
    expect(reachable(OBJECTIVE as End, pieces).map(endWords)).toEqual(['male M25 x 0.75', 'male M58 x 0.75', 'male M52 x 0.75']);
  });

  it('the gap is where two come nearest, and between the ends themselves where none come nearer', () => {
    // 58 stands 3 mm from 55: nearer than 25 from 32.
    const nearer = nearest(OBJECTIVE as End, FEMALE_M32, [ring('M25', 'female', '58', 'male'), ring('M32', 'male', '55', 'female')]);
    expect(words(nearer)).toEqual(['male M58 x 0.75', 'female M55 x 0.75']);
    expect(nearer).toMatchObject({
      near: true,
      miss: expect.stringMatching(/^nothing joins male M25 x 0\.75 and female M32 x 0\.75: male M58 x 0\.75 does not enter female M55/),
      wouldDo: 'a ring with female M58 x 0.75 on one side and male M55 x 0.75 on the other',
    });
    const as = nearest(OBJECTIVE as End, { thread: M25, sex: 'male' }, [ring('M25', 'female', '58', 'male')]);
    expect(words(as)).toEqual(['male M25 x 0.75', 'male M25 x 0.75']);
    expect(as.near).toBe(true);
  });

  it('is told without a reason where they are of different sizes', () => {
    const far = nearest(OBJECTIVE as End, RELAY as End, []);
    expect(far).toMatchObject({ miss: 'nothing joins male M25 x 0.75 and female M42 x 1', near: false });
  });
});
