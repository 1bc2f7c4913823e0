import { describe, expect, it } from 'vitest';
import type { Answered, Answers } from '../../../core/checked/checking.ts';
import { checkedSays, placedIn, type Summary, summaryOf } from '../../../core/checked/says.ts';

/** A number at a place within its room; beyond it, it fails. */
const at = (place: number, what = '', fault?: string): Answered => ({
  what,
  expected: '1.00',
  computed: 1 + 0.005 * place,
  shown: (1 + 0.005 * place).toFixed(4),
  room: [0.005, 0.005],
  place,
  why: 'so',
  holds: Math.abs(place) <= 1,
  ...(fault ? { fault } : {}),
});
const answers = (published: boolean, ...entries: (readonly [source: string, ...values: Answered[]])[]): Answers => ({
  title: 'A subject',
  published,
  entries: entries.map(([source, ...values], i) => ({ id: `X-${i}`, claim: `claim ${i}`, source, known: 'read', how: 'so', values })),
});
const LAWS = answers(false, ['geometry', at(0), at(0.99)]);
const says = (...all: Answers[]): readonly string[] => checkedSays(summaryOf(all));

describe('what all checks come to', () => {
  it('counts numbers, their sources and equalities apart', () => {
    const all = [answers(true, ['a', at(0.1), at(-0.2)], ['b', at(0.3)]), answers(true, ['a', at(0)]), LAWS];
    expect(summaryOf(all)).toMatchObject({ numbers: 4, sources: 2, equalities: 2, failing: [] });
    expect(placedIn(all).map(({ entry, value }) => [entry.claim, value.place])).toEqual([
      ['claim 0', 0.1],
      ['claim 0', -0.2],
      ['claim 1', 0.3],
      ['claim 0', 0],
      ['claim 0', 0],
      ['claim 0', 0.99],
    ]);
  });
  it('names the printed number that lies nearest to either end, and where half of them lie', () => {
    const { nearest, median } = summaryOf([answers(true, ['a', at(0.4), at(-0.9), at(0.1)], ['b', at(-0.6), at(0.2)]), LAWS]);
    expect(nearest?.value.place).toBe(-0.9);
    expect(median).toBe(0.4);
    // Of an even number of them the upper one of the two in the middle.
    expect(summaryOf([answers(true, ['a', at(0.5), at(0.1), at(-0.3), at(0.7)])]).median).toBe(0.5);
  });
  it('leaves what fails out of that, and has it by itself, laws among it', () => {
    const { nearest, median, failing, numbers } = summaryOf([
      answers(true, ['a', at(0.4), at(3), at(0.1)]),
      answers(false, ['g', at(-7), at(0)]),
    ]);
    expect([nearest?.value.place, median, numbers]).toEqual([0.4, 0.4, 3]);
    expect(failing.map(({ value }) => value.place)).toEqual([3, -7]);
  });
  it('has nothing nearest where nothing was printed', () => {
    expect(summaryOf([LAWS])).toEqual({
      numbers: 0,
      sources: 0,
      equalities: 2,
      failing: [],
      nearest: undefined,
      median: 0,
    } satisfies Summary);
  });
});

describe('in words', () => {
  it('all agree, and the nearest to its limit is named', () => {
    expect(says(answers(true, ['a', at(0.4), at(-0.8, 'w')]), LAWS)).toEqual([
      '2 published numbers from 1 sources and 2 equalities that must hold exactly are worked out anew here as you read. All agree within the digits that were printed.',
      'The nearest to its limit is printed as 1.00 and comes out as 0.9960 (w): claim 0.',
    ]);
    expect(says(LAWS)).toHaveLength(1);
  });
  it('one fails: it comes first, by both numbers, what it is and what broke', () => {
    expect(says(answers(true, ['a', at(4, 'one', 'a fault'), at(0)]), LAWS)).toEqual([
      'One number does not agree on this machine. Trust nothing here that rests on it until it is known why.',
      'Expected is 1.00 but what comes out is 1.0200, for a fault (one): claim 0.',
      'Worked out were 2 published numbers from 1 sources and 2 equalities that must hold exactly.',
    ]);
    expect(says(answers(true, ['a', at(4)]))[1]).toBe('Expected is 1.00 but what comes out is 1.0200: claim 0.');
  });
  it('three are named, and those beyond are counted', () => {
    const three = says(answers(true, ['a', at(2, 'x'), at(3, 'y'), at(4, 'z')]));
    expect(three[0]).toBe('3 numbers do not agree on this machine. Trust nothing here that rests on them until it is known why.');
    expect(three.length).toBe(5);
    expect(says(answers(true, ['a', at(2), at(3), at(4), at(5)]))[4]).toBe('And 1 more, below.');
    const five = says(answers(true, ['a', at(2, 'x'), at(3, 'y'), at(4, 'z'), at(5, 'v')]), answers(false, ['g', at(6)]));
    expect(five[0]).toMatch(/^5 numbers do not/);
    expect(five.slice(1, 4).map((line) => line.match(/\((.)\)/)?.[1])).toEqual(['x', 'y', 'z']);
    expect(five[4]).toBe('And 2 more, below.');
    expect(five[5]).toMatch(/^Worked out were 4 published numbers/);
    expect(five.length).toBe(6);
  });
});
