import { describe, expect, it } from 'vitest';
import { isWhole, readSensor } from '../../../../core/engravings.ts';
import { amount } from '../../../../core/index.ts';
import { asked, plain } from './plain.ts';

describe('cameras as told', () => {
  it.each([
    ['36 x 24 mm 4.35 µm', { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 }],
    ['36x24 4.35', { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 }],
    ['36 × 24 8256 x 5504', { widthMm: 36, heightMm: 24, columns: 8256, rows: 5504 }],
    ['36 24 4.35', { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 }],
    ['full frame 4.35 mono', { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35, colourFilter: false }],
    ['2/3" 3.45', { widthMm: 8.8, heightMm: 6.6, pixelPitchUm: 3.45 }],
    ['23.5 x 15.6 mm 3.9um', { widthMm: 23.5, heightMm: 15.6, pixelPitchUm: 3.9 }],
    ['36x24, 4.35', { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 }],
    ['36 x 24 4.35 x 4.35 µm', { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 }],
    ['36 x 24 8256 x 5504 45.4', { widthMm: 36, heightMm: 24, columns: 8256, rows: 5504 }],
  ])('reads %s', (text, part) => expect(readSensor(text)).toEqual({ part, ...plain }));

  it.each([
    ['36 x 24 45.7', 36 * 24, 45.7],
    ['full frame 45.7', 36 * 24, 45.7],
    ['45,7 36 x 24', 36 * 24, 45.7],
    ['36 24 45.7', 36 * 24, 45.7],
    ['23.5x15.6 26.1', 23.5 * 15.6, 26.1],
    ['23.5 x 15.6 24.2', 23.5 * 15.6, 24.2],
    ['36x24 12.1', 36 * 24, 12.1],
  ])('knows no pixel as wide as in %s, and counts millions', (text, area, count) => {
    const { part, ...rest } = readSensor(text);
    expect(rest).toEqual(plain);
    expect(amount(part.pixelPitchUm ?? 0) / Math.sqrt(area / count)).toBeCloseTo(1, 2);
  });
  it('asks about a decimal that can be both, and takes no size out of micrometres or of three numbers', () => {
    expect(asked(readSensor, '36 x 24 10.5')).toEqual([
      ['what ‘10.5’ is', expect.objectContaining({ pixelPitchUm: 10.5 }), { widthMm: 36, heightMm: 24, pixelPitchUm: expect.anything() }],
    ]);
    for (const text of ['36 x 24 µm 4', '36.1 x 24 µm 4', '36 µm x 24 µm 4', '36 x 24 x 4.35', '10 x 36 x 24', '45.7 36 24'])
      expect([text, readSensor(text).part]).toEqual([text, {}]);
    for (const text of ['36 x 24 4.35 45.7 8', '36 x 24 4.35 µm 24 MP', '36 x 24 8256 x 5504 24.2'])
      expect([text, isWhole(readSensor(text))]).toEqual([text, false]);
  });

  it('makes the pitch from millions of pixels, as loose as they are told', () => {
    const um = Math.sqrt((36 * 24) / 24);
    for (const text of ['36x24 24 MP', 'full frame 24 MP', '24mp 36 x 24']) {
      const { part, ...rest } = readSensor(text);
      expect(rest).toEqual(plain);
      const pitch = part.pixelPitchUm as { value: number; plusMinus: number };
      expect(Math.abs(pitch.value / um - 1)).toBeLessThan(0.005);
      // 23.5 to 24.5 million, on sides good to one per cent.
      expect(pitch.plusMinus / um).toBeCloseTo(0.5 / 24 / 2 + 0.01, 3);
    }
    expect(readSensor('36 x 24 6 µm 24 MP')).toMatchObject({ part: { pixelPitchUm: 6 }, unread: [] });
    expect(readSensor('36 x 24 4.35 µm 24 MP')).toMatchObject({ part: { pixelPitchUm: 4.35 }, unread: ['24 MP'] });
    expect(readSensor('24 MP').needs).toEqual([expect.stringContaining('width and height')]);
  });

  it('asks where a format has two sizes, and whether a whole number is a pitch or millions of pixels', () => {
    expect(asked(readSensor, 'APS-C 3.9')).toEqual([
      [
        'which size of APS-C it is',
        { widthMm: 23.5, heightMm: 15.6, pixelPitchUm: 3.9 },
        { widthMm: 22.3, heightMm: 14.9, pixelPitchUm: 3.9 },
      ],
    ]);
    const [ask] = asked(readSensor, 'full frame 6');
    expect(ask?.[0]).toBe('what ‘6’ is');
    expect(ask?.[1]).toMatchObject({ pixelPitchUm: 6 });
    expect(ask?.[2]).toMatchObject({ pixelPitchUm: { value: 12 } });
    expect(asked(readSensor, '36x24 61')).toEqual([]);
    expect(readSensor('36x24 61').part.pixelPitchUm).toMatchObject({ value: 3.76 });
  });

  it('says what is needed', () => {
    expect(readSensor('36 x 24').needs).toEqual([expect.stringContaining('pixel pitch')]);
    expect(readSensor('big').needs).toHaveLength(2);
  });
});
