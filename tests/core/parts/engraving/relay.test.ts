import { describe, expect, it } from 'vitest';
import { isWhole, readRelay } from '../../../../core/engravings.ts';
import { asked, plain } from './plain.ts';

describe('relays as engraved', () => {
  it.each([
    ['5 D 58 mm', { kind: 'supplementary', powerDioptre: 5, maleThread: '58 x 0.75' }],
    ['+3 dioptres', { kind: 'supplementary', powerDioptre: 3 }],
    ['200 mm f/4', { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 }],
    ['tube lens 180 mm Ø 24', { kind: 'tube-lens', focalLengthMm: 180, clearApertureMm: 24 }],
    ['close-up f = 100 mm clear 23', { kind: 'supplementary', focalLengthMm: 100, clearApertureMm: 23 }],
    ['200/4', { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 }],
    ['100/2.8', { kind: 'camera-lens', focalLengthMm: 100, fNumber: 2.8 }],
    ['f = 200 mm / 5,6', { kind: 'camera-lens', focalLengthMm: 200, fNumber: 5.6 }],
    ['1:2.8/100', { kind: 'camera-lens', focalLengthMm: 100, fNumber: 2.8 }],
    ['enlarger lens 150/5.6', { kind: 'camera-lens', focalLengthMm: 150, fNumber: 5.6 }],
    ['tube lens 200/8', { kind: 'tube-lens', focalLengthMm: 200, fNumber: 8 }],
    ['135/2.8 prime 52 mm', { kind: 'camera-lens', focalLengthMm: 135, fNumber: 2.8, femaleThread: '52 x 0.75' }],
    ['70-200/4 at 135', { kind: 'camera-lens', focalLengthRangeMm: [70, 200], fNumber: 4, focalLengthMm: 135 }],
  ])('reads %s', (text, part) => expect(readRelay(text)).toEqual({ part, ...plain }));

  it('says of a lens that spreads the light that it is none', () => {
    for (const text of ['-5 D', '−5 dioptres 58', '- 5 D', 'close-up -5 D', '58 mm –5D', '+-5 D', '-200 mm f/4']) {
      expect(readRelay(text), text).toMatchObject({ part: {}, needs: [expect.stringMatching(/^a lens that gathers light: one of −/)] });
      expect(readRelay(text).part).toEqual({});
    }
    expect(readRelay('close-up – 5 D').part.powerDioptre).toBe(5);
  });
  it('takes nothing out of numbers that hang together, and is not whole while one is left', () => {
    for (const text of ['5/58', '4/200', 'lens-5 D', 'close-up 200/5', '200-4']) {
      expect(Object.keys(readRelay(text).part).filter((name) => name !== 'kind')).toEqual([]);
      expect(isWhole(readRelay(text)), text).toBe(false);
    }
    for (const text of ['5 D/58', '5 D -58', '58 x 0.75 5 D M52', '4 D 2 D', '200 mm f/4 /77', '1:4/70-200', '70-200/2.8-4 at 70'])
      expect([text, isWhole(readRelay(text))]).toEqual([text, false]);
    for (const text of ['5 D 58 m', '200 mm f/4.']) expect([text, isWhole(readRelay(text))]).toEqual([text, true]);
  });

  it.each([
    ['5', { kind: 'supplementary', powerDioptre: 5 }],
    ['+5 58', { kind: 'supplementary', powerDioptre: 5, maleThread: '58 x 0.75' }],
    ['5D M58', { kind: 'supplementary', powerDioptre: 5, maleThread: '58 x 0.75' }],
    ['200 f4', { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 }],
    ['200 4', { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4 }],
    ['200 mm f/4 77', { kind: 'camera-lens', focalLengthMm: 200, fNumber: 4, femaleThread: '77 x 0.75' }],
    ['close-up 200', { kind: 'supplementary', focalLengthMm: 200 }],
    ['close-up 4 52', { kind: 'supplementary', powerDioptre: 4, maleThread: '52 x 0.75' }],
    ['tube lens 58', { kind: 'tube-lens', focalLengthMm: 58 }],
    ['70-200 at 135 mm f/4', { kind: 'camera-lens', focalLengthRangeMm: [70, 200], focalLengthMm: 135, fNumber: 4 }],
    ['5 D 58 x 0.75 Ø 55', { kind: 'supplementary', powerDioptre: 5, maleThread: '58 x 0.75', clearApertureMm: 55 }],
  ])('takes %s for the one thing that a relay can be', (text, part) => expect(readRelay(text)).toEqual({ part, ...plain }));

  const of = (focalLengthMm: number, ...kinds: string[]) => kinds.map((kind) => ({ kind, focalLengthMm }));
  const EACH = ['supplementary', 'camera-lens', 'tube-lens'];
  it.each([
    ['58', [{ kind: 'supplementary', maleThread: '58 x 0.75' }, ...of(58, ...EACH)]],
    ['58 mm', [{ kind: 'supplementary', maleThread: '58 x 0.75' }, ...of(58, ...EACH)]],
    ['200', of(200, ...EACH)],
    ['f = 100 mm', of(100, ...EACH)],
    ['20 mm', of(20, ...EACH)],
    ['f 8', [{ kind: 'camera-lens', fNumber: 8 }, ...of(8, ...EACH)]],
    ['close-up 58', [{ kind: 'supplementary', maleThread: '58 x 0.75' }, ...of(58, 'supplementary')]],
    [
      '4 52',
      [
        { kind: 'supplementary', powerDioptre: 4, maleThread: '52 x 0.75' },
        { kind: 'camera-lens', focalLengthMm: 52, fNumber: 4 },
      ],
    ],
    [
      '5 200',
      [
        { kind: 'supplementary', powerDioptre: 5 },
        { kind: 'camera-lens', focalLengthMm: 200, fNumber: 5 },
      ],
    ],
    [
      '58 200',
      [
        { kind: 'supplementary', focalLengthMm: 200, maleThread: '58 x 0.75' },
        { kind: 'camera-lens', focalLengthMm: 200, femaleThread: '58 x 0.75' },
      ],
    ],
  ])('asks what %s is', (text, parts) => {
    expect(asked(readRelay, text)).toEqual([[`what ‘${text.replace('close-up ', '')}’ is`, ...parts]]);
    expect(readRelay(text).needs).toEqual([]);
    expect(readRelay(text).part).not.toHaveProperty('focalLengthMm');
  });

  it('asks which of two lengths is the thread where each could be', () => {
    const stop = { kind: 'camera-lens', fNumber: 1.8 };
    expect(asked(readRelay, '85 mm f/1.8 67')).toEqual([
      [
        'what ‘85 mm 67’ is',
        { ...stop, focalLengthMm: 85, femaleThread: '67 x 0.75' },
        { ...stop, focalLengthMm: 67, femaleThread: '85 x 0.75' },
      ],
    ]);
    expect(asked(readRelay, '135/3.5 Ø 55')).toEqual([
      [
        'what ‘Ø 55’ is',
        { kind: 'camera-lens', focalLengthMm: 135, fNumber: 3.5, femaleThread: '55 x 0.75' },
        { kind: 'camera-lens', focalLengthMm: 135, fNumber: 3.5, clearApertureMm: 55 },
      ],
    ]);
  });

  it('asks what a zoom is set to, and whether a diameter is of the thread or of the clear opening', () => {
    const zoom = { kind: 'camera-lens', focalLengthRangeMm: [70, 200], fNumber: 4 };
    expect(asked(readRelay, '70-200 f/4')).toEqual([
      ['the focal length that the zoom is set to', { ...zoom, focalLengthMm: 70 }, { ...zoom, focalLengthMm: 200 }],
    ]);
    expect(asked(readRelay, '5 D Ø 58')).toEqual([
      [
        'what ‘Ø 58’ is',
        { kind: 'supplementary', powerDioptre: 5, maleThread: '58 x 0.75' },
        { kind: 'supplementary', powerDioptre: 5, clearApertureMm: 58 },
      ],
    ]);
    expect(readRelay('5 D Ø 58').part.clearApertureMm).toBeUndefined();
  });

  it('says what is needed', () => {
    expect(readRelay('close-up').needs).toHaveLength(1);
    expect(readRelay('58 x 0.75').needs).toHaveLength(1);
    expect(readRelay('5 D 58 frog 200')).toMatchObject({ unread: ['frog', '200'], needs: [], asks: [] });
  });
});

