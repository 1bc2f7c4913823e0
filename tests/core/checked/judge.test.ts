import { describe, expect, it } from 'vitest';
import { EXACT, judge, judging, USUAL } from '../../../core/checked/judge.ts';

const broken = (what: unknown) => (): never => {
  throw what;
};

describe('a printed number', () => {
  it('is told with two digits more, its tolerance, and where within that it falls', () => {
    const told = judge({ what: 'w', printed: '-2.5', of: () => -2.5125 });
    expect(told).toMatchObject({ what: 'w', expected: '−2.5', shown: '−2.513', holds: true, why: USUAL });
    expect(told.place).toBeCloseTo(-0.25, 6);
    const slack = { of: () => 0.95, why: 'this' };
    const wide = judge({ printed: '5.6', of: () => 6.6, slack });
    expect(wide).toMatchObject({ holds: true, place: expect.closeTo(1, 6), why: `${USUAL}, and what this adds` });
    expect(judge({ printed: '5.6', of: () => 6.7, slack }).holds).toBe(false);
  });
  it('of which digits are cut off lies above, and its tolerance says so', () => {
    expect(judge({ printed: '5.6', of: () => 5.65, cutOff: true })).toMatchObject({
      holds: true,
      place: expect.closeTo(0, 6),
      why: 'a whole unit of its last digit, upward: digits are cut off',
    });
    expect(judge({ printed: '5.6', of: () => 5.675, cutOff: true }).place).toBeCloseTo(0.5, 6);
    expect(judge({ printed: '5.6', of: () => 5.59, cutOff: true }).holds).toBe(false);
  });
  it('that is nought has no sign', () => {
    expect(judge({ printed: '0.00', of: () => -1e-9 })).toMatchObject({ shown: '0.0000', holds: true });
    expect(judge({ printed: '0.00', of: () => -0 }).computed).toBe(0);
    expect(judge({ printed: '0.00', of: () => -0.0012 }).shown).toBe('−0.0012');
  });
  it('does not hold where the number of another convention comes out', () => {
    expect(judge({ printed: '9', of: () => 8.8, not: ['8.80'] })).toMatchObject({
      holds: false,
      fault: '8.80 of another convention comes out',
      why: `${USUAL}; not 8.80, by other conventions`,
    });
    expect(judge({ printed: '9', of: () => 8.9, not: ['8.80', '1'] })).toMatchObject({
      holds: true,
      why: `${USUAL}; not 8.80 nor 1, by other conventions`,
    });
    expect(judge({ printed: '9', of: () => 7, not: ['8.80'] })).not.toHaveProperty('fault');
  });
  it('does not hold, and says why, where nothing or no number comes out', () => {
    for (const [of, fault] of [
      [broken(new Error('it broke')), 'it broke'],
      [broken('a word'), 'a word'],
      [() => Number.NaN, 'no number comes out'],
      [() => Number.POSITIVE_INFINITY, 'no number comes out'],
    ] as const) {
      const told = judge({ printed: '1', of });
      expect(told).toMatchObject({ holds: false, shown: 'nothing', expected: '1', fault, place: 0 });
      expect(told.computed).toBeUndefined();
      expect(told.room.every((room) => room > 0.49 && room < 0.51)).toBe(true);
    }
    expect(judge({ printed: '1', of: broken(new Error('so')), cutOff: true }).room[1]).toBeCloseTo(1, 6);
  });
});

describe('a law', () => {
  const only = (core: number, due: number) => [...judging({ pairs: () => [[core, due]] })][0];
  it('holds to a thousand-millionth, of 1 or of the number, and not beyond', () => {
    expect([only(2e6 * (1 + 9e-10), 2e6)?.holds, only(2e6 * (1 + 1.1e-9), 2e6)?.holds]).toEqual([true, false]);
    expect([only(-0.5 + 9e-10, -0.5)?.holds, only(-0.5 + 1.1e-9, -0.5)?.holds]).toEqual([true, false]);
    expect([only(1e-9, 0)?.holds, only(-1e-9, 0)?.holds]).toEqual([true, true]);
  });
  it('is told to ten digits, with how much of its room is taken up', () => {
    expect(only(1 / 3, 1 / 3)).toEqual({
      what: '',
      expected: '0.3333333333',
      computed: 1 / 3,
      shown: '0.3333333333',
      room: [1e-9, 1e-9],
      place: 0,
      why: EXACT,
      holds: true,
    });
    expect(only(0.25 - 5e-10, 0.25)?.place).toBeCloseTo(-0.5, 5);
    expect(only(-0, 0)?.computed).toBe(0);
  });
  it('for which no number comes out fails, and says so', () => {
    const fault = { holds: false, shown: 'nothing', why: EXACT, fault: 'no number comes out' };
    expect(only(Number.NaN, 1)).toMatchObject({ ...fault, expected: '1' });
    expect(only(Number.POSITIVE_INFINITY, 2)).toMatchObject({ ...fault, expected: '2' });
    expect(only(Number.NaN, 1)?.computed).toBeUndefined();
  });
  it.each([
    [new Error('it broke'), 'it broke'],
    ['a word', 'a word'],
  ])('that breaks on its way fails, with what came before', (thrown, said) => {
    const pairs = function* (): Generator<readonly [number, number]> {
      yield [1, 1];
      throw thrown;
    };
    expect([...judging({ pairs })].map(({ holds, fault }) => [holds, fault])).toEqual([
      [true, undefined],
      [false, said],
    ]);
    expect([...judging({ pairs })][1]).toMatchObject({ expected: 'an equality', shown: 'nothing', room: [1e-9, 1e-9], why: EXACT });
  });
});
