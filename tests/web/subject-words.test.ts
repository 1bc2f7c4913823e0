import { describe, expect, it } from 'vitest';
import type { Choice, LimitAnswer } from '../../core/choosing.ts';
import { type Answer, FIGURE_IDS, type FigureId, type Pairing, pairingSchema } from '../../core/index.ts';
import opening from '../../data/opening.json';
import { startOf, wishIn, wishTo } from '../../web/state/wish.ts';
import { questionOf } from '../../web/subject/asked.ts';
import { wantFrom } from '../../web/subject/blanks.ts';
import type { Found, Miss } from '../../web/subject/choose-task.ts';
import { entriesOf, levelOf, spacesOf, spacingsOf } from '../../web/subject/entries.ts';
import { givesUp } from '../../web/subject/gives-up.ts';
import { excluding, loosened, looserSaid, loosers } from '../../web/subject/loosen.ts';
import { lookFor, ownedSaid, shiftsSaid } from '../../web/subject/one-more-words.ts';
import { scatterOf } from '../../web/subject/scatter.ts';
import { axisOver } from '../../web/subject/scatter-axis.ts';
import { spacesFrom } from '../../web/subject/spaces-read.ts';
import { answerOf, countsOf, figuresFor, levelSaid, missSaid, priceSaid, standsOf, stopsMost, wouldSaid } from '../../web/subject/told.ts';
import { random } from '../support/random.ts';

/** What the view From the subject says and draws, without a browser. */

const OPENING = pairingSchema.parse(opening.pairing);
const known = (value: number, unit = 'mm'): Answer => ({ state: 'known', value, unit, origin: 'marked' }) as Answer;

/** A choice that stands where it is told to: the rest of its figures are 1. */
function choice(
  values: Partial<Record<FigureId, number>>,
  more: Partial<Choice> & { na?: number; spaceMm?: number; relay?: string } = {},
): Choice {
  const { na = 0.25, spaceMm = 60, relay = 'relay', ...rest } = more;
  const pairing: Pairing = {
    ...OPENING,
    objective: { ...OPENING.objective, na },
    relay: { ...OPENING.relay, name: relay },
    infinitySpaceMm: spaceMm,
  };
  const figures = Object.fromEntries(FIGURE_IDS.map((id) => [id, known(values[id] ?? 1)])) as Choice['figures'];
  return { pairing, ids: {}, figures, limits: [], unknown: [], line: '', cautions: [], ...rest };
}

const limit = (name: LimitAnswer['name'], figure: FigureId, value: number, asked: number, sense: 'least' | 'most'): LimitAnswer => {
  const over = sense === 'least' ? value - asked : asked - value;
  return { name, figure, state: 'known', value, limit: asked, meets: over >= 0, surely: true, margin: over / asked };
};
const miss = (missing: LimitAnswer[], na: number): Miss => {
  const { figures: _, line: __, unknown: ___, ...rest } = choice({}, { na });
  return { ...rest, missing, limits: missing };
};

