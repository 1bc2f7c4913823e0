import { describe, expect, test } from 'vitest';
import { coloursPart, filledIn } from '../../../core/contrast/between.ts';
import { coloursOf, spectrumOf } from '../../../core/contrast/colours.ts';
import type { Differences } from '../../../core/contrast/differences.ts';
import { BENT, LIGHT } from './lenses.ts';

const row = (...values: number[]): Float64Array => Float64Array.from(values);
/** Pairs at several wavelengths: a row of phases for each; all of the same area and not moved by the focus, unless said. */
const pairs = (phase: number[][], { rate, area }: { rate?: number[][]; area?: number[][] } = {}): Differences => ({
  phase: phase.map((p) => row(...p)),
  rate: (rate ?? phase.map((p) => p.map(() => 0))).map((p) => row(...p)),
  area: (area ?? phase.map((p) => p.map(() => 1))).map((p) => row(...p)),
});

describe('colours part', () => {
  test('by more than three tenths of a wave from one to the next, in the mean of squares', () => {
    const change = (...by: number[]): boolean => coloursPart(pairs([by.map(() => 2), by.map((d) => 2 + d)]), 0, [0.5, 0.5]);
    expect(coloursPart(pairs([[0], [0.3]]), 0, [0.5, 0.5])).toBe(false);
    expect(change(0.3015)).toBe(true);
    expect(change(-0.3015)).toBe(true);
    // The mean of the squares of .1, .1 and .5 is .09: just three tenths.
    expect(change(0.1, 0.1, 0.499)).toBe(false);
    expect(change(0.1, 0.1, 0.501)).toBe(true);
    expect(change(0.501, 0.1, 0.1)).toBe(true);
  });

  test('between any two neighbours, not over several', () => {
    const steps = (...phases: number[]): boolean =>
      coloursPart(
        pairs(phases.map((p) => [p])),
        0,
        phases.map(() => 1 / phases.length),
      );
    expect(steps(0, 0.25, 0.5, 0.75)).toBe(false);
    expect(steps(0, 0.4, 0.5, 0.6)).toBe(true);
    expect(steps(0, 0.1, 0.2, 0.6)).toBe(true);
  });

  test('only where both have a tenth of the light', () => {
    const parted = pairs([[0], [1]]);
    expect(coloursPart(parted, 0, [0.9, 0.1])).toBe(true);
    expect(coloursPart(parted, 0, [0.1, 0.9])).toBe(true);
    expect(coloursPart(parted, 0, [0.901, 0.099])).toBe(false);
    expect(coloursPart(parted, 0, [0.099, 0.901])).toBe(false);
    // Past a faint pair the next is looked at all the same.
    expect(coloursPart(pairs([[0], [1], [2]]), 0, [0.05, 0.5, 0.45])).toBe(true);
  });

  test('as they are at the focus that is asked for', () => {
    const moving = pairs([[0], [1]], { rate: [[3], [1]] });
    // 0 + 3 f and 1 + f meet at f = 1/2.
    expect(coloursPart(moving, 0.5, [0.5, 0.5])).toBe(false);
    expect(coloursPart(moving, 0.7, [0.5, 0.5])).toBe(true);
    expect(coloursPart(moving, -0.5, [0.5, 0.5])).toBe(true);
  });

  test('by pairs that come through at both, each as its area counts', () => {
    const phase = [
      [0, 0],
      [0, 1],
    ];
    const weighed = (first: number[], second: number[]): boolean => coloursPart(pairs(phase, { area: [first, second] }), 0, [0.5, 0.5]);
    expect(weighed([1, 1], [1, 0])).toBe(false);
    expect(weighed([1, 0], [1, 1])).toBe(false);
    // One in twelve parts by a wave: 1 / 12 is less than .09; one in eleven: more.
    expect(weighed([11, 1], [11, 1])).toBe(false);
    expect(weighed([10, 1], [10, 1])).toBe(true);
  });

  test('never where there is but one', () => expect(coloursPart(pairs([[1, 2]]), 0, [1])).toBe(false));
});

describe('the wavelengths between', () => {
  const { wavelengthsMm, between } = coloursOf(BENT, spectrumOf('photopic', LIGHT), LIGHT);
  const traced = wavelengthsMm.map((mm) => mm * 1e6);
  const table = Array.from({ length: 15 }, (_, i) => 420 + 20 * i);
  if (!between) throw new Error('white light has wavelengths between');

  test('carry all of the light, most of it where the eye sees best', () => {
    expect(between.weights.length).toBe(15);
    expect(between.weights.reduce((sum, w) => sum + w, 0)).toBeCloseTo(1, 12);
    // The eye's .995 at 560 nm, over what the table of every 20 nm adds up to: half of 106.86 nm / 10 nm, the area under it.
    expect(between.weights[7]).toBeCloseTo(0.995 / 5.343, 3);
    expect(between.weights.indexOf(Math.max(...between.weights))).toBe(7);
  });

  test('are filled in exactly where a phase goes as the fourth power of the wavelength', () => {
    const quartic = (nm: number): number => 3 - nm / 100 + (nm / 300) ** 4;
    const found = filledIn(
      pairs(
        traced.map((nm) => [quartic(nm), 1]),
        { rate: traced.map((nm) => [2, nm / 100]), area: traced.map((nm) => [nm / 200, 1]) },
      ),
      between,
    );
    table.forEach((nm, k) => {
      expect(found.phase[k]?.[0]).toBeCloseTo(quartic(nm), 9);
      expect(found.phase[k]?.[1]).toBeCloseTo(1, 9);
      expect(found.rate[k]?.[0]).toBeCloseTo(2, 9);
      expect(found.rate[k]?.[1]).toBeCloseTo(nm / 100, 9);
      expect(found.area[k]?.[0]).toBeCloseTo(nm / 200, 9);
      expect(found.area[k]?.[1]).toBeCloseTo(1, 9);
    });
    expect(found.phase.length).toBe(15);
  });

  test('have nothing of a pair that is lost at one of the traced, and never less than nothing', () => {
    const areas = traced.map((_, c) => [c === 3 ? 0 : 1, c === 2 ? 5 : 0.01, 1]);
    const found = filledIn(pairs(areas, { area: areas }), between);
    for (const area of found.area) {
      expect(area[0]).toBe(0);
      expect(area[1]).toBeGreaterThanOrEqual(0);
      expect(area[2]).toBeCloseTo(1, 9);
    }
    expect(Math.min(...found.area.map((area) => area[1] as number))).toBe(0);
  });
});

describe('the light that a pairing is judged in', () => {
  test('is white, or all of it of the one wavelength', () => {
    expect(spectrumOf('one wavelength', 550)).toEqual([{ wavelengthNm: 550, weight: 1 }]);
    expect(spectrumOf('photopic', 550).length).toBe(5);
    expect(coloursOf(BENT, spectrumOf('one wavelength', LIGHT), LIGHT).between).toBeUndefined();
  });
});
