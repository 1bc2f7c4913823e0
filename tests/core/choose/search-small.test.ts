import { describe, expect, it } from 'vitest';
import { type Asked, type Found, searching, wantSchema } from '../../../core/choosing.ts';
import type { Objective } from '../../../core/index.ts';
import { asking, countingWorks, FIVE, finished, GLASSY, TEN, TWENTY, tube } from './small.ts';

const found = (asked: Asked): Found => finished(searching(asked)).answer;
const turns = (list: readonly { turn: number }[]): number[] => list.map(({ turn }) => turn);
const RELAYS = [tube(100), tube(200), tube(300)];
/** Magnified, in the order of the search: 5, 10, 15; 10, 20, 30; 2.5, 5, 7.5. */
const NINE = asking([TEN, TWENTY, FIVE], RELAYS);

describe('what a search finds', () => {
  it('is sorted as asked, and what is equal stays in the order of the search', () => {
    const least = found(NINE);
    expect(turns(least.best)).toEqual([6, 0, 7, 8, 1, 3, 2, 4, 5]);
    expect(least.best.map(({ key }) => key)).toEqual([2.5, 5, 5, 7.5, 10, 10, 15, 20, 30]);
    const greatest = found({ ...NINE, sort: { by: 'systemMagnification', first: 'greatest' } });
    expect(turns(greatest.best)).toEqual([5, 4, 2, 1, 3, 8, 0, 7, 6]);
    expect(turns(found({ ...NINE, most: 2 }).best)).toEqual([6, 0]);
    expect(least.best[1]?.place).toEqual([0, 0, 0]);
  });

  it('is counted: all, those that are no pairings, those that are feasible', () => {
    const wrong = tube(200, { powerDioptre: 10 });
    const counted = found({ ...NINE, relays: [...NINE.relays, { part: wrong }], want: wantSchema.parse({ magnification: [5, 15] }) });
    expect(counted).toMatchObject({ considered: 12, impossible: 3, feasible: 6, unpriced: 0 });
    expect(counted.stopped).toEqual({ magnificationAtLeast: 1, magnificationAtMost: 2 });
  });

  it('says how far it has come: at the beginning, every half thousand and at the end', () => {
    expect(finished(searching({ ...NINE, infinitySpacesMm: [30, 60] })).steps).toEqual([
      { done: 0, of: 18 },
      { done: 18, of: 18 },
    ]);
    const many = asking([TEN], [tube(200)], { infinitySpacesMm: Array.from({ length: 1100 }, (_, i) => i / 10), most: 1 });
    expect(finished(searching(many)).steps.map(({ done }) => done)).toEqual([0, 512, 1024, 1100]);
  });

  it('has what is not known last in the list, and off the frontier', () => {
    const { fieldNumberMm: _, ...bare } = TEN;
    const one = asking([bare as Objective, TEN], [tube(200)], {
      sort: { by: 'goodFieldMm', first: 'greatest' },
      frontier: ['resolvedDetailUm', 'goodFieldMm'],
    });
    const { best, frontier } = found(one);
    expect(turns(best)).toEqual([1, 0]);
    // A field number of 40 mm at 10 times; the other circles are wider. Without it 5.6 mm would be light alone.
    expect(best.map(({ key }) => key)).toEqual([expect.closeTo(-4, 9), Number.POSITIVE_INFINITY]);
    expect(turns(frontier)).toEqual([1]);
    // 0.61 · 0.55 µm over 0.25.
    expect(frontier[0]?.row).toEqual([expect.closeTo(-1.342, 3), expect.closeTo(4, 9)]);
    // Of figures that take no circle none needs to be known.
    expect(turns(found({ ...one, frontier: ['resolvedDetailUm', 'objectFieldWidthMm'] }).frontier)).toEqual([1, 0]);
    // So too where the list is sorted by another figure.
    expect(turns(found({ ...one, sort: { by: 'systemMagnification', first: 'least' } }).frontier)).toEqual([1]);
    expect(turns(found({ ...one, sort: { by: 'goodFieldMm', first: 'least' } }).best)).toEqual([1, 0]);
  });

  it('has a frontier in the order of the list: finer where less is better, wider where more is', () => {
    const { frontier } = found(NINE);
    // Fields of 24 mm over the magnification; the detail is 8 µm over it, or 0.61 · 0.55 µm over the aperture.
    const rows = [
      [5, 1.6, 4.8],
      [10, 1.342, 2.4],
      [15, 1.342, 1.6],
      [10, 0.839, 2.4],
      [20, 0.839, 1.2],
      [30, 0.839, 0.8],
      [2.5, 3.2, 9.6],
      [5, 2.396, 4.8],
      [7.5, 2.396, 3.2],
    ] as const;
    const unbeaten = [6, 0, 3];
    expect(turns(frontier)).toEqual(unbeaten);
    for (const [i, turn] of unbeaten.entries()) {
      const [, detail, field] = rows[turn] as (typeof rows)[number];
      expect(frontier[i]?.row).toEqual([expect.closeTo(-detail, 3), expect.closeTo(field, 9)]);
    }
  });
});

