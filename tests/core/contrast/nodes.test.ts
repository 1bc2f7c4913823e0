import { describe, expect, test } from 'vitest';
import { coloursOf, spectrumOf } from '../../../core/contrast/colours.ts';
import { fieldPoint } from '../../../core/contrast/field.ts';
import { reversed } from '../../../core/trace/lens.ts';
import { BENT, LIGHT, settingOf } from './lenses.ts';

/** Standard deviation of the phases that so many nodes follow, with a fifth of a wave to spare for what is out of focus. */
const follows = (nodes: number): number => nodes / 12 - 0.2;

describe('the nodes across a beam', () => {
  test('are as few as follow its phases, and the fewest where none do', () => {
    const met = new Map<number, number>();
    let lost = 0;
    for (const lens of [BENT, reversed(BENT)])
      for (const radius of [12, 15, 18, 22, 25])
        for (const slope of [0, 0.05])
          for (const frequency of [24, 48, 96]) {
            const point = fieldPoint(settingOf(lens, { radius, distance: 20, frequency }), slope);
            for (const pairs of point ? [point.sagittal, point.tangential] : []) {
              const spread = Math.sqrt(pairs.steady.least);
              // What more nodes find may differ in the third digit from what the fewest found.
              if ([7, 11, 15].some((n) => Math.abs(spread - follows(n)) < 0.01)) continue;
              const nodes = [7, 11, 15].find((n) => spread < follows(n)) ?? 7;
              expect(pairs.mostSpread).toBeCloseTo(nodes / 12, 12);
              // Where no ray is lost the list is as long as the nodes make it.
              expect(pairs.count).toBeLessThanOrEqual(nodes * nodes);
              if (radius < 15) expect(pairs.count).toBe(nodes * nodes);
              met.set(nodes, (met.get(nodes) ?? 0) + 1);
              if (spread > follows(15)) lost++;
            }
          }
    for (const nodes of [7, 11, 15]) expect(met.get(nodes)).toBeGreaterThan(5);
    expect(lost).toBeGreaterThan(5);
  });
});

describe('white light', () => {
  test('is five wavelengths where they hardly part: an achromat with a slender beam', () => {
    const colours = coloursOf(BENT, spectrumOf('photopic', LIGHT), LIGHT);
    const point = fieldPoint({ ...settingOf(BENT, { radius: 2, frequency: 16 }), colours }, 0);
    for (const pairs of [point?.sagittal, point?.tangential]) expect(pairs?.count).toBe(5 * 49);
  });
});
