import { describe, expect, it } from 'vitest';
import { readSensor } from '../../../../core/engravings.ts';

/** Where one reading of a camera's numbers gives way to another. */

const part = (text: string) => readSensor(text).part;
const pitch = (text: string) => part(text).pixelPitchUm;
const wide = (text: string) => [part(text).widthMm, part(text).heightMm];
const needs = (text: string) => readSensor(text).needs.map((need) => (need.startsWith('width') ? 'sides' : 'pixels'));

describe('formats', () => {
  it('have the sizes that the trade gives them', () => {
    expect(['full frame 4 µm', 'four thirds 4 µm', '1 inch 4 µm', '2/3 inch 4 µm'].map(wide)).toEqual([
      [36, 24],
      [17.3, 13],
      [13.2, 8.8],
      [8.8, 6.6],
    ]);
    const sizes = (text: string) => readSensor(text).asks.map(({ answers }) => answers.map(({ words }) => words));
    expect([sizes('medium format 4 µm'), sizes('APS-C 4 µm')]).toEqual([
      [['43.8 x 32.9 mm', '53.4 x 40 mm']],
      [['23.5 x 15.6 mm', '22.3 x 14.9 mm']],
    ]);
    expect(readSensor('mono APS-C 4 µm').asks[0]?.answers[0]?.text.replace(/\s+/g, ' ')).toBe('23.5 x 15.6 mm mono 4 µm');
  });
  it('are the size, and bare numbers beside them none', () => {
    expect(readSensor('full frame 30 20 4 µm')).toMatchObject({ part: { widthMm: 36, heightMm: 24 }, unread: ['30', '20'] });
    expect(readSensor('APS-C 30 20 4 µm').unread).toEqual(['30', '20']);
    expect(wide('APS-C 30 20 4 µm')).toEqual([undefined, undefined]);
  });
  it('say nothing beside sides that are told', () => {
    expect(wide('full frame 35.9 x 23.9 4 µm')).toEqual([35.9, 23.9]);
    expect(readSensor('APS-C 23.4 x 15.5 4 µm').asks).toEqual([]);
  });
});

describe('two or three bare numbers', () => {
  const none = [undefined, undefined];
  it('are sides where a picture can have them: 2 mm high or more, less than thrice as wide', () => {
    expect([wide('5 2 4 µm'), wide('5 1.9 4 µm'), wide('29.9 10 4 µm'), wide('30 10 4 µm')]).toEqual([[5, 2], none, [29.9, 10], none]);
    expect([wide('36 24 4 µm'), wide('36 4 µm')]).toEqual([[36, 24], none]);
  });
  it('tell no sides where the last two could be them as well, from 1.1 to 1.9', () => {
    expect([wide('36 38.2 20'), wide('36 21.8 20')]).toEqual([
      [36, 38.2],
      [36, 21.8],
    ]);
    expect([wide('36 22 20'), wide('36 38 20'), wide('36 24 22'), wide('36 24 12')]).toEqual([none, none, [36, 24], [36, 24]]);
  });
});