describe('the list', () => {
  it('has one entry for an objective with a relay, whatever the spacings, in the order in which each comes first', () => {
    const all = [
      choice({}, { relay: 'a', spaceMm: 60 }),
      choice({}, { relay: 'b', spaceMm: 30, levelWithPrevious: true }),
      choice({}, { relay: 'a', spaceMm: 30 }),
      choice({}, { relay: 'c', spaceMm: 30, levelWithPrevious: true, tieWithPrevious: true }),
      choice({}, { relay: 'a', spaceMm: 90 }),
      choice({}, { relay: 'c', spaceMm: 90, levelWithPrevious: true }),
    ];
    const entries = entriesOf(all);
    expect(entries.map(({ head, members }) => [head.pairing.relay.name, members.length])).toEqual([
      ['a', 3],
      ['b', 1],
      ['c', 2],
    ]);
    expect(entries.map(spacingsOf)).toEqual(['at 60, 30 or 90 mm', 'at 30 mm', 'at 30 or 90 mm']);
    // Each is held against the pairing before it, to whichever entry that belongs.
    const levels = entries.map((entry) => levelOf(all, entries, entry));
    expect(levels).toEqual([undefined, { place: 0, tie: false }, { place: 0, tie: true, spaceMm: 30 }]);
    expect(levels.flatMap((level) => (level ? levelSaid(level, 'resolvedDetailUm') : []))).toEqual([
      'Level with no. 1 in finest separation recorded.',
      'A tie on paper with no. 1 at 30 mm: photograph both.',
    ]);
    // Where each two parts are told once, the spacings that do come with them.
    const [once] = entriesOf([choice({}, { spaceMm: 60, spacesMm: [30, 60, 90] })]);
    expect(once && spacesOf(once)).toEqual([60, 30, 90]);
  });
  it('tells the figures that the wish is about, five at most, none twice', () => {
    const limits = [{ figure: 'resolvedDetailUm' as const }, { figure: 'subjectFill' as const }, { figure: 'subjectFill' as const }, {}];
    expect(figuresFor(limits, 'totalLengthMm', ['resolvedDetailUm', 'goodFieldMm'])).toEqual([
      'totalLengthMm',
      'resolvedDetailUm',
      'subjectFill',
      'goodFieldMm',
      'systemMagnification',
    ]);
    expect(figuresFor([], 'price', ['goodFieldMm', 'coveredShare'])).toHaveLength(5);
  });
  it('says what is to be paid, and what is not known of it', () => {
    expect(priceSaid({ price: 0 })).toBe('Nothing is left to pay.');
    expect(priceSaid({ price: 1250 })).toBe('1250 to pay.');
    expect(priceSaid({ priceMissing: ['objective', 'relay'] })).toBe('Its price is not known.');
    expect(priceSaid({ price: 80, priceMissing: ['objective'] })).toBe('80 to pay, and the price of the objective, not known.');
    expect(standsOf(true, ' at 30 mm', 2)).toBe('On the line drawn below at 30 mm: what is better in one figure is worse in the other.');
    expect(standsOf(false, '', 3)).toBe('');
  });
});

describe('the answer', () => {
  const found = (more: Partial<Found>): Found => ({
    considered: 1140,
    impossible: 0,
    feasible: 14,
    unpriced: 0,
    frontier: 3,
    stopped: {},
    choices: [],
    nearMisses: [],
    ...more,
  });
  it('counts, and names what stops the rest most often', () => {
    const stopped = { finestDetail: 300, length: 700, price: 2 };
    expect(stopsMost(stopped)).toEqual(['length', 700]);
    expect(stopsMost({})).toBeUndefined();
    expect(answerOf(found({ stopped }), 3)).toBe(
      '14 of 1140 pairings give all of it. What stops the rest most often: the rig is too long, 700 times.',
    );
    expect(answerOf(found({ feasible: 1, stopped: { price: 1 } }), 1)).toBe(
      '1 of 1140 pairings gives it. What stops the rest most often: it costs too much, once.',
    );
    expect(answerOf(found({ feasible: 0, stopped: { cornerLight: 1140 } }), 2)).toMatch(
      /^None of 1140 pairings gives all of it\. .*the corners are too dark/,
    );
    expect(answerOf(found({ feasible: 1140 }), 2)).toBe('All 1140 pairings give all of it.');
    expect(answerOf(found({ considered: 1, feasible: 1 }), 2)).toBe('The one pairing gives all of it.');
    expect(answerOf(found({ considered: 1, feasible: 0 }), 2)).toBe('The one pairing does not give all of it.');
    expect(answerOf(found({ feasible: 1130, impossible: 10 }), 0)).toBe('Nothing is asked yet: all 1130 pairings stand in the list.');
    // What cannot be built is no rest that a limit stops.
    expect(answerOf(found({ feasible: 1130, impossible: 10, stopped: {} }), 1)).toBe('1130 of 1140 pairings give it.');
  });
  it('says beside it what is left out, what cannot be built, and of how many the price is not known', () => {
    expect(countsOf(found({ unpriced: 3, impossible: 5 }), 6, 12)).toBe(
      '12 of them stand below, as 6 of one objective with one relay. 5 of the 1140 cannot be built: their parts stand in each other’s way. Of 3 the whole price is not known: that neither leaves them out nor places them.',
    );
    expect(countsOf(found({ unpriced: 14 }), 14, 14)).toMatch(/^Of none of them/);
    expect(countsOf(found({}), 14, 14)).toBe('');
  });
  it('says of a miss what falls short, by how much, and the one change that would do', () => {
    const fine = limit('finestDetail', 'resolvedDetailUm', 2.4, 2, 'most');
    const room = { ...limit('diffuser', 'clearWorkingDistanceMm', 19, 20, 'least'), surely: false };
    expect(missSaid([fine])).toBe('The finest detail is lost: 2.4 µm where 2 µm is asked, 20 % off.');
    expect(missSaid([fine, room])).toBe(
      'The finest detail is lost: 2.4 µm where 2 µm is asked, 20 % off and the diffuser does not go in: 19 mm where 20 mm is asked, 5 % off, which its ± may bridge.',
    );
    // Too much by more than all of it is told as so many times.
    expect(missSaid([limit('finestDetail', 'resolvedDetailUm', 1.2, 0.2, 'most')])).toBe(
      'The finest detail is lost: 1.2 µm where 0.2 µm is asked, 6 times as much.',
    );
    const { value: _, margin: __, ...rest } = room;
    expect(missSaid([{ ...rest, state: 'unknown', missing: ['/objective/workingDistanceMm'] }])).toMatch(
      /^Room for the diffuser is not known without /,
    );
    const fits = (value: number) => limit('subjectFits', 'subjectFill', value, 1, 'most');
    expect(missSaid([fits(1.02)])).toBe('The subject no longer fits the frame: it takes 102 % of its side.');
    expect(missSaid([{ ...fits(1.02), surely: false }])).toMatch(/of its side, which its ± may bridge\.$/);
    expect(missSaid([fits(1.0004)])).toBe('The subject no longer fits the frame: it takes a hair more than its side.');
    expect(wouldSaid({})).toBe('');
    expect(wouldSaid({ wouldMeetIf: { path: '/relay/focalLengthMm', value: 258, from: 300, pairing: OPENING } })).toBe(
      'Would do with a relay of 258 mm in the place of 300 mm.',
    );
  });
});

