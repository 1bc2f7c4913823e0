import { describe, expect, it } from 'vitest';
import { forOneSubject, judgedUnlike, type Pairing } from '../../../core/index.ts';

const bare: Pairing = {
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200 },
  relay: { kind: 'tube-lens', focalLengthMm: 200 },
  sensor: { widthMm: 24, heightMm: 16 },
  infinitySpaceMm: 60,
};

describe('one subject for all', () => {
  it('is the first that has a side, its height as well as its width', () => {
    const [deep, tall, wide] = [{ depthMm: 3 }, { heightMm: 4 }, { widthMm: 2 }].map((subject): Pairing => ({ ...bare, subject }));
    expect(forOneSubject([deep, tall, wide] as Pairing[]).subject).toEqual({ heightMm: 4, depthMm: 3 });
    expect(forOneSubject([deep, wide, tall] as Pairing[]).subject).toEqual({ widthMm: 2, depthMm: 3 });
    expect(forOneSubject([bare, deep] as Pairing[]).subject).toEqual({ depthMm: 3 });
  });
  it('has a depth of its own before that of any other, and a millimetre where none is given', () => {
    const [deep, own] = [{ depthMm: 3 }, { widthMm: 2, depthMm: 5 }].map((subject): Pairing => ({ ...bare, subject }));
    expect(forOneSubject([deep, own] as Pairing[])).toMatchObject({ subject: { widthMm: 2, depthMm: 5 }, depthGiven: true });
    expect(forOneSubject([bare])).toMatchObject({ subject: { depthMm: 1 }, depthGiven: false });
  });
});

describe('what pairings are not judged alike in', () => {
  it('is everything that a verdict hangs on besides the parts, one at a time', () => {
    const unlike = (more: Partial<Pairing>): string[] => judgedUnlike([bare, { ...bare, ...more }]);
    expect(unlike({ wavelengthNm: 450 })).toEqual(['the light’s wavelength']);
    expect(unlike({ litThreshold: 0.7 })).toEqual(['how much light counts as lit']);
    expect(unlike({ depth: { convention: 'half-wave-term' } })).toEqual(['what depth means']);
    expect(unlike({ depth: { blurUm: 1 } })).toEqual(['what depth means']);
    const sharp: NonNullable<Pairing['sharp']>[] = [
      { relativeContrast: 0.6 },
      { frequency: 1 },
      { focus: 'stack' },
      { spectrum: 'one wavelength' },
    ];
    for (const one of sharp) expect(unlike({ sharp: one }), JSON.stringify(one)).toEqual(['how sharp is sharp']);
  });
  it('is held against the first, whichever differs', () => {
    const other = { ...bare, wavelengthNm: 450 };
    expect(judgedUnlike([other, bare, bare])).toEqual(['the light’s wavelength']);
    expect(judgedUnlike([bare])).toEqual([]);
    expect(judgedUnlike([bare, { ...bare, wavelengthNm: 550 }])).toEqual([]);
    expect(judgedUnlike([bare, { ...bare, depth: {}, sharp: {} }])).toEqual([]);
  });
});
