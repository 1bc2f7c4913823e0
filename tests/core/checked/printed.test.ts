import { describe, expect, it } from 'vitest';
import { agrees, printed, roomOf } from '../../../core/checked/printed.ts';

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
  it('leaves room either way where digits are rounded, away from zero where they are cut off, and for the slack', () => {
    const near = (text: string, rounding = {}): number[] => roomOf(text, rounding).map((room) => Number(room.toFixed(6)));
    expect(near('5.6')).toEqual([0.05, 0.05]);
    expect(near('−5.6', { cutOff: true })).toEqual([0.1, 0]);
    expect(near('5.6', { cutOff: true, slack: 0.02 })).toEqual([0.02, 0.12]);
    expect(near('186')).toEqual([0.5, 0.5]);
    expect(near('−5.6', { cutOff: true, slack: 0.02 })).toEqual([0.12, 0.02]);
    // What is cut off from nought is cut off from above.
    expect(near('0.0', { cutOff: true })).toEqual([0, 0.1]);
  });
  it('goes to its very ends', () => {
    const [below, above] = roomOf('0');
    expect([agrees(-below, '0'), agrees(above, '0')]).toEqual([true, true]);
    expect([agrees(-1.001 * below, '0'), agrees(1.001 * above, '0')]).toEqual([false, false]);
  });
  it('reads signs, and refuses what is not a printed number', () => {
    expect(agrees(-366.7, '−367')).toBe(true);
    expect(agrees(366.7, '−367')).toBe(false);
    expect(agrees(Number.NaN, '1')).toBe(false);
    for (const text of ['about 3', '3.', '3 mm', '']) expect(() => printed(text)).toThrow(`'${text}' is not a printed number`);
  });
});