describe('what to loosen', () => {
  const fine = (value: number) => limit('finestDetail', 'resolvedDetailUm', value, 2, 'most');
  const light = (value: number) => limit('cornerLight', 'cornerIllumination', value, 0.5, 'least');
  it('is what alone stands in the way, by the least that would do, and what stands in each other’s way is said', () => {
    const both = [miss([fine(2.4011)], 0.1), miss([light(0.4561)], 0.2)];
    const third = limit('length', 'totalLengthMm', 410, 400, 'most');
    // What misses a third alone gives both: then they do not stand in each other's way.
    expect(excluding(entriesOf([...both, miss([third], 0.5)]))).toBe(
      'One of ‘length’, ‘light in the corners’ and ‘finest detail’ is to be loosened.',
    );
    expect(excluding(entriesOf([...both, miss([third, { ...third, name: 'price' }], 0.5)]))).toBe(
      'One of ‘light in the corners’ and ‘finest detail’ is to be loosened.',
    );
    const misses = entriesOf([
      miss([fine(2.4011)], 0.1),
      miss([light(0.4561)], 0.2),
      miss([fine(2.3011)], 0.3),
      miss([fine(2.1), light(0.49)], 0.4),
    ]);
    const ways = loosers(misses);
    expect(ways.map(({ limit: { name }, to }) => [name, to])).toEqual([
      ['cornerLight', 0.45],
      ['finestDetail', 2.31],
    ]);
    expect(ways.map(looserSaid)).toEqual(['45 % in the place of 50 %', '2.31 µm in the place of 2 µm']);
    expect(excluding(misses)).toBe(
      '‘light in the corners’ and ‘finest detail’ stand in each other’s way: none of these gives both with all the rest.',
    );
    // The wish let out so far is met by just that miss, and by a hair less it is not.
    for (const { limit: asked, to } of ways) {
      const value = asked.value as number;
      expect(asked.name === 'finestDetail' ? value <= to : value >= to).toBe(true);
      expect(Math.abs(to - value) / value).toBeLessThan(0.025);
    }
    const { want } = wantFrom({ '/finestDetailUm': '2', '/minCornerIllumination': '50' });
    expect(ways.map((way) => loosened(want ?? {}, way))).toEqual([
      { finestDetailUm: 2, minCornerIllumination: 0.45 },
      { finestDetailUm: 2.31, minCornerIllumination: 0.5 },
    ]);
  });
  it('is told where even the nearest misses more than one', () => {
    const both = entriesOf([miss([fine(3), light(0.2)], 0.1)]);
    expect(loosers(both)).toEqual([]);
    expect(excluding(both)).toMatch(/^Even the nearest misses 2 at once: /);
    expect(excluding(entriesOf([miss([fine(3)], 0.1)]))).toMatch(/only ‘finest detail’ stands in the way/);
    expect(excluding([])).toBe('');
  });
});

