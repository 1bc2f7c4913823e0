import { describe, expect, it } from 'vitest';
import { readObjective, readRelay, readSensor } from '../../../core/index.ts';

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
  ])('reads %s', (text, part) => expect(readObjective(text)).toEqual({ part, unread: [], needs: [] }));

  it('asks for the tube lens that the engraving is for, and guesses none', () => {
    const { part, needs } = readObjective('10x/0.25 ∞/0.17');
    expect(part.referenceFocalLengthMm).toBeUndefined();
    expect(needs).toEqual([expect.stringContaining('200, 180, 165 or 164.5')]);
  });
  it('does not take the marking of a finite tube for a reference', () => {
    expect(readObjective('10x/0.25 160/0.17')).toMatchObject({ unread: expect.arrayContaining(['160/0.17']) });
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
    ['f = 100 mm clear 23', { kind: 'supplementary', focalLengthMm: 100, clearApertureMm: 23 }],
  ])('reads %s', (text, part) => expect(readRelay(text)).toEqual({ part, unread: [], needs: [] }));

  it('says what is needed', () => expect(readRelay('close-up').needs).toHaveLength(1));
});

describe('cameras as told', () => {
  it.each([
    ['36 x 24 mm 4.35 µm', { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 }],
    ['36x24 4.35', { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 }],
    ['36 × 24 8256 x 5504', { widthMm: 36, heightMm: 24, columns: 8256, rows: 5504 }],
    ['23.5 x 15.6 mm 3.9um', { widthMm: 23.5, heightMm: 15.6, pixelPitchUm: 3.9 }],
  ])('reads %s', (text, part) => expect(readSensor(text)).toEqual({ part, unread: [], needs: [] }));

  it('says what is needed', () => {
    expect(readSensor('36 x 24').needs).toEqual([expect.stringContaining('pixel pitch')]);
    expect(readSensor('big').needs).toHaveLength(2);
  });
});
