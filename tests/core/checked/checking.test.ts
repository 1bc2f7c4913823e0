import { describe, expect, it } from 'vitest';
import type { Law, Value } from '../../../core/checked/check.ts';
import { judge, judging } from '../../../core/checked/judge.ts';
import { toldOn } from '../../../core/checked/rig.ts';
import { LAWS, SUBJECTS, type Subject } from '../../../core/checked/subjects.ts';
import {
  type Answers,
  asked,
  checkedSays,
  checking,
  EXACT,
  isOfTable,
  placedIn,
  type Summary,
  summaryOf,
  USUAL,
  workingThere,
} from '../../../core/checked.ts';
import { glassworks } from '../../../core/glassworks.ts';
import { numberIn, report } from '../../../core/index.ts';
import { evaluateTable } from '../../../core/table.ts';

function run(subjects: readonly Subject[] = SUBJECTS, laws: readonly Law[] = LAWS): { answers: readonly Answers[]; steps: number[] } {
  const steps: number[] = [];
  const work = checking(subjects, laws);
  for (;;) {
    const step = work.next();
    if (step.done) return { answers: step.value, steps };
    steps.push(step.value.done / step.value.of);
  }
}

const subject = (...values: Value[]): Subject[] => [
  { title: 'A subject', checks: [{ id: 'X-1', claim: 'a claim', source: 'homework', known: 'read', how: 'so', values }] },
];
const law = (...pairs: (readonly [number, number])[]): Law[] => [{ law: 'a law', figures: [], pairs: () => pairs }];
const saysOf = (answers: readonly Answers[]): readonly string[] => checkedSays(summaryOf(answers));

describe('a printed number', () => {
  it('is told with two digits more, its tolerance, and where within that it falls', () => {
    const told = judge({ what: 'w', printed: '-2.5', of: () => -2.5125 });
    expect(told).toMatchObject({ what: 'w', expected: '−2.5', shown: '−2.513', holds: true, why: USUAL });
    expect(told.place).toBeCloseTo(-0.25, 6);
    expect(judge({ printed: '0.00', of: () => -1e-9 })).toMatchObject({ shown: '0.0000', holds: true });
    expect(judge({ printed: '5.6', of: () => 5.65, cutOff: true })).toMatchObject({ holds: true, place: expect.closeTo(0, 6) });
    const slack = { of: () => 0.95, why: 'this' };
    const wide = judge({ printed: '5.6', of: () => 6.6, slack });
    expect(wide).toMatchObject({ holds: true, place: expect.closeTo(1, 6), why: `${USUAL}, and what this adds` });
    expect(judge({ printed: '5.6', of: () => 6.7, slack }).holds).toBe(false);
  });
  it('does not hold where the number of another convention comes out', () => {
    expect(judge({ printed: '9', of: () => 8.8, not: ['8.80'] })).toMatchObject({
      holds: false,
      fault: '8.80 of another convention comes out',
    });
    expect(judge({ printed: '9', of: () => 8.9, not: ['8.80', '1'] })).toMatchObject({
      holds: true,
      why: `${USUAL}; not 8.80 nor 1, by other conventions`,
    });
  });
  it('does not hold, and says why, where nothing or no number comes out', () => {
    const broken = (): number => {
      throw new Error('it broke');
    };
    for (const [of, fault] of [
      [broken, 'it broke'],
      [() => Number.NaN, 'no number comes out'],
      [() => Number.POSITIVE_INFINITY, 'no number comes out'],
    ] as const) {
      const told = judge({ printed: '1', of });
      expect(told).toMatchObject({ holds: false, shown: 'nothing', fault, place: 0 });
      expect(told.computed).toBeUndefined();
      expect(told.room.every((room) => room > 0.49 && room < 0.51)).toBe(true);
    }
  });
});