describe('a budget', () => {
  const dear = { ...asking([TEN], [tube(200), tube(250)]), objectives: [{ part: TEN, price: 300 }] };
  const priced = (first?: number, second?: number): Asked['relays'] => [
    { part: tube(200), ...(first === undefined ? {} : { price: first }) },
    { part: tube(250), ...(second === undefined ? {} : { price: second }) },
  ];
  const within = (maxPrice: number, ...prices: (number | undefined)[]): Found =>
    found({ ...dear, relays: priced(...prices), want: { maxPrice } });

  it('is kept by what costs just so much, and missed by a part of it', () => {
    const { feasible, stopped, near } = within(400, 100, 200);
    expect({ feasible, stopped }).toEqual({ feasible: 1, stopped: { price: 1 } });
    expect(near).toEqual([expect.objectContaining({ turn: 1, missing: 1, worst: -0.25 })]);
    expect(within(0, 100, 200).near.map(({ worst }) => worst)).toEqual([-400, -500]);
    expect(within(400, 100.001, 100).best).toHaveLength(1);
  });

  it('excludes nothing whose price is not known, which is counted and comes last where price sorts', () => {
    const { feasible, unpriced } = within(400, undefined, 50);
    expect({ feasible, unpriced }).toEqual({ feasible: 2, unpriced: 1 });
    const sorted = found({ ...dear, relays: priced(undefined, 50), sort: { by: 'price', first: 'least' } });
    expect(sorted.best.map(({ turn, key }) => [turn, key])).toEqual([
      [1, 350],
      [0, Number.POSITIVE_INFINITY],
    ]);
    expect(turns(found({ ...dear, relays: priced(10, 50), sort: { by: 'price', first: 'greatest' } }).best)).toEqual([1, 0]);
    expect(found({ ...dear, relays: priced(10, 50) })).toMatchObject({ feasible: 2, unpriced: 0, stopped: {} });
  });
});

describe('two parts told once', () => {
  const spaces = [90, 30, 120, 60];
  const one = asking([TEN], [tube(200), tube(250)], {
    infinitySpacesMm: spaces,
    sort: { by: 'totalLengthMm', first: 'least' },
    want: wantSchema.parse({ maxLengthMm: 300 }),
    eachPairOnce: true,
  });

  it('are told at the spacing that comes first, with all at which they do', () => {
    // As long as space and focal length: 290, 230, 320, 260; 340, 280, 370, 310.
    const { best, feasible, near, stopped } = found(one);
    expect(best.map(({ turn, spacesMm }) => [turn, spacesMm])).toEqual([
      [1, [90, 30, 60]],
      [5, [30]],
    ]);
    expect([feasible, near, stopped]).toEqual([4, [], { length: 4 }]);
  });

  it('are not told twice of the same frontier, nor once where each spacing is asked for', () => {
    const { best } = found({ ...one, eachPairOnce: false });
    expect(best.map(({ turn, spacesMm }) => [turn, spacesMm])).toEqual([1, 3, 5, 0].map((turn) => [turn, undefined]));
    expect(turns(found({ ...one, frontier: ['totalLengthMm'] }).frontier)).toEqual([1]);
  });

  it('that do at no spacing are a near miss at the nearest, once', () => {
    const { near } = found({ ...one, want: wantSchema.parse({ maxLengthMm: 275 }) });
    expect(near).toEqual([expect.objectContaining({ turn: 5, missing: 1, worst: expect.closeTo(-5 / 275, 12) })]);
  });
});

describe('near misses', () => {
  const missing = (want: unknown, more: Partial<Asked> = {}) => found({ ...NINE, want: wantSchema.parse(want), ...more }).near;

  it('come in the order of how many limits they miss, then by how much, then as sorted', () => {
    // Nothing magnifies 12 to 12.5 times; 15 misses it by a fifth, 10 by a sixth, twice.
    const near = missing({ magnification: [12, 12.5] });
    expect(near.slice(0, 3).map(({ turn, worst }) => [turn, worst])).toEqual([
      [1, expect.closeTo(-1 / 6, 9)],
      [3, expect.closeTo(-1 / 6, 9)],
      [2, expect.closeTo(-1 / 5, 9)],
    ]);
    expect(near.map(({ missing }) => missing)).toEqual(Array(9).fill(1));
    // With 0.9 µm asked for besides, those of 0.25 and 0.14 miss two, and by more.
    const two = missing({ magnification: [12, 12.5], finestDetailUm: 0.9 });
    expect(two.map(({ missing }) => missing)).toEqual([1, 1, 1, 2, 2, 2, 2, 2, 2]);
    expect(two.slice(0, 4).map(({ turn }) => turn)).toEqual([3, 4, 5, 1]);
    expect(two[3]?.worst).toBeCloseTo(1 - 1.342 / 0.9, 3);
  });

  it('are twelve at most, and by the sort where nothing else sets them apart', () => {
    const objectives = Array.from({ length: 14 }, (_, i): Objective => ({ ...TEN, workingDistanceMm: 20 + ((5 * i) % 14) }));
    const same = (first: 'least' | 'greatest') =>
      found({
        ...asking(objectives, [tube(200)], { sort: { by: 'clearWorkingDistanceMm', first } }),
        want: wantSchema.parse({ magnification: [12, 12.5] }),
      }).near.map(({ key }) => Math.abs(key));
    expect(same('least')).toEqual(Array.from({ length: 12 }, (_, i) => 20 + i));
    expect(same('greatest')).toEqual(Array.from({ length: 12 }, (_, i) => 33 - i));
  });

  it('miss what is not known by all of it', () => {
    const { workingDistanceMm: _, ...bare } = TEN;
    const want = wantSchema.parse({ minWorkingDistanceMm: 30 });
    const { near, stopped } = found(asking([bare as Objective, TEN], [tube(200)], { want }));
    expect(near.map(({ turn, worst }) => [turn, worst])).toEqual([
      [1, expect.closeTo(-1 / 3, 9)],
      [0, -1],
    ]);
    expect(stopped).toEqual({ workingDistance: 2 });
  });
});

