import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Reading, readObjective, readRelay, readSensor } from '../../../core/engravings.ts';

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
  ])('reads %s', (text, part) => expect(readRelay(text)).toEqual({ part, ...plain }));

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
  ])('reads %s', (text, part) => expect(readSensor(text)).toEqual({ part, ...plain }));

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
