import { describe, expect, it } from 'vitest';
import { agrees, printed, span } from '../../../core/checked/printed.ts';

describe('the tolerance of a printed number', () => {
  it('is half a unit of its last digit', () => {
    expect(printed('232.7')).toEqual({ value: 232.7, unit: 0.1, decimals: 1 });
    expect(agrees(232.749, '232.7')).toBe(true);
    expect(agrees(232.651, '232.7')).toBe(true);
    expect(agrees(232.751, '232.7')).toBe(false);
    expect(agrees(232.649, '232.7')).toBe(false);
    expect(agrees(8.806, '8.80')).toBe(false);
  });
  it('is one unit upward where the source cuts digits off', () => {
    expect(agrees(5.657, '5.6', { cutOff: true })).toBe(true);
    expect(agrees(5.7001, '5.6', { cutOff: true })).toBe(false);
    expect(agrees(5.599, '5.6', { cutOff: true })).toBe(false);
  });
  it('spans what would be printed so: either way where digits are rounded, away from zero where they are cut off, and the slack', () => {
    const near = (text: string, rounding = {}): number[] => span(text, rounding).map((end) => Number(end.toFixed(6)));
    expect(near('5.6')).toEqual([5.55, 5.65]);
    expect(near('−5.6', { cutOff: true })).toEqual([-5.7, -5.6]);
    expect(near('5.6', { cutOff: true, slack: 0.02 })).toEqual([5.58, 5.72]);
    expect(near('186')).toEqual([185.5, 186.5]);
  });
  it('reads signs, and refuses what is not a printed number', () => {
    expect(agrees(-366.7, '−367')).toBe(true);
    expect(agrees(366.7, '−367')).toBe(false);
    expect(agrees(Number.NaN, '1')).toBe(false);
    expect(() => printed('about 3')).toThrow();
  });
});
