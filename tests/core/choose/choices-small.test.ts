import { describe, expect, it } from 'vitest';
import { type Asked, type Choices, choosing, type OneMore, oneMore, wantSchema } from '../../../core/choosing.ts';
import type { Objective, Relay } from '../../../core/index.ts';
import { asking, FIVE, finished, TEN, TWENTY, tube } from './small.ts';

const chosen = (asked: Asked): Choices => finished(choosing(asked)).answer;
const lengths = ({ choices }: Choices): number[] => choices.map(({ pairing }) => pairing.relay.focalLengthMm as number);

describe('the choices of a search', () => {
  it('are its best and its frontier in one list, sorted, each once', () => {
    const asked = asking([TEN], [tube(300), tube(100), tube(200)], { most: 1 });
    // Finer in the file from 100 to 200 mm, where the optics become the limit: 300 mm is only narrower.
    const { choices, frontier, considered, feasible } = chosen(asked);
    expect(lengths({ choices } as Choices)).toEqual([100, 200]);
    expect([frontier, considered, feasible]).toEqual([2, 3, 3]);
    expect(choices.map(({ onFrontier }) => onFrontier)).toEqual([true, true]);
    const all = chosen({ ...asked, most: 3 });
    expect(lengths(all)).toEqual([100, 200, 300]);
    expect(Object.keys(all.choices[2] as object)).not.toContain('onFrontier');
    expect(all.choices[0]?.line).toContain('None here is better');
    expect(all.choices[2]?.line).not.toContain('None here is better');
  });

  it('say what bites, by the least part of it, and nothing where nothing is asked', () => {
    const want = wantSchema.parse({ magnification: [5, 30], maxLengthMm: 280 });
    const [choice] = chosen(asking([TEN], [tube(200)], { want })).choices;
    // 10 of 5 at least, 10 of 30 at most, 260 of 280 at most.
    expect(choice?.limits.map(({ margin }) => margin)).toEqual([1, expect.closeTo(2 / 3, 9), expect.closeTo(20 / 280, 9)]);
    expect(choice?.bites).toBe('length');
    expect(choice?.line).toContain('Tightest: length');
    const other = chosen(asking([TEN], [tube(102)], { want })).choices[0];
    expect(other?.bites).toBe('magnificationAtLeast');
    const free = chosen(asking([TEN], [tube(200)])).choices[0] as object;
    for (const name of ['bites', 'spacesMm', 'levelWithPrevious', 'tieWithPrevious']) expect(Object.keys(free)).not.toContain(name);
  });

  it('are level with the one before in what sorts them, and a tie where they are in all', () => {
    const stands = (relays: Relay[], more: Partial<Asked> = {}) =>
      chosen(asking([TEN], relays, more)).choices.map(({ levelWithPrevious, tieWithPrevious }) => [levelWithPrevious, tieWithPrevious]);
    const nothing = [undefined, undefined];
    // A half of a hundredth is no difference that anybody would see.
    expect(stands([tube(200), tube(201)])).toEqual([nothing, [true, true]]);
    expect(stands([tube(200), tube(210)])).toEqual([nothing, nothing]);
    // The detail is of the optics alone from 120 mm on, but the field is not.
    expect(stands([tube(200), tube(210)], { sort: { by: 'resolvedDetailUm', first: 'least' } })).toEqual([nothing, [true, undefined]]);
    expect(stands([tube(200), tube(210)], { frontier: ['resolvedDetailUm'] })).toEqual([nothing, nothing]);
    expect(stands([tube(200), tube(201)], { sort: { by: 'price', first: 'least' } })).toEqual([nothing, [undefined, true]]);
    // Each limit is asked about as well.
    const long = { want: wantSchema.parse({ maxLengthMm: 900 }), infinitySpacesMm: [60, 90] };
    expect(stands([tube(200)], { ...long, most: 9 })).toEqual([nothing, [true, undefined]]);
    expect(stands([tube(200), tube(210), tube(211)])).toEqual([nothing, nothing, [true, true]]);
  });

  it('are told at every spacing that does where two parts are told once', () => {
    const once = chosen(asking([TEN], [tube(200)], { infinitySpacesMm: [90, 60], eachPairOnce: true }));
    expect(once.choices.map(({ spacesMm }) => spacesMm)).toEqual([[90, 60]]);
  });

  it('tell of a long frontier 24 from end to end, of equal rows the first', () => {
    // From 20 to 79 mm each is narrower and finer than the one before: the pixels are the limit.
    const many = Array.from({ length: 60 }, (_, i) => tube(20 + i));
    const asked = asking([{ ...TEN, na: 0.9 }], [...many, tube(20), tube(79)].toReversed(), { most: 1 });
    const found = chosen(asked);
    expect(found.frontier).toBe(62);
    // The first of the list is the shortest, which stands on the frontier.
    const due = Array.from({ length: 24 }, (_, i) => 20 + Math.round((i * 59) / 23));
    expect(lengths(found)).toEqual(due);
    const some = chosen({ ...asked, relays: many.slice(0, 24).map((part) => ({ part, owned: true })) });
    expect(lengths(some)).toEqual(Array.from({ length: 24 }, (_, i) => 20 + i));
  });

  it('come with what comes near', () => {
    const { choices, nearMisses } = chosen(
      asking([TEN], [tube(200), tube(150)], { want: wantSchema.parse({ magnification: [12.02, 30] }) }),
    );
    expect(choices).toEqual([]);
    expect(nearMisses.map(({ wouldMeetIf }) => wouldMeetIf?.from)).toEqual([200, 150]);
  });
});

