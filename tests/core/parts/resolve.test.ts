import { describe, expect, it } from 'vitest';
import { resolveParts, type Shelf } from '../../../core/index.ts';

const shelf: Shelf = {
  objectives: new Map([['ten', { magnification: 10, na: 0.25, referenceFocalLengthMm: 200 }]]),
  relays: new Map([['five-dioptre', { kind: 'supplementary', powerDioptre: 5, clearApertureMm: 54 }]]),
  sensors: new Map([['full', { widthMm: 36, heightMm: 24, pixelPitchUm: 4.35 }]]),
};

describe('parts by name', () => {
  it('are written out', () => {
    const { pairing, problems } = resolveParts(
      { objective: 'ten', relay: 'five-dioptre', sensor: { from: 'full' }, infinitySpaceMm: 60 },
      shelf,
    );
    expect(problems).toEqual([]);
    expect(pairing).toEqual({
      objective: shelf.objectives.get('ten'),
      relay: shelf.relays.get('five-dioptre'),
      sensor: shelf.sensors.get('full'),
      infinitySpaceMm: 60,
    });
  });
  it('give way to what differs, and to another way of saying the same', () => {
    expect(resolveParts({ relay: { from: 'five-dioptre', focalLengthMm: 198 } }, shelf).pairing).toEqual({
      relay: { kind: 'supplementary', clearApertureMm: 54, focalLengthMm: 198 },
    });
    expect(resolveParts({ sensor: { from: 'full', columns: 8256, rows: 5504 } }, shelf).pairing).toEqual({
      sensor: { widthMm: 36, heightMm: 24, columns: 8256, rows: 5504 },
    });
  });
  it('are a problem where nothing has that name', () => {
    expect(resolveParts({ objective: 'eleven' }, shelf).problems).toMatchObject([
      { path: '/objective', code: 'unknownPart', given: '"eleven"' },
    ]);
    expect(resolveParts({ relay: { from: 7 } }, shelf).problems).toMatchObject([{ path: '/relay/from', given: '7' }]);
    expect(resolveParts({ sensor: { from: '__proto__' } }, shelf).problems).toHaveLength(1);
  });
  it('leave everything else to the schema', () => {
    for (const odd of [null, 3, [], 'x', { objective: 3 }, {}]) expect(resolveParts(odd, shelf)).toEqual({ pairing: odd, problems: [] });
  });
});
