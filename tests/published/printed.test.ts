import { describe, expect, it } from 'vitest';
import { agrees, printed } from './printed.ts';

describe('the tolerance of a printed number', () => {
  it('is half a unit of its last digit', () => {
    expect(printed('232.7')).toEqual({ value: 232.7, unit: 0.1 });
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
  it('reads signs, and refuses what is not a printed number', () => {
    expect(agrees(-366.7, '−367')).toBe(true);
    expect(agrees(366.7, '−367')).toBe(false);
    expect(agrees(Number.NaN, '1')).toBe(false);
    expect(() => printed('about 3')).toThrow();
  });
});
