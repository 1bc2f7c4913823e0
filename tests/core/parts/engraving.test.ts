import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isWhole, type Reading, readObjective, readRelay, readSensor } from '../../../core/engravings.ts';
import { amount } from '../../../core/index.ts';

/** What is asked, each with its answers in words and what they would read as. */
const asked = <Part>(read: (text: string) => Reading<Part>, text: string) =>
  read(text).asks.map(({ question, answers }) => [question, ...answers.map((answer) => read(answer.text).part)]);
const plain = { unread: [], needs: [], asks: [] };

describe('objectives as engraved', () => {
  it.each([
    ['10x/0.25 ∞/0.17 200', { magnification: 10, na: 0.25, coverGlassMm: 0.17, referenceFocalLengthMm: 200 }],
    ['10× / 0,25 ∞/- f=180', { magnification: 10, na: 0.25, referenceFocalLengthMm: 180 }],
    [
      'Plan Apo 7.5x/0.21 inf/0 WD 35 FN 24 f 200 mm',
      {
        magnification: 7.5,
        na: 0.21,
        coverGlassMm: 0,
        workingDistanceMm: 35,
        fieldNumberMm: 24,
        referenceFocalLengthMm: 200,
        correction: 'apochromat',
        flatField: true,
      },
    ],
    ['40x 0.65 164.5', { magnification: 40, na: 0.65, referenceFocalLengthMm: 164.5 }],
    [
      'semi-apo 20x/0.45 OFN 25 200',
      { magnification: 20, na: 0.45, fieldNumberMm: 25, referenceFocalLengthMm: 200, correction: 'semi-apochromat' },
    ],
    ['100x/1.25 oil 180', { magnification: 100, na: 1.25, immersionIndex: 1.518, referenceFocalLengthMm: 180 }],
    ['63/1.3 n 1.47 f 165', { magnification: 63, na: 1.3, immersionIndex: 1.47, referenceFocalLengthMm: 165 }],
    ['10/.25 ∞/0.17 200', { magnification: 10, na: 0.25, coverGlassMm: 0.17, referenceFocalLengthMm: 200 }],
    ['Plan 4x NA 0.1 180mm', { magnification: 4, na: 0.1, referenceFocalLengthMm: 180, flatField: true }],
  ])('reads %s', (text, part) => expect(readObjective(text)).toEqual({ part, ...plain }));

  const ten = { magnification: 10, na: 0.25, referenceFocalLengthMm: 200 };
  it.each([
    ['10x/0.25 200 M25 x 0.75', 'M25 x 0.75'],
    ['M25 x 0.75 10x/0.25 200', 'M25 x 0.75'],
    ['M32 x 0,75 10x 0.25 200', 'M32 x 0.75'],
    ['10x/0.25 200 20.32 x 0.706', '20.32 x 0.706'],
    ['10x/0.25 200 M26 x 0.706', 'M26 x 0.706'],
    ['26 x 0.706 10 / 0.25 200', '26 x 0.706'],
    ['25 x 0.75 10x/0.25 200', '25 x 0.75'],
    ['10x/0.25 200 45mm x 1', '45 x 1'],
    ['10x/0.25 200 RMS (0.8 in x 36 TPI)', '0.8 in x 36 TPI'],
    ['10x/0.25 200 M26 x 36 TPI', 'M26 x 36 TPI'],
    ['RMS 10x/0.25 200', 'RMS'],
    ['10x/0.25 200 M25', 'M25'],
  ])('takes the thread in %s for no magnification and no aperture', (text, mountThread) =>
    expect(readObjective(text)).toEqual({ part: { ...ten, mountThread }, ...plain }),
  );
  it('lets nothing overwrite what was read, and is not whole while a number is left', () => {
    for (const more of ['20x', 'NA 0.3', '40x 0.65', '25x 0.75', '0.8 x 36', '180', 'M25 x 0.75 M26', 'A9', 'M25 x 0']) {
      const reading = readObjective(`10x/0.25 200 ${more}`);
      expect(reading.part, more).toMatchObject(ten);
      expect([reading.needs, reading.asks, isWhole(reading)], more).toEqual([[], [], false]);
    }
    expect(isWhole(readObjective('10x/0.25 200 WD'))).toBe(true);
    expect(readObjective('160/0.17 10x/0.25 f 200')).toMatchObject({ part: ten, unread: ['160/0.17'] });
    expect(readObjective('A200 10x/0.25').part).not.toHaveProperty('referenceFocalLengthMm');
    expect(readObjective('100x/1.25 oil n 1.515 200')).toMatchObject({ part: { immersionIndex: 1.515 }, unread: [] });
  });

  it('asks for the tube lens that the engraving is for, and guesses none', () => {
    const { part, needs, asks } = readObjective('10x/0.25 ∞/0.17');
    expect(part.referenceFocalLengthMm).toBeUndefined();
    expect(needs).toEqual([]);
    expect(asks.map((ask) => ask.question)).toEqual([expect.stringContaining('200, 180, 165 or 164.5')]);
    expect(asks[0]?.answers.map(({ text }) => readObjective(text).part.referenceFocalLengthMm)).toEqual([200, 180, 165, 164.5]);
    // A number that was begun is finished.
    expect(readObjective('10x/0.25 16').asks[0]?.answers.map(({ text }) => text)).toContain('10x/0.25 f 165');
  });
  it('says of one marked for a finite tube that it is none of these, and takes no reference from it', () => {
    for (const text of ['10x/0.25 160/0.17', '10/0.25 160/-', '10x/0.25 160', '10x/0.25 210 mm']) {
      const { part, needs, asks, unread } = readObjective(text);
      expect(part).toEqual({ magnification: 10, na: 0.25 });
      expect([needs.length, asks, unread]).toEqual([1, [], []]);
      expect(needs[0]).toMatch(/corrected for infinity.*a tube of (160|210) mm/);
    }
    expect(readObjective('10x/0.25 f 160').part.referenceFocalLengthMm).toBe(160);
  });
  it('takes no tube lens for an aperture', () => {
    expect(readObjective('10x 200')).toEqual({
      part: { magnification: 10, referenceFocalLengthMm: 200 },
      unread: [],
      needs: ['its aperture, as in 10x/0.25'],
      asks: [],
    });
    expect(readObjective('10x').needs).toHaveLength(2);
    expect(readObjective('NA 0.25 200').needs).toEqual(['its magnification, as in 10x/0.25']);
  });
  it('names what it cannot read', () => {
    expect(readObjective('a nice 10x/0.25 200 lens')).toMatchObject({ unread: ['a', 'nice', 'lens'] });
    expect(readObjective('')).toMatchObject({ part: {}, needs: [expect.stringContaining('10x/0.25'), expect.any(String)] });
  });
});

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