describe('the drawing', () => {
  const BOX = { left: 50, top: 20, right: 850, bottom: 400 };
  const XY = ['resolvedDetailUm', 'goodFieldMm'] as const;
  const at = (x: number, y: number, onFrontier = false, i = 0): Choice =>
    choice({ resolvedDetailUm: x, goodFieldMm: y }, { onFrontier, relay: `r${x} ${y} ${i}` });

  it('keeps every dot inside, draws equal dots once, and says of how many it cannot draw anything', () => {
    const r = random(Number(process.env.SEED ?? 5));
    for (let i = 0; i < 50; i++) {
      const all = Array.from({ length: r.integer(1, 30) }, () => at(r.between(0.3, 9), r.between(0.5, 50)));
      const unlimited = { ...at(1, 1), figures: { ...at(1, 1).figures, goodFieldMm: { state: 'unlimited', unit: 'mm' } as Answer } };
      const scatter = scatterOf([...all, unlimited], entriesOf([...all, unlimited]), XY, BOX);
      expect(scatter?.left).toBe(1);
      expect(scatter?.points.flatMap(({ places }) => places).length).toBe(all.length);
      for (const { x, y } of scatter?.points ?? []) {
        expect(x).toBeGreaterThan(BOX.left);
        expect(x).toBeLessThan(BOX.right);
        expect(y).toBeGreaterThan(BOX.top);
        expect(y).toBeLessThan(BOX.bottom);
      }
    }
    const twice = [at(1, 1, false, 1), at(1, 1, true, 2), at(2, 2)];
    const drawn = scatterOf(twice, entriesOf(twice), XY, BOX);
    expect(drawn?.points.map(({ places, onFrontier }) => [places, onFrontier])).toEqual([
      [[0, 1], true],
      [[2], false],
    ]);
    expect(scatterOf([], [], XY, BOX)).toBeUndefined();
  });
  it('steps its line so that no dot lies beyond it and every one of the frontier lies on it', () => {
    const r = random(Number(process.env.SEED ?? 6));
    for (let i = 0; i < 40; i++) {
      const raw = Array.from({ length: r.integer(2, 25) }, () => [r.between(0.3, 3), r.between(0.5, 5)] as const);
      const beaten = ([x, y]: readonly [number, number]): boolean => raw.some(([a, b]) => a <= x && b >= y && (a < x || b > y));
      const all = raw.map((point) => at(point[0], point[1], !beaten(point)));
      const scatter = scatterOf(all, entriesOf(all), XY, BOX);
      if (!scatter) throw new Error('no drawing');
      const first = scatter.points.filter(({ onFrontier }) => onFrontier);
      if (first.length < 2) {
        expect(scatter.line).toBe('');
        continue;
      }
      const corners = [...scatter.line.matchAll(/M([\d.]+) ([\d.]+)|H([\d.]+)V([\d.]+)/g)].map((m) => ({
        x: Number(m[1] ?? m[3]),
        y: Number(m[2] ?? m[4]),
      }));
      expect(corners).toHaveLength(first.length);
      // Finer is to the left, a wider field is up: the line's height at x is that of the last corner at or left of it.
      const heightAt = (x: number): number => corners.filter((c) => c.x <= x + 0.06).at(-1)?.y ?? Number.POSITIVE_INFINITY;
      for (const { x, y, onFrontier } of scatter.points) {
        expect(y).toBeGreaterThanOrEqual(heightAt(x) - 0.06);
        if (onFrontier) expect(corners.some((c) => Math.abs(c.x - x) < 0.06 && Math.abs(c.y - y) < 0.06)).toBe(true);
      }
    }
  });
  it('writes numbers over no dot and over no other number', () => {
    const r = random(7);
    const all = Array.from({ length: 40 }, (_, i) => at(r.between(0.3, 9), r.between(0.5, 5), i < 6));
    const scatter = scatterOf(all, entriesOf(all), XY, BOX);
    const boxes = (scatter?.labels ?? []).map(({ x, y, text, anchor }) => {
      const width = 7 * text.length;
      return { left: anchor === 'start' ? x : x - width, right: anchor === 'start' ? x + width : x, y };
    });
    expect(boxes.length).toBeGreaterThan(10);
    for (const [i, a] of boxes.entries()) {
      for (const b of boxes.slice(i + 1)) expect(a.right < b.left || b.right < a.left || Math.abs(a.y - b.y) >= 14).toBe(true);
      for (const p of scatter?.points ?? []) expect(p.x < a.left || p.x > a.right || Math.abs(p.y - a.y) > 5).toBe(true);
    }
  });
  it('steps an axis evenly, and by ratio where it goes far', () => {
    const even = axisOver([1, 6], 0, 600);
    expect(even.stepped).toBe('evenly');
    // 6 % of the spread are left free on either side.
    expect(even.at(1)).toBeCloseTo((600 * 0.3) / 5.6, 9);
    expect(even.at(6)).toBeCloseTo((600 * 5.3) / 5.6, 9);
    expect(even.ticks.map(({ text }) => text)).toEqual(['1', '2', '3', '4', '5', '6']);
    const far = axisOver([0.5, 50], 0, 600);
    expect(far.stepped).toBe('by ratio');
    expect(far.ticks.map(({ text }) => text)).toEqual(['0.5', '1', '2', '5', '10', '20', '50']);
    expect(far.at(5) - far.at(0.5)).toBeCloseTo(far.at(50) - far.at(5), 9);
    expect(axisOver([3, 3], 0, 600).ticks.length).toBeGreaterThan(0);
  });
  it('says what is given up for what, and where nothing has to be', () => {
    const all = [at(1, 2, true), at(1.5, 3, true), at(2, 5, true), at(3, 1)];
    expect(givesUp(all, entriesOf(all), XY)).toBe(
      'From 1 to 3 good field at the subject goes from 2 mm to 5 mm, and finest separation recorded from 1 mm to 2 mm: who wants more of one gives up some of the other.',
    );
    const one = [at(2, 4), at(1, 5, true)];
    expect(givesUp(one, entriesOf(one), XY)).toMatch(/^Here nothing has to be given up: 2 is as good as any/);
    expect(givesUp([at(1, 1)], entriesOf([at(1, 1)]), XY)).toBe('');
  });
});