describe('a law', () => {
  it('holds to a thousand-millionth, of 1 or of the number, and not beyond', () => {
    const holds = (core: number, due: number): boolean[] => [...judging({ pairs: () => [[core, due]] })].map((pair) => pair.holds);
    expect([holds(2e6 * (1 + 9e-10), 2e6), holds(2e6 * (1 + 1.1e-9), 2e6)]).toEqual([[true], [false]]);
    expect([holds(-0.5 + 9e-10, -0.5), holds(-0.5 + 1.1e-9, -0.5)]).toEqual([[true], [false]]);
    expect([...judging({ pairs: () => [[Number.NaN, 1]] })][0]).toMatchObject({ holds: false, expected: '1', why: EXACT });
  });
  it('that breaks on its way fails, with what came before', () => {
    const pairs = function* (): Generator<readonly [number, number]> {
      yield [1, 1];
      throw new Error('it broke');
    };
    expect([...judging({ pairs })].map(({ holds, fault }) => [holds, fault])).toEqual([
      [true, undefined],
      [false, 'it broke'],
    ]);
  });
});

describe('all checks', () => {
  const { answers, steps } = run();
  const summary = summaryOf(answers);

  it('agree, and are counted one by one', () => {
    expect(summary.failing).toEqual([]);
    expect(summary.numbers + LAWS.length).toBe(asked());
    expect(summary.equalities).toBe(LAWS.reduce((sum, { pairs }) => sum + [...pairs()].length, 0));
    expect(steps.length).toBe(summary.numbers + summary.equalities);
    expect(steps).toEqual(steps.toSorted((a, b) => a - b));
    expect(steps.at(-1)).toBeLessThanOrEqual(1);
    expect(saysOf(answers)[0]).toContain(`${summary.numbers} published numbers from ${summary.sources} sources`);
  });

  it('name the one that is nearest to its limit', () => {
    const { nearest, median } = summary as Required<Summary> & { nearest: NonNullable<Summary['nearest']> };
    const places = placedIn(answers.filter(({ published }) => published)).map(({ value }) => Math.abs(value.place));
    expect(Math.abs(nearest.value.place)).toBe(Math.max(...places));
    expect(places.filter((place) => place < median).length).toBe(Math.floor(places.length / 2));
    expect(saysOf(answers)[1]).toContain(nearest.entry.claim);
  });

  it('fall in the figure that their rig has in a whole report or on a whole table, and have a working there', () => {
    const works = glassworks();
    const figures = new Map(
      placedIn(answers).flatMap(({ value: { figure, rig } }) => (figure && rig ? [[figure, { figure, rig }] as const] : [])),
    );
    expect(figures.size).toBeGreaterThan(30);
    for (const { figure, rig } of figures.values()) {
      const there = rig();
      const { figures: all, vignetting } = report(there.pairing, works);
      const whole = isOfTable(figure)
        ? evaluateTable(there.pairing, there.settings, works).answers[figure]
        : { ...all, ...vignetting }[figure as keyof typeof all];
      expect(toldOn(there, figure, works), figure).toBe(numberIn(whole));
      expect(workingThere(figure, there).numbers, figure).toMatch(/\d/);
    }
  });
});

describe('what is said', () => {
  it('puts first what fails, by its name and both numbers', () => {
    const { answers } = run(
      subject({ what: 'one', printed: '1.00', of: () => 1.02 }, { what: 'two', printed: '2', of: () => 2 }),
      law([1, 1]),
    );
    const says = saysOf(answers);
    expect(says[0]).toMatch(/^One number does not agree on this machine/);
    expect(says[1]).toBe('Expected is 1.00 but what comes out is 1.0200 (one): a claim.');
    expect(says.at(-1)).toContain('Worked out were 2 published numbers');
  });
  it('names three, and counts the others, laws among them', () => {
    const wrong: Value[] = ['a', 'b', 'c'].map((what) => ({ what, printed: '1', of: () => 3 }));
    const says = saysOf(run(subject(...wrong), law([1, 2], [1, 1])).answers);
    expect(says[0]).toMatch(/^4 numbers do not agree/);
    expect(says).toContain('And 1 more, below.');
    expect(says.length).toBe(6);
  });
  it('has nothing nearest where nothing was printed', () => {
    expect(saysOf(run([], law([1, 1])).answers)).toHaveLength(1);
  });
});
