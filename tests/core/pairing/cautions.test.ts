import { describe, expect, it } from 'vitest';
import { cautionsOf } from '../../../core/pairing/cautions.ts';
import type { Evaluation } from '../../../core/pairing/evaluate.ts';

const plainRelay = { kind: 'tube-lens', focalLengthMm: 200 } as const;
const relay = { ...plainRelay, glass: { class: 'singlet' } } as const;

/** The cautions for a pairing, each by the word that it is known by. */
function heard(objective: object, more: object = {}): string[] {
  const pairing = {
    objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200, ...objective },
    relay: plainRelay,
    sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4 },
    infinitySpaceMm: 60,
    ...more,
  };
  const words = [
    'Ultraviolet',
    'Infrared',
    'colour fringes',
    'cover glass',
    '3 mm',
    'counts the relay',
    'set to infinity',
    'curved, which',
  ];
  return cautionsOf({ pairing } as unknown as Evaluation).map((text) => words.find((word) => text.includes(word)) ?? text);
}

describe('cautions', () => {
  it('are none for a plain pairing, or for one that says that nothing is the matter', () => {
    expect(heard({})).toEqual([]);
    expect(
      heard({ tubeLensCorrectsColour: false, flatField: true, coverGlassMm: 0, workingDistanceMm: 10 }, { sensorOffsetMm: 5 }),
    ).toEqual([]);
  });
  it('tell of light that eyes cannot see, from the borders of what they do on', () => {
    const at = (wavelengthNm: number) => heard({}, { wavelengthNm });
    expect([379, 380, 381, 779, 780, 781].map(at)).toEqual([['Ultraviolet'], [], [], [], [], ['Infrared']]);
  });
  it('tell of a cover glass where the aperture is above 0.3', () => {
    const at = (na: number, coverGlassMm: unknown) => heard({ na, coverGlassMm });
    expect([at(0.3, 0.17), at(0.302, 0.17), at(0.5, 0), at(0.5, { value: 1.2 }), at(0.5, undefined)]).toEqual([
      [],
      ['cover glass'],
      [],
      ['cover glass'],
      [],
    ]);
    expect(
      cautionsOf({ pairing: { objective: { na: 0.5, coverGlassMm: 0.17 }, relay: plainRelay } } as unknown as Evaluation)[0],
    ).toContain('cover glass of 0.17 mm');
  });
  it('tell of a front lens nearer than 3 mm', () => {
    const at = (workingDistanceMm: number) => heard({ workingDistanceMm });
    expect([at(2.9), at(3), at(3.5)]).toEqual([['3 mm'], [], []]);
  });
  it('tell of colours and curvature that no figure counts', () => {
    expect(heard({ tubeLensCorrectsColour: true, flatField: false })).toEqual(['colour fringes', 'curved, which']);
  });
  it('tell of glass what is traced, and off the focus that it is traced in focus', () => {
    expect(heard({}, { relay })).toEqual(['counts the relay']);
    expect(heard({}, { relay, sensorOffsetMm: 0 })).toEqual(['counts the relay']);
    expect(heard({}, { relay, sensorOffsetMm: 0.5 })).toEqual(['counts the relay', 'set to infinity']);
    expect(heard({}, { relay, sensorOffsetMm: { value: -2, plusMinus: 1 } })).toEqual(['counts the relay', 'set to infinity']);
  });
});