describe('whatever is typed', () => {
  it.each([
    ['10x/0.25 200', readObjective],
    ['5 D 58 mm', readRelay],
    ['200/4', readRelay],
    ['36 x 24 4.35', readSensor],
  ] as const)('%s is a part, and with a number more that means nothing is none', (text, read) => {
    expect(isWhole(read(text))).toBe(true);
    expect(isWhole(read(`${text} frog`))).toBe(true);
    for (const more of ['7777', '#9', '½', 'no.3']) expect([more, isWhole(read(`${text} ${more}`))]).toEqual([more, false]);
  });

  const PIECES =
    '5 58 200 0.25 10x 10x/0.25 164.5 160 ∞/0.17 f/4 f4 f f= D mm +3 Ø 52 Ø24 x 0.75 M58 close-up tube lens 70-200 at 36 24 36x24 4.35 µm MP APS-C full frame 1 inch oil n , . / - × frog'.split(
      ' ',
    );
  const line = fc
    .array(fc.tuple(fc.constantFrom(...PIECES), fc.constantFrom(' ', ' ', ' ', '')), { maxLength: 7 })
    .map((pieces) => pieces.flat().join(''));

  it.each([
    ['objective', readObjective],
    ['relay', readRelay],
    ['sensor', readSensor],
  ] as const)('an answer settles what the line of the %s asks, and every part is made of numbers', (_, read) => {
    let seen = 0;
    fc.assert(
      fc.property(line, (text) => {
        const { part, asks, needs, unread } = read(text);
        expect(JSON.stringify(part)).not.toMatch(/null/);
        if (text.trim() !== '') expect(Object.keys(part).length + unread.length + asks.length + needs.length).toBeGreaterThan(0);
        for (const { question, answers } of asks) {
          expect(answers.length).toBeGreaterThan(1);
          expect(answers.length).toBeLessThan(5);
          for (const answer of answers) {
            seen++;
            expect(
              read(answer.text).asks.map((ask) => ask.question),
              `${text} -> ${answer.text}`,
            ).not.toContain(question);
          }
        }
      }),
      { numRuns: Number(process.env.RUNS ?? 500) },
    );
    expect(seen).toBeGreaterThan(30);
  });
});
