import { describe, expect, it } from 'vitest';
import type { Law, Value } from '../../../core/checked/check.ts';
import { type Answers, asked, checking, type Progress } from '../../../core/checked/checking.ts';
import { SOURCES } from '../../../core/checked/sources.ts';
import { LAWS, SUBJECTS, type Subject } from '../../../core/checked/subjects.ts';
import { placedIn, summaryOf } from '../../../core/checked.ts';

function run(subjects: readonly Subject[] = SUBJECTS, laws: readonly Law[] = LAWS): { answers: readonly Answers[]; steps: Progress[] } {
  const steps: Progress[] = [];
  const work = checking(subjects, laws);
  for (;;) {
    const step = work.next();
    if (step.done) return { answers: step.value, steps };
    steps.push(step.value);
  }
}

const subject = (title: string, ...values: Value[]): Subject => ({
  title,
  checks: [{ id: 'X-1', claim: 'a claim', source: 'homework', known: 'read', how: 'so', values }],
});
const law = (...pairs: (readonly [number, number])[]): Law => ({ law: 'a law', figures: [], pairs: () => pairs });

describe('checking', () => {
  it('goes one number a step, printed ones first; a law counts as one, and is done with its last pair', () => {
    const subjects = [
      subject('A', { printed: '1', of: () => 1 }, { what: 'two', printed: '2', of: () => 3 }),
      subject('B', { printed: '1', of: () => 1 }),
    ];
    const { steps, answers } = run(subjects, [law([1, 1], [2, 2]), law([1, 2])]);
    expect(steps).toEqual([1, 2, 3, 3, 3, 4].map((done) => ({ done, of: 5 })));
    expect(answers.map(({ title, published }) => [title, published])).toEqual([
      ['A', true],
      ['B', true],
      ['Laws that hold exactly', false],
    ]);
    expect(placedIn(answers).map(({ value }) => value.holds)).toEqual([true, false, true, true, true, false]);
  });
  it('carries a check over as it stands, its source in neutral words, its figure and rig where it has them', () => {
    const rig = () => ({ pairing: {} as never, settings: {} });
    const [{ entries }] = run([subject('A', { printed: '1', of: () => 1, figure: 'systemNa', rig }, { printed: '2', of: () => 2 })], [])
      .answers as [Answers];
    expect(entries[0]).toMatchObject({ id: 'X-1', claim: 'a claim', source: SOURCES.homework, known: 'read', how: 'so' });
    const [first, second] = entries[0]?.values ?? [];
    expect(first).toMatchObject({ figure: 'systemNa', rig });
    expect(Object.keys(second ?? {})).not.toContain('figure');
    expect(Object.keys(second ?? {})).not.toContain('rig');
  });
  it('tells of a law what it says, and that it is one by definition', () => {
    const [{ entries }] = run([], [law([1, 1])]).answers as [Answers];
    expect(entries[0]).toMatchObject({ id: '', claim: 'a law', source: 'plain geometry or a definition', known: 'by definition', how: '' });
  });
});

describe('all checks', () => {
  it('agree, and are counted one by one; the one that is named lies nearest to its limit', () => {
    const { answers, steps } = run();
    const { failing, numbers, equalities, nearest, median } = summaryOf(answers);
    expect(failing).toEqual([]);
    expect(numbers + LAWS.length).toBe(asked());
    expect(equalities).toBe(LAWS.reduce((sum, { pairs }) => sum + [...pairs()].length, 0));
    expect(steps.length).toBe(numbers + equalities);
    expect(steps.map(({ done }) => done)).toEqual(steps.map(({ done }) => done).toSorted((a, b) => a - b));
    expect(steps.at(-1)?.done).toBeLessThanOrEqual(asked());
    const places = placedIn(answers.filter(({ published }) => published)).map(({ value }) => Math.abs(value.place));
    expect(Math.abs(nearest?.value.place as number)).toBe(Math.max(...places));
    expect(places.filter((place) => place < median).length).toBe(Math.floor(places.length / 2));
  });
});
