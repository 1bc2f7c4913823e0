import { describe, expect, it } from 'vitest';
import { earned, listed, percent, short } from '../../core/index.ts';
import { article, atLeast, atMost, duration } from '../../core/words.ts';

describe('numbers in words', () => {
  it('keep three digits and no idle zeros', () => {
    expect([short(10), short(3.6), short(18.3048), short(392.97), short(0.0123456), short(-8.1)]).toEqual([
      '10',
      '3.6',
      '18.3',
      '393',
      '0.0123',
      '−8.1',
    ]);
    expect(short(1234567)).toBe('1230000');
  });
  it('tell shares as percent, small ones with a digit more', () => {
    expect([percent(0), percent(0.0024), percent(0.045), percent(0.32), percent(1)]).toEqual(['0 %', '0.2 %', '4.5 %', '32 %', '100 %']);
  });
  // Two digits of an uncertainty are as many as make sense: JCGM 100:2008, 7.2.6.
  it('show the digits that ± has earned', () => {
    expect(earned(12.3456, 12, 12.7)).toBe('12.35');
    expect(earned(12.3456, 9, 16)).toBe('12.3');
    expect(earned(0.3204, 0.0025, 0.789)).toBe('0.32');
    expect(earned(257.12, 231, 283)).toBe('257');
    expect(earned(199.987, 190, 210)).toBe('200');
    expect(earned(12.3456, 12.3456, 12.3456)).toBe('12.3');
    expect(earned(0.123456, undefined, undefined)).toBe('0.123');
    expect([earned(152.44, undefined, undefined), earned(1234, undefined, undefined)]).toEqual(['152.4', '1234']);
    expect(earned(0, -1, 1)).toBe('0');
    expect(earned(3, -100, 100)).toBe('3');
  });
  it('round to the safe side', () => {
    expect([atLeast(393.33), atLeast(43.267), atLeast(256), atLeast(1.001), atLeast(1234)]).toEqual(['394', '43.3', '256', '1.01', '1240']);
    expect([atMost(41.89), atMost(18.49), atMost(100), atMost(0.29999)]).toEqual(['41.8', '18.4', '100', '0.299']);
    expect([atLeast(0.1 + 0.2), atMost(0.3)]).toEqual(['0.3', '0.3']);
  });
  it('have their article', () => {
    expect(['85', '800', '11', '18.5', '110', '256', '180'].map(article)).toEqual(['an', 'an', 'an', 'an', 'a', 'a', 'a']);
  });
  it('list with an and', () => {
    expect([listed([]), listed(['a']), listed(['a', 'b']), listed(['a', 'b', 'c'])]).toEqual(['', 'a', 'a and b', 'a, b and c']);
  });
  it('tell shares below 1 % with one digit, below 10 % with two, from there in whole ones, of losses as of gains', () => {
    expect([0.0099, 0.00999, 0.01, 0.0123, 0.0994, 0.0999, 0.1, 0.104, 0.105].map(percent)).toEqual([
      '1 %',
      '1 %',
      '1 %',
      '1.2 %',
      '9.9 %',
      '10 %',
      '10 %',
      '10 %',
      '11 %',
    ]);
    expect([-0.0024, -0.045, -0.123].map(percent)).toEqual(['−0.2 %', '−4.5 %', '−12 %']);
  });
  it('of hundreds and of whole numbers show four digits where nothing is said of their ±, of others three', () => {
    const bare = (x: number): string => earned(x, undefined, undefined);
    expect([99.94, 100, 100.04, -100.04, -99.94, 12345, 1.2345].map(bare)).toEqual([
      '99.9',
      '100',
      '100',
      '−100',
      '−99.9',
      '12350',
      '1.23',
    ]);
    expect([100.14, -100.14].map(bare)).toEqual(['100.1', '−100.1']);
  });
  it('show no more than four digits, however small the ±, and no less than one', () => {
    expect(earned(12.34567, 12.34566, 12.34568)).toBe('12.35');
    expect(earned(2.6, -50, 60)).toBe('3');
    expect(earned(-12.3456, -12.7, -12)).toBe('−12.35');
    expect(earned(0, 0, 0)).toBe('0');
    expect(earned(3, Number.NEGATIVE_INFINITY, 4)).toBe('3');
  });
});

describe('durations', () => {
  it('are seconds up to a minute and a half, then minutes, from two hours on hours, each with what is left over', () => {
    expect([0.5, 89.6, 90, 90.4, 90.6, 120].map(duration)).toEqual(['0.5 s', '89.6 s', '1 min 30 s', '1 min 30 s', '1 min 31 s', '2 min']);
    // 7199.4 s are two hours less a second; 7199.6 s are rounded to two hours; 7229 s to 120 minutes, 7231 s to 121.
    expect([7199.4, 7199.6, 7229, 7231, 9000].map(duration)).toEqual(['119 min 59 s', '2 h', '2 h', '2 h 1 min', '2 h 30 min']);
  });
});
