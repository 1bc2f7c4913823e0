import { describe, expect, test } from 'vitest';
import { Gap } from '../../../../core/figure.ts';
import * as light from '../../../../core/table/stillness/light.ts';
import * as still from '../../../../core/table/stillness/still.ts';
import { stillnessSays } from '../../../../core/table/stillness/told.ts';

const of = (node: { of: unknown }, ...values: unknown[]): unknown => (node.of as (...values: unknown[]) => unknown)(...values);

describe('how still, by plain numbers', () => {
  test('0.4 µm in 0.01 s, in a flash of 2 ms, at 5 µm/s', () => {
    expect(of(still.stillSpeedUmPerS, 0.4, 0.01)).toBeCloseTo(40, 12);
    expect(of(still.flashSpeedUmPerS, 0.4, 2)).toBeCloseTo(200, 12);
    expect(of(still.longestExposureS, 0.4, 5)).toBeCloseTo(0.08, 12);
  });
  test('a swing of 2 µm to either side: half of its way of 4 in a sixth of a second at 2 Hz, all of it in the longest', () => {
    // 2 a sin(π ν t) = 2 at a sixth of a half turn: t = 1/12 s.
    expect(of(still.swingExposureS, 2, 2, 2)).toBeCloseTo(1 / 12, 12);
    expect(of(still.swingExposureS, 3.999, 2, 2)).toBeGreaterThan(0.24);
    for (const blur of [4, 4.1, 9]) expect(of(still.swingExposureS, blur, 2, 2)).toBeInstanceOf(Gap);
    expect(of(still.swingPixels, 2, 2, 1 / 12, 0.5)).toBeCloseTo(4, 12);
    expect(of(still.flashSwingPixels, 2, 2, 1000 / 12, 0.5)).toBeCloseTo(4, 9);
    expect(of(still.swingPixels, 2, 2, 5, 0.5)).toBeCloseTo(8, 12);
  });
  test('bellows: f/8 of pupil ratio 2 at 10 to 1 works at 48', () => {
    expect(of(light.referenceWorkingFNumber, 8, 10, 2)).toBe(48);
    expect(of(light.equalFNumber, 48, 10, 2)).toBe(8);
  });
});

describe('in words, with the answers given', () => {
  const known = (value: number) => ({ state: 'known', value, low: value, high: value });
  const unknown = { state: 'unknown', missing: [] };
  const USUAL = { exposureS: 0.01, flashMs: 1, referenceFNumber: 8 };
  const says = (answers: Record<string, object>, set: Partial<typeof USUAL> = {}): string => {
    const values = Object.entries({ ...USUAL, ...set });
    const base = {
      moreExposureEv: known(1),
      cornerMoreExposureEv: unknown,
      stillUm: known(0.4),
      stillSpeedUmPerS: known(40),
      flashSpeedUmPerS: known(400),
      driftPixels: known(0.1),
      swingPixels: unknown,
      flashSwingPixels: unknown,
    };
    const place = { get: ({ id }: { id: string }) => values.findIndex(([key]) => key === id) };
    return stillnessSays({ answers: { ...base, ...answers }, graph: { place }, sheet: values.map(([, value]) => value) } as never);
  };

  test('one stop is one, in the middle and in the corner', () => {
    expect(says({})).toMatch(/^It takes 1 stop more exposure than /);
    expect(says({ moreExposureEv: known(-1) })).toMatch(/^It takes 1 stop less exposure than /);
    expect(says({ moreExposureEv: known(2) })).toMatch(/^It takes 2 stops more exposure than /);
    expect(says({ cornerMoreExposureEv: known(2) })).toContain(', and the corner of the picture 1 stop more than its middle.');
    expect(says({ cornerMoreExposureEv: known(2.234) })).toContain(' 1.2 stops more than its middle.');
    expect(says({})).not.toContain('corner');
  });
  test('a twentieth of a stop is none', () => {
    for (const ev of [0.0499, -0.0499]) expect(says({ moreExposureEv: known(ev) })).toMatch(/^It takes as much exposure as /);
    for (const ev of [0.0501, 0.5]) expect(says({ moreExposureEv: known(ev) })).toMatch(/ more exposure than /);
    const corner = (more: number) => says({ cornerMoreExposureEv: known(1 + more) });
    expect(corner(0.0502)).toContain('the corner of the picture');
    expect(corner(0.0498)).not.toContain('the corner');
  });
  test('times as they are dialled: parts of a second below a third of one', () => {
    const over = (exposureS: number): string => /µm\/s over (.*?), /.exec(says({}, { exposureS }))?.[1] ?? '';
    expect(over(0.00813)).toBe('1/120 s');
    expect(over(0.299)).toBe('1/3.3 s');
    expect(over(0.301)).toBe('0.3 s');
    expect(over(2.345)).toBe('2.3 s');
  });
  test('what drifts or swings is told with the pixels, from more than one on', () => {
    expect(says({ driftPixels: known(1.2345) })).toContain(' drawn out over 1.2 pixels.');
    for (const one of [known(1), known(0.9), unknown]) expect(says({ driftPixels: one })).not.toContain('As it drifts');
    expect(says({ swingPixels: known(5.123), flashSwingPixels: known(0.7834) })).toMatch(
      / over 5\.1 pixels in the exposure, over 0\.78 in the flash\.$/,
    );
    expect(says({ swingPixels: known(5) })).not.toContain('swinging');
    expect(says({ flashSwingPixels: known(5) })).not.toContain('swinging');
  });
  test('what is not known is told as that', () => {
    expect(says({ stillUm: unknown })).toContain('more than an unknown number of µm at the subject');
    expect(says({ moreExposureEv: unknown })).toMatch(/^How much light arrives is not known/);
  });
});