describe('a line about a relay', () => {
  it('asks what kind of lens a length alone is of, each answer the whole line', () => {
    expect(readRelay('set to 135 mm').asks).toEqual([
      {
        question: 'what ‘set to 135 mm’ is',
        answers: [
          { words: '135 mm: a close-up lens', text: 'close-up set to 135 mm' },
          { words: '135 mm: a camera lens', text: 'camera lens set to 135 mm' },
          { words: '135 mm: a tube lens', text: 'tube lens set to 135 mm' },
        ],
      },
    ]);
    // One thing at a time.
    expect(readRelay('set to 135 mm Ø 58').asks.map(({ question }) => question)).toEqual(['what ‘Ø 58’ is']);
    expect(readRelay('camera lens set to 135 mm').asks).toEqual([]);
    expect(readRelay('5 D').asks).toEqual([]);
    expect(readRelay('70-200 set to 135 mm').asks).toEqual([]);
  });
  it('says its thread with the word before it or behind', () => {
    expect([readRelay('5 D thread 58 mm'), readRelay('5 D 58 mm thread')].map(({ part }) => part.maleThread)).toEqual([
      '58 x 0.75',
      '58 x 0.75',
    ]);
  });
  it('of a camera lens names the filter thread only where it has one', () => {
    expect(readRelay('200 mm f/4 58 mm').part).toMatchObject({ femaleThread: '58 x 0.75' });
    expect(readRelay('200 mm f/4').part).not.toHaveProperty('femaleThread');
  });
  it('takes power and length for one lens where they agree to a hundredth, and no f-number that none has', () => {
    const words = (text: string) => readRelay(text).asks.flatMap(({ answers }) => answers.map((answer) => answer.words));
    expect(words('4 252')).toEqual(['4 D, which is 252 mm: a close-up lens', '252 mm f/4: a camera lens']);
    expect([words('4 252.52'), readRelay('4 252.52').part]).toEqual([[], { kind: 'camera-lens', focalLengthMm: 252.52, fNumber: 4 }]);
    expect(readRelay('0.5 200').part).toEqual({ kind: 'supplementary', powerDioptre: 0.5 });
    // f = is a length, and no f-number.
    expect(readRelay('f=8 200').part).not.toHaveProperty('fNumber');
    expect(words('f=8 200')).toContain('8 mm: the focal length of a camera lens');
  });
});
