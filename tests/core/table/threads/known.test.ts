import { describe, expect, it } from 'vitest';
import { KNOWN_THREADS, STEP_SIZES, USUAL_THREADS } from '../../../../core/table/threads/known.ts';

/** The threads of the trade, listed again by hand. */

const pairs = (some: readonly { diameterMm: number; pitchMm: number }[]) =>
  some.map(({ diameterMm, pitchMm }) => `${Number(diameterMm.toFixed(3))} x ${Number(pitchMm.toFixed(4))}`);
const used = (use: RegExp) => pairs(KNOWN_THREADS.filter((one) => use.test(one.use)));

describe('threads that are known', () => {
  it('are those of objectives: the 0.8 in of the microscope society with 36 turns to the inch, and the metric ones', () => {
    expect(used(/^objectives$/)).toEqual(['20.32 x 0.7056', '25 x 0.75', '26 x 0.7056', '27 x 0.75', '32 x 0.75']);
  });

  it('are those of tubes', () => expect(used(/tubes/)).toEqual(['42 x 1', '48 x 0.75']));

  it('are those of filters: fine below 37 mm, 0.75 mm to 82, and 1 mm beyond', () => {
    expect(used(/^filters$/)).toEqual([
      ...[25.5, 30.5, 34, 35.5, 40.5].map((size) => `${size} x 0.5`),
      ...[37, 39, 43, 46, 49, 52, 55, 58, 62, 67, 72, 77, 82].map((size) => `${size} x 0.75`),
      ...[86, 95, 105, 112].map((size) => `${size} x 1`),
      '27 x 0.5',
    ]);
    expect(used(/seldom/)).toEqual(['30.5 x 0.75', '40.5 x 0.75', '95 x 0.75', '49 x 1', '52 x 1', '77 x 1', '82 x 1']);
  });

  it('have flanks of 55° where they are from the days of Whitworth, else of 60°', () => {
    expect(KNOWN_THREADS.filter(({ angleDeg }) => angleDeg === 55).map(({ label }) => label)).toEqual([
      'RMS',
      'M26 x 36 TPI',
      'M39 x 26 TPI',
    ]);
    expect(new Set(KNOWN_THREADS.map(({ angleDeg }) => angleDeg))).toEqual(new Set([55, 60]));
  });

  it('mean an objective where 27 mm are told alone', () => {
    expect(pairs(USUAL_THREADS.filter(({ diameterMm }) => diameterMm === 27))).toEqual(['27 x 0.75']);
    expect(pairs(USUAL_THREADS.filter(({ diameterMm }) => diameterMm === 26))).toEqual(['26 x 0.7056', '26 x 0.75']);
  });
});

it('step rings are made for the filters of 0.75 mm, but for 39', () => {
  expect(pairs(STEP_SIZES)).toEqual([37, 43, 46, 49, 52, 55, 58, 62, 67, 72, 77, 82].map((size) => `${size} x 0.75`));
});