describe('the wish in the address', () => {
  const start = startOf(OPENING);
  it('comes back as it was', () => {
    const { sensor } = OPENING;
    for (const wish of [
      start,
      { ...start, sensor, objectives: 'owned' as const, relays: 'pairing' as const, infinitySpacesMm: [45] },
      {
        ...start,
        sort: { by: 'price' as const, first: 'greatest' as const },
        frontier: ['totalLengthMm' as const, 'coveredShare' as const],
      },
    ])
      expect(wishIn(wishTo(wish))).toEqual({ wish });
  });
  it('is refused in words where it is none', () => {
    const text = (value: unknown): string => `1.${Buffer.from(JSON.stringify(value)).toString('base64url')}`;
    const fault = (given: string): string => wishIn(given).fault ?? '';
    expect(fault('')).toBe('it holds none');
    expect(fault('2.e30')).toBe('it comes from another version of this page');
    expect(fault('1.%%%')).toBe('it is cut short or damaged');
    expect(fault(wishTo(start).slice(0, 60))).toBe('it is cut short or damaged');
    expect(fault(`1.${'A'.repeat(20_000)}`)).toBe('it is far too long');
    for (const broken of [
      null,
      [],
      7,
      { ...start, more: 1 },
      { ...start, want: { finestDetailUm: -1 } },
      { ...start, want: { finestDetailUm: Number.NaN } },
      { ...start, frontier: ['goodFieldMm'] },
      { ...start, frontier: ['goodFieldMm', 'goodFieldMm'] },
      { ...start, frontier: ['goodFieldMm', '__proto__'] },
      { ...start, infinitySpacesMm: [] },
      { ...start, infinitySpacesMm: Array.from({ length: 9 }, (_, i) => i) },
      { ...start, sort: { by: 'constructor', first: 'least' } },
      { ...start, objectives: 'everything' },
    ])
      expect(fault(text(broken)), JSON.stringify(broken)).not.toBe('');
  });
  it('starts from the subject of the pairing', () => {
    expect(start.want).toEqual({ subject: { widthMm: 0.9, heightMm: 1.6, depthMm: 0.4 } });
    const { subject: _, ...bare } = OPENING;
    expect(startOf(bare).want).toEqual({});
    expect(startOf({ ...OPENING, subject: { heightMm: 3 } }).want).toEqual({ subject: { widthMm: 3, heightMm: 3 } });
  });
});

