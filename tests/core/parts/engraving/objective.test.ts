import { describe, expect, it } from 'vitest';
import { isWhole, readObjective } from '../../../../core/engravings.ts';
import { plain } from './plain.ts';

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

describe('a line about an objective', () => {
  const whole = { magnification: 10, na: 0.25, referenceFocalLengthMm: 200 };
  it('says water by its index, and a whole aperture after a figure with an x', () => {
    expect(readObjective('40x/0.8 water 200').part.immersionIndex).toBe(1.333);
    expect(readObjective('20x0.5 200').part).toEqual({ magnification: 20, na: 0.5, referenceFocalLengthMm: 200 });
    expect(readObjective('NA 0.25 200 10x').part).toEqual(whole);
  });
  it('is of a flat field where it says plan', () => {
    expect(readObjective('apo 10x/0.25 200').part).toEqual({ ...whole, correction: 'apochromat' });
    expect(readObjective('plan apo 10x/0.25 200').part).toEqual({ ...whole, correction: 'apochromat', flatField: true });
  });
  it('needs, in words, what it leaves out, and asks nothing before it has magnification and aperture', () => {
    const told = (text: string) => {
      const { needs, asks } = readObjective(text);
      return [...needs, ...asks];
    };
    const tube = 'the tube lens that the engraving is for, as in 10x/0.25 200';
    expect(told('')).toEqual(['magnification and aperture, as in 10x/0.25', tube]);
    expect(told('NA 0.25')).toEqual(['its magnification, as in 10x/0.25', tube]);
    expect(told('20x')).toEqual(['its aperture, as in 20x/0.25', tube]);
    expect(told('10x/0.25 160/0.17')).toEqual([
      'an objective corrected for infinity (∞): 160 marks one for a tube of 160 mm, which needs no relay',
    ]);
  });
  it.each([
    ['10x/0.25', '10x/0.25 f 180'],
    ['10x/0.25 lens', '10x/0.25 lens f 180'],
    ['18 10x/0.25', '18 10x/0.25 f 180'],
    ['10x/0.25 18 ', '10x/0.25 f 180'],
    ['10x/0.25 20', '10x/0.25 20 f 180'],
  ])('%s is answered with the line, and a number that was begun at its end finished: %s', (text, answer) => {
    expect(readObjective(text).asks[0]?.answers[1]?.text).toBe(answer);
  });
  it('is whole where it needs nothing, asks nothing and leaves no figure unread', () => {
    const [plainLine, ask] = [
      { unread: ['nice'], needs: [], asks: [] },
      { question: 'what', answers: [] },
    ];
    expect(isWhole(plainLine)).toBe(true);
    expect(isWhole({ ...plainLine, needs: ['a lens'] })).toBe(false);
    expect(isWhole({ ...plainLine, asks: [ask] })).toBe(false);
    expect(isWhole({ needs: [], asks: [], unread: ['nice', 'M25'] })).toBe(false);
  });
});
