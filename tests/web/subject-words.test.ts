import { describe, expect, it } from 'vitest';
import type { Choice, LimitAnswer } from '../../core/choosing.ts';
import type { FigureId } from '../../core/index.ts';
import { wantFrom } from '../../web/subject/blanks.ts';
import type { Found, Miss } from '../../web/subject/choose-task.ts';
import { entriesOf, levelOf, spacesOf, spacingsOf } from '../../web/subject/entries.ts';
import { excluding, loosened, looserSaid, loosers } from '../../web/subject/loosen.ts';
import { lookFor, ownedSaid, shiftsSaid } from '../../web/subject/one-more-words.ts';
import { answerOf, countsOf, figuresFor, levelSaid, missSaid, priceSaid, standsOf, stopsMost, wouldSaid } from '../../web/subject/told.ts';
import { choice, known, OPENING } from './a-choice.ts';

/** What the view From the subject says and draws, without a browser. */

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
