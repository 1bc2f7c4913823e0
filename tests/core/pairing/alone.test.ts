import { describe, expect, it } from 'vitest';
import { glassworks } from '../../../core/glassworks.ts';
import { contradictionsAlone, type OwnPart, ownPartSchema } from '../../../core/index.ts';

/** What a part contradicts by itself, in no pairing. */

const own = (kind: string, part: object): OwnPart => ownPartSchema.parse({ kind, owned: true, part: { name: 'x', ...part } });
const found = (kind: string, part: object, works?: ReturnType<typeof glassworks>) =>
  contradictionsAlone(own(kind, part), works).map(({ path, code }) => `${path} ${code}`);

describe('a part alone', () => {
  it('is refused for what every pairing with it would be', () => {
    expect(found('relay', { kind: 'supplementary' })).toEqual(['/part/focalLengthMm missing']);
    expect(found('relay', { kind: 'supplementary', powerDioptre: 5, focalLengthMm: 190 })).toEqual(['/part/focalLengthMm contradiction']);
    expect(found('objective', { magnification: 100, na: 1.2, referenceFocalLengthMm: 200 })).toEqual(['/part/na contradiction']);
    expect(found('sensor', { widthMm: 36, heightMm: 24 })).toEqual(['/part/pixelPitchUm missing']);
    expect(found('sensor', { widthMm: 36, heightMm: 24, columns: 6000 })).toEqual(['/part/rows missing']);
  });

  it('is not refused for anything that another part could mend', () => {
    expect(found('sensor', { widthMm: 36, heightMm: 24, pixelPitchUm: 4, registerMm: 400, throatDiameterMm: 50 })).toEqual([]);
    expect(found('objective', { magnification: 100, na: 1.25, referenceFocalLengthMm: 160, immersionIndex: 1.518 })).toEqual([]);
    const measured = { value: 190, plusMinus: 2, origin: 'measured' };
    expect(found('relay', { kind: 'supplementary', powerDioptre: 5, focalLengthMm: measured })).toEqual([]);
  });

  it('with glass is judged only by what traces it', () => {
    const glass = { radiiMm: [1000, -54, -91], thicknessesMm: [11, 4], glasses: ['N-BK7', 'N-SF5'] };
    const part = { kind: 'supplementary', powerDioptre: 10, glass };
    expect(found('relay', part)).toEqual([]);
    expect(found('relay', part, glassworks())).toEqual(['/part/powerDioptre contradiction']);
    expect(found('relay', { ...part, powerDioptre: 5 }, glassworks())).toEqual([]);
  });
});
