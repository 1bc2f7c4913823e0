import { describe, expect, it } from 'vitest';
import { type Answer, COMPARED, type ComparedId, type Row, rowsOf, standingOf } from '../../../core/index.ts';

const known = (value: number, low = value, high = value): Answer => ({ state: 'known', value, unit: 'mm', low, high, origin: 'marked' });
const unknown: Answer = { state: 'unknown', unit: 'mm', missing: ['/relay/clearApertureMm'] };
const endless: Answer = { state: 'unlimited', unit: 'mm' };
const none: Answer = { state: 'none', unit: 'mm', why: 'one of the two is without limit' };

describe('how a figure stands to another', () => {
  it('is level from under a hundredth of the larger of the two, whatever their sign', () => {
    // 1 of 100 is a hundredth; of 99.5 it is more.
    expect(standingOf(known(1), known(99), known(100))).toBe('more');
    expect(standingOf(known(-1), known(100), known(99))).toBe('less');
    expect(standingOf(known(0.995), known(99.005), known(100))).toBe('level');
    expect(standingOf(known(-0.995), known(100), known(99.005))).toBe('level');
    expect(standingOf(known(0.995), known(-100), known(-99.005))).toBe('level');
    expect(standingOf(known(-0.995), known(-99.005), known(-100))).toBe('level');
  });

  it('is level where the ± of the difference reach nothing, if only just', () => {
    expect(standingOf(known(5, 0, 10), known(100), known(105))).toBe('level');
    expect(standingOf(known(-5, -10, 0), known(105), known(100))).toBe('level');
    expect(standingOf(known(5, 0.01, 10), known(100), known(105))).toBe('more');
    expect(standingOf(known(-5, -10, -0.01), known(105), known(100))).toBe('less');
    const { low: _, ...open } = known(5, 1, 10) as Extract<Answer, { state: 'known' }>;
    expect(standingOf(open, known(100), known(105))).toBe('level');
    const { high: __, ...above } = known(-5, -6, -1) as Extract<Answer, { state: 'known' }>;
    expect(standingOf(above, known(105), known(100))).toBe('level');
  });

  it('is level where neither has a limit, and not known where one alone has none, or is not known', () => {
    expect(standingOf(none, endless, endless)).toBe('level');
    expect(standingOf(none, endless, known(5))).toBe('not known');
    expect(standingOf(none, known(5), endless)).toBe('not known');
    expect(standingOf(known(5), unknown, known(5))).toBe('not known');
    expect(standingOf(known(5), known(5), unknown)).toBe('not known');
    expect(standingOf(unknown, known(5), known(5))).toBe('not known');
  });
});

describe('a row of pairings abreast', () => {
  const rows = (values: readonly Answer[]): Record<ComparedId, Row> => {
    const every = (answer: Answer) => Object.fromEntries(COMPARED.map((id) => [id, answer])) as Record<ComparedId, Answer>;
    const less = (of: Answer | undefined, from: Answer | undefined): Answer =>
      of?.state === 'known' && from?.state === 'known' ? known(of.value - from.value) : unknown;
    const told = rowsOf({ answers: values.map(every), difference: (from, of) => every(less(values[of], values[from])) });
    return Object.fromEntries(told.map((row) => [row.id, row])) as Record<ComparedId, Row>;
  };
  const ends = ({ best, worst, first, last, firstOpen, lastOpen }: Row) => ({ best, worst, first, last, firstOpen, lastOpen });
  const nobody = { best: undefined, worst: undefined, first: [], last: [], firstOpen: false, lastOpen: false };

  it('has a best and a worst where one way is better, which may be less', () => {
    const { objectFieldWidthMm, totalLengthMm, systemMagnification } = rows([known(3), known(9), known(5)]);
    expect(ends(objectFieldWidthMm)).toEqual({ ...nobody, best: 1, worst: 0 });
    expect(ends(totalLengthMm)).toEqual({ ...nobody, best: 0, worst: 1 });
    // A magnification is chosen: none of them is the best.
    expect(ends(systemMagnification)).toEqual(nobody);
  });

  it('says of what is chosen nothing, known or not', () => {
    expect(ends(rows([known(3)]).systemMagnification)).toEqual(nobody);
    expect(ends(rows([known(3), unknown]).systemMagnification)).toEqual(nobody);
  });

  it('leaves both ends open between two of which one is not known', () => {
    expect(ends(rows([known(3), unknown]).totalLengthMm)).toEqual({ ...nobody, firstOpen: true, lastOpen: true });
    expect(ends(rows([unknown, unknown]).totalLengthMm)).toEqual({ ...nobody, firstOpen: true, lastOpen: true });
    expect(ends(rows([known(3), known(3)]).totalLengthMm)).toEqual(nobody);
  });

  it('differs from itself by nothing, or by as little as is known of it', () => {
    const { totalLengthMm } = rows([known(3, 2, 4), unknown]);
    expect(totalLengthMm.differences[0]?.[0]).toEqual({ state: 'known', value: 0, unit: 'mm', low: 0, high: 0, origin: 'marked' });
    expect(totalLengthMm.differences[1]?.[1]).toEqual(unknown);
    expect(totalLengthMm.stands).toEqual([
      ['level', 'not known'],
      ['not known', 'not known'],
    ]);
  });
});
