import { describe, expect, it } from 'vitest';
import { quantityIn } from '../../../../core/parts/quantity.ts';
import { buildAskSchema } from '../../../../core/table/build/ask.ts';
import { SETTINGS } from '../../../../core/table/build/settings.ts';

it.each([
  ['relayLengthMm', 0, 500],
  ['seatBehindGlassMm', -100, 100],
  ['builtTubeMm', 0, 2000],
])('%s is taken from %d to %d mm and not beyond', (key, least, most) => {
  const schema = quantityIn((SETTINGS.find((one) => one.key === key) as (typeof SETTINGS)[number]).bounds);
  expect([least, most].map((x) => schema.safeParse(x).success)).toEqual([true, true]);
  expect([least - 0.01, most + 0.01].map((x) => schema.safeParse(x).success)).toEqual([false, false]);
});

it('takes a mount of unknown length as 3 to 27 mm long, and its seat from 1 mm inside to 5 mm behind the glass', () => {
  const ends = SETTINGS.map(({ standing }) => {
    if (standing === undefined || typeof standing === 'function') return undefined;
    return [standing.value - standing.plusMinus, standing.value + standing.plusMinus];
  });
  expect(ends).toEqual([[3, 27], [-1, 5], undefined]);
});

describe('what may be told of the box', () => {
  const takes = (ask: object): boolean => buildAskSchema.safeParse(ask).success;
  const ring = {
    ends: [
      { thread: '58', sex: 'male' },
      { thread: '52', sex: 'female' },
    ],
  };
  it('is 24 rings and 24 tubes at most', () => {
    const many = (n: number, one: object) => Array.from({ length: n }, () => one);
    expect([24, 25].map((n) => takes({ adapters: many(n, ring) }))).toEqual([true, false]);
    expect([24, 25].map((n) => takes({ tubes: many(n, { thread: 'M42 x 1', lengthMm: 7 }) }))).toEqual([true, false]);
  });
  it('is a seat from the sensor itself to 300 mm before it', () => {
    const seat = (fromSensorMm: number) => takes({ camera: { thread: 'T', fromSensorMm } });
    expect([-0.1, 0, 300, 300.5].map(seat)).toEqual([false, true, true, false]);
  });
});