describe('one more part', () => {
  const more = (asked: Asked): OneMore => finished(oneMore(asked)).answer;
  const shelf = (owned: Objective[], bought: Objective[], relays: Relay[] = [tube(200)]): Asked => {
    const asked = asking(owned, relays);
    return { ...asked, objectives: [...bought.map((part, i) => ({ part, id: `o${i}`, price: 100 * (i + 1) })), ...asked.objectives] };
  };

  it('is each that is not owned, with all that is owned, in the order of the best that it opens', () => {
    const asked: Asked = {
      ...shelf([], [TWENTY, FIVE, TEN, { ...TEN }]),
      sort: { by: 'systemMagnification', first: 'least' },
    };
    const { owned, openings, others } = more(asked);
    expect(owned).toEqual({ objectives: 0, relays: 1, feasible: 0 });
    expect(Object.keys(owned)).not.toContain('best');
    expect(openings.map(({ id, kind, price, opens }) => [id, kind, price, opens])).toEqual([
      ['o1', 'objective', 200, 1],
      ['o2', 'objective', 300, 1],
      ['o3', 'objective', 400, 1],
      ['o0', 'objective', 100, 1],
    ]);
    expect(others).toBe(0);
    expect(openings[0]?.part).toBe(FIVE);
    for (const { best, gains, loses } of openings) {
      expect([gains, loses]).toEqual([[], []]);
      for (const name of ['onFrontier', 'levelWithPrevious', 'tieWithPrevious']) expect(Object.keys(best)).not.toContain(name);
      expect(best.line).not.toContain('tie');
    }
  });

  it('opens nothing where it meets no limit, or gains nothing surely', () => {
    const asked = { ...shelf([TEN], [TWENTY, FIVE, { ...TEN }]), want: wantSchema.parse({ magnification: [10, 30] }) };
    const { owned, openings, others } = more(asked);
    expect(owned.feasible).toBe(1);
    expect(owned.best?.pairing.objective).toBe(TEN);
    // Five times is too little, another of the same gains nothing.
    expect(openings.map(({ id }) => id)).toEqual(['o0']);
    expect(others).toBe(2);
    const [{ gains, loses }] = openings as [OneMore['openings'][number]];
    expect(gains.map(({ figure }) => figure)).toContain('resolvedDetailUm');
    expect(loses.map(({ figure }) => figure)).toEqual(expect.arrayContaining(['objectFieldWidthMm', 'workingFNumber']));
    expect([gains, loses].flat().map(({ figure }) => figure)).not.toContain('clearWorkingDistanceMm');
    expect(gains.map(({ figure }) => figure)).not.toContain('objectFieldWidthMm');
  });

  it('may be a relay, without an id or a price where none is known', () => {
    const asked = asking([TEN], [tube(200)], { want: wantSchema.parse({ magnification: [12, 30] }) });
    const { openings, others } = more({ ...asked, relays: [...asked.relays, { part: tube(300) }, { part: tube(150) }] });
    expect(openings).toHaveLength(1);
    expect(openings[0]).toMatchObject({ kind: 'relay', part: tube(300), opens: 1 });
    for (const name of ['id', 'price']) expect(Object.keys(openings[0] as object)).not.toContain(name);
    expect(others).toBe(1);
  });

  it('says how far it has come, each search a step', () => {
    const { steps } = finished(oneMore(shelf([TEN], [TWENTY, FIVE])));
    const done = steps.map((step) => step.done);
    expect(new Set(steps.map(({ of }) => of))).toEqual(new Set([3]));
    expect(done).toEqual(done.toSorted((a, b) => a - b));
    expect([...new Set(done)]).toEqual([0, 1, 2, 3]);
  });

  it('is told of twelve at most', () => {
    const many = Array.from({ length: 14 }, (_, i): Objective => ({ ...TEN, magnification: 10 + i }));
    const { openings, others } = more(shelf([], many));
    expect(openings.map(({ id }) => id)).toEqual(Array.from({ length: 12 }, (_, i) => `o${i}`));
    expect(others).toBe(0);
  });
});