describe('the parts that are chosen from', () => {
  const { objective, relay } = OPENING;
  const own = (owned: boolean, price?: number) => ({ owned, version: 1, ...(price === undefined ? {} : { price }) });
  const shelf = {
    objectives: [
      { id: 'mine', part: objective, own: own(true) },
      { id: 'dear', part: objective, own: own(false, 900) },
      { id: 'listed', part: objective },
    ],
    relays: [{ id: 'any', part: relay }],
  };
  const start = startOf(OPENING);
  it('are all, those that are owned, or the pairing’s alone, each with what it still costs', () => {
    const all = questionOf(start, shelf, OPENING);
    if (typeof all === 'string') throw new Error(all);
    expect(all.asked.objectives.map(({ id, owned, price }) => [id, owned, price])).toEqual([
      ['mine', true, undefined],
      ['dear', undefined, 900],
      ['listed', undefined, undefined],
    ]);
    expect(all.more?.relays).toHaveLength(1);
    const mine = questionOf({ ...start, objectives: 'owned' }, shelf, OPENING);
    expect(typeof mine === 'string' ? mine : mine.asked.objectives.map(({ id }) => id)).toEqual(['mine']);
    expect(questionOf({ ...start, relays: 'owned' }, shelf, OPENING)).toBe('no relay');
    const here = questionOf({ ...start, objectives: 'pairing', relays: 'pairing' }, undefined, OPENING);
    expect(typeof here === 'string' ? here : here.asked.objectives).toEqual([{ part: objective, owned: true }]);
    expect(typeof here === 'string' ? here : here.more).toBeUndefined();
    expect(questionOf(start, { objectives: [], relays: [] }, OPENING)).toBe('no objective');
    const many = Array.from({ length: 300 }, (_, i) => ({ id: `r${i}`, part: relay }));
    expect(questionOf(start, { objectives: many.map(({ id }) => ({ id, part: objective })), relays: many }, OPENING)).toBe('too many');
  });
  it('stand at spacings that are typed as a line', () => {
    expect(spacesFrom('30, 60, 90')).toEqual({ spaces: [30, 60, 90] });
    expect(spacesFrom(' 30 or 45.5 mm;45.5')).toEqual({ spaces: [30, 45.5] });
    for (const [text, words] of [
      ['', 'Put in one length'],
      ['30, far', '‘far’ is no length'],
      ['-3', '‘-3’ is no length'],
      ['1 2 3 4 5 6 7 8 9', '9 lengths are too many'],
      ['99999', 'Put in lengths from 0 to 2000 mm'],
    ] as const)
      expect(spacesFrom(text).fault, text).toContain(words);
  });
});

describe('one part more', () => {
  it('is told with what is owned, and each shift with what it was', () => {
    const owned = { objectives: 2, relays: 1, feasible: 0 };
    expect(ownedSaid({ owned, openings: [], others: 0 })).toBe(
      'With your 2 objectives and 1 relay no pairing gives what is asked. There is no part that is not yours.',
    );
    expect(ownedSaid({ owned: { ...owned, feasible: 4 }, openings: [], others: 31 })).toBe(
      'With your 2 objectives and 1 relay 4 pairings give what is asked. None of the 31 parts that are not yours opens anything.',
    );
    expect(shiftsSaid([{ figure: 'workingFNumber', from: known(20, '1'), to: known(14, '1'), difference: known(-6, '1') }])).toBe(
      'working f-number f/14 in the place of f/20',
    );
  });

  it('says what to ask a seller for: threads, and the least room before the lens', () => {
    const free = (low: number) => ({ figures: { clearWorkingDistanceMm: { ...known(20), low } } }) as unknown as Choice;
    const objective = { magnification: 10, na: 0.25, referenceFocalLengthMm: 200 };
    expect(lookFor({ kind: 'objective', part: { ...objective, mountThread: 'M26 x 36 TPI' }, best: free(18.46) })).toEqual([
      'thread M26 x 36 TPI',
      'at least 18.4 mm free before the lens',
    ]);
    expect(
      lookFor({ kind: 'objective', part: objective, best: { figures: { clearWorkingDistanceMm: { state: 'unknown' } } } as never }),
    ).toEqual(['ask for its thread', 'ask for its working distance']);
    expect(
      lookFor({ kind: 'relay', part: { kind: 'supplementary', maleThread: '58 x 0.75', femaleThread: '58 x 0.75' }, best: free(1) }),
    ).toEqual(['thread male 58 x 0.75 and female 58 x 0.75']);
  });
});