describe('a relay with glass', () => {
  /** The sharp circle is asked for by covering; 60 mm across of it. */
  const want = (magnification: [number, number], share = 0.9) => wantSchema.parse({ magnification, minCoveredShare: share });

  it('is looked through where all else is met, and each time that is a step', () => {
    const { works, traced } = countingWorks();
    const asked = asking([TEN, TWENTY], [GLASSY, tube(200)], { want: want([5, 30]), infinitySpacesMm: [30, 60] });
    const { answer, steps } = finished(searching(asked, works));
    expect(answer).toMatchObject({ considered: 8, feasible: 8, impossible: 0 });
    expect(traced()).toBe(4);
    expect(steps.map(({ done }) => done)).toEqual([0, 1, 2, 5, 6, 8]);
  });

  it('is not looked through where nothing asked hangs on it', () => {
    const { works, traced } = countingWorks();
    const { answer, steps } = finished(searching(asking([TEN], [GLASSY], { want: wantSchema.parse({ magnification: [5, 30] }) }), works));
    expect([answer.feasible, traced(), steps.map(({ done }) => done)]).toEqual([1, 0, [0, 1]]);
  });

  it('that misses something else is looked through only to tell how near it comes', () => {
    const { works, traced } = countingWorks(5);
    const near = finished(searching(asking([TEN], [GLASSY], { want: want([12, 13]) }), works)).answer;
    // 10 mm of sharp picture, of a frame of 24 mm by 16 mm: that is missed as well.
    expect(near.near).toEqual([expect.objectContaining({ missing: 2 })]);
    expect(near.stopped).toEqual({ magnificationAtLeast: 1, frameCovered: 1 });
    expect(traced()).toBe(1);
  });

  it('is passed over where twelve come nearer already: counted is what it was seen to miss', () => {
    const { works, traced } = countingWorks(5);
    const plain = Array.from({ length: 12 }, (_, i) => tube(201 + i));
    const one = asking([TEN], [...plain, GLASSY], { want: want([12, 13]) });
    const { answer } = finished(searching(one, works));
    expect(answer.near.map(({ turn }) => turn)).toEqual([11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1, 0]);
    expect([traced(), answer.stopped, answer.considered]).toEqual([0, { magnificationAtLeast: 13 }, 13]);
    // A plain relay behind them is judged whole: its picture is 10 mm as well.
    const last = finished(searching({ ...one, relays: [...one.relays.slice(0, 12), { part: tube(200, { imageCircleMm: 10 }) }] }, works));
    expect(last.answer.stopped).toEqual({ magnificationAtLeast: 13, frameCovered: 1 });
    // Too dear counts too.
    const dear = { ...one, want: { ...one.want, maxPrice: 10 }, relays: [...one.relays.slice(0, 12), { part: GLASSY, price: 20 }] };
    expect(finished(searching(dear, works)).answer.stopped).toEqual({ magnificationAtLeast: 13, price: 1 });
    expect(traced()).toBe(0);
  });

  it('that comes as near as the last of twelve is told by the sort, whichever end of it is first', () => {
    const objectives = Array.from({ length: 13 }, (_, i): Objective => ({ ...TEN, workingDistanceMm: 20 + i }));
    for (const first of ['least', 'greatest'] as const) {
      const asked = asking(objectives, [tube(200), GLASSY], {
        want: want([12, 13], 0.5),
        sort: { by: 'clearWorkingDistanceMm', first },
      });
      const { near } = finished(searching(asked, countingWorks().works)).answer;
      const inOrder = Array.from({ length: 12 }, (_, i) => 20 + (i >> 1));
      expect(near.map(({ key }) => Math.abs(key))).toEqual(first === 'least' ? inOrder : inOrder.map((x) => 52 - x));
    }
  });

  it('that is none is counted as no pairing, and not looked through', () => {
    const { works, traced } = countingWorks();
    const wrong = { ...GLASSY, focalLengthMm: 150 };
    const { answer } = finished(searching(asking([TEN], [wrong, GLASSY], { want: want([5, 30]) }), works));
    expect(answer).toMatchObject({ considered: 2, impossible: 1, feasible: 1 });
    expect(traced()).toBe(1);
  });
});