describe('a bare number beside the size', () => {
  const asks = (text: string) => readSensor(text).asks.map(({ answers }) => answers.map((answer) => answer.text));
  it('with decimals is a pitch below ten, millions of pixels above twelve', () => {
    expect([pitch('36 x 24 9.9'), asks('36 x 24 9.9')]).toEqual([9.9, []]);
    expect([pitch('36 x 24 10.1'), asks('36 x 24 10.1')]).toEqual([undefined, [['36 x 24 10.1 µm', '36 x 24 10.1 MP']]]);
    expect([pitch('36 x 24 10.0'), asks('36 x 24 10.0')]).toEqual([undefined, [['36 x 24 10.0 µm', '36 x 24 10.0 MP']]]);
    expect(asks('36 x 24 11.9')).toHaveLength(1);
    expect([pitch('36 x 24 12.1'), asks('36 x 24 12.1')]).toEqual([expect.objectContaining({ value: 8.45 }), []]);
    expect(pitch('4.35')).toBe(4.35);
    expect(readSensor('4.35').unread).toEqual([]);
  });
  it('that is whole is asked about up to thirty, and millions of pixels above', () => {
    expect([asks('36 x 24 30'), pitch('36 x 24 30')]).toEqual([[['36 x 24 30 µm', '36 x 24 30 MP']], undefined]);
    // 864 mm² over 31 million.
    expect([asks('36 x 24 31'), pitch('36 x 24 31')]).toEqual([[], expect.objectContaining({ value: 5.28 })]);
    expect(readSensor('36 x 24 30').unread).toEqual([]);
    expect(readSensor('36 x 24 30').part).not.toHaveProperty('pixelPitchUm');
    expect(asks('24 36 x 24')).toEqual([['24 µm 36 x 24', '24 MP 36 x 24']]);
    expect(asks('full frame 24')).toHaveLength(1);
  });
  it('beside pixels that are told is their number, where it is as large', () => {
    expect(readSensor('36 x 24 6 µm 24')).toMatchObject({ part: { pixelPitchUm: 6 }, asks: [] });
    expect(readSensor('36 x 24 6 µm 24').unread).toEqual(['24']);
    expect(readSensor('36 x 24 6000 x 4000 24')).toMatchObject({ part: { columns: 6000, rows: 4000 }, unread: ['24'], asks: [] });
    expect(readSensor('36 x 24 24 MP 7')).toMatchObject({ part: { pixelPitchUm: { value: 6 } }, unread: ['7'] });
    expect(readSensor('36 x 24 5 µm 35').unread).toEqual([]);
    expect(readSensor('36 x 24 5 µm 50').unread).toEqual(['50 MP']);
    expect(readSensor('24').unread).toEqual(['24']);
    expect(needs('24')).toEqual(['sides', 'pixels']);
    expect(readSensor('45').unread).toEqual(['45']);
    expect([readSensor('45.7').unread, needs('45.7')]).toEqual([[], ['sides']]);
  });
});

describe('millions of pixels', () => {
  it('are as loose as their last digit and the sides', () => {
    // √(864 / 24) = 6 µm; a half of 24 or a twentieth of 24.0, halved by the root, and 1 % of the sides.
    expect(pitch('36 x 24 24 MP')).toEqual({ value: 6, plusMinus: 0.12, origin: 'marked' });
    expect(pitch('36 x 24 24.0 MP')).toEqual({ value: 6, plusMinus: 0.066, origin: 'marked' });
    expect(pitch('36 x 24 24,00 MP')).toEqual({ value: 6, plusMinus: 0.061, origin: 'marked' });
    // √(864 / 1) = 29.4 µm, a quarter and 1 %.
    expect(pitch('36 x 24 1 MP')).toEqual({ value: 29.4, plusMinus: 7.6, origin: 'marked' });
    // A twentieth of 1.0, halved, and 1 %.
    expect(pitch('36 x 24 1.0 MP')).toEqual({ value: 29.4, plusMinus: 1, origin: 'marked' });
    expect(pitch('36 x 24 0 MP')).toBeUndefined();
    expect(readSensor('36 x 24 0 MP').part).not.toHaveProperty('pixelPitchUm');
  });
  it('differ from the pixels that are told beyond a twentieth', () => {
    const differs = (text: string) => readSensor(text).unread.length > 0;
    // 6 µm by 24 million; by columns 36 mm over 6000.
    expect([6.29, 6.302, 5.71, 5.69].map((um) => differs(`36 x 24 ${um} µm 24 MP`))).toEqual([false, true, false, true]);
    expect([differs('36 x 24 6000 x 4000 24 MP'), differs('36 x 24 5660 x 3773 24 MP'), differs('36 x 24 6400 x 4267 24 MP')]).toEqual([
      false,
      true,
      true,
    ]);
    expect([differs('36 x 24 5730 x 3820 24 MP'), differs('36 x 24 6300 x 4200 24 MP')]).toEqual([false, false]);
  });
  it('need the sides, and sides need pixels', () => {
    expect([needs('24 MP'), needs('36 x 24'), needs('36 x 24 24 MP'), needs('mono'), needs('36 x 24 24'), needs('APS-C')]).toEqual([
      ['sides'],
      ['pixels'],
      [],
      ['sides', 'pixels'],
      [],
      ['pixels'],
    ]);
  });
});
