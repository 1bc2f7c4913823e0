import { describe, expect, test } from 'vitest';
import { glassworks } from '../../../../core/glassworks.ts';
import { evaluate, numberIn, type Pairing, PairingError } from '../../../../core/index.ts';
import { sawOf, toldBy } from '../../../../core/table/saw/saw.ts';
import type { Sighting } from '../../../../core/table/saw/sightings.ts';
import { taken } from '../../../../core/table/saw/take.ts';
import { findingInWords } from '../../../../core/table/saw/words.ts';
import { bare, NINETY_FIVE_OF_EVEN, only, ruler } from './bare.ts';
import { q, table } from './simulated.ts';

const FAR = 1e9;
const image = (value: number, plusMinus: number): Sighting => ({ kind: 'far', imageMm: q(value, plusMinus), thingMm: FAR });
describe('several sightings of the same thing', () => {
  test('weigh as by hand, and say who does not agree', () => {
    // u = 0.5, 0.5, 1: weights 4, 4, 1; mean 1807/9; χ² = 4 (7/9)² + 4 (2/9)² + (20/9)² = 612/81.
    const u = (x: number): number => x * Math.sqrt(3);
    const sightings = [image(200, u(0.5)), image(201, u(0.5)), image(203, u(1))];
    const { results, inconsistent } = toldBy(bare(), { sightings });
    const r = results[0];
    expect(r?.value).toBeCloseTo(1807 / 9, 3);
    expect(r?.fit?.chiSquare).toBeCloseTo(612 / 81, 3);
    expect(r?.fit?.freedom).toBe(2);
    // Birge, Phys. Rev. 40, 207 (1932), and the scale factor of the Particle Data Group, both from memory: √(χ²/(n - 1)).
    const birge = Math.sqrt(612 / 162);
    expect(r?.fit?.birge).toBeCloseTo(birge, 4);
    expect(r?.plusMinus).toBeCloseTo((1.959964 / 3) * birge, 3);
    // Each against the mean of the other two: 203 - 200.5 over √(1 + 1/8), 200 - 201.4 over √(1/4 + 1/5).
    expect(inconsistent.map(({ sighting }) => sighting)).toEqual([2, 0]);
    expect(inconsistent[0]).toMatchObject({
      reads: 203,
      expected: expect.closeTo(200.5, 2),
      off: expect.closeTo(2.5 / Math.sqrt(1.125), 3),
    });
    expect(inconsistent[1]).toMatchObject({
      reads: 200,
      expected: expect.closeTo(201.4, 2),
      off: expect.closeTo(1.4 / Math.sqrt(0.45), 3),
    });
  });

  test('that agree within chance are not widened', () => {
    const { results, inconsistent } = toldBy(bare(), { sightings: [image(200, 1), image(200.6, 1)] });
    expect(inconsistent).toEqual([]);
    expect(results[0]?.value).toBeCloseTo(200.3, 4);
    expect(results[0]?.plusMinus).toBeCloseTo(NINETY_FIVE_OF_EVEN / Math.SQRT2, 3);
  });

  test('share what they share: a second ruler does not halve the doubt of the engraving', () => {
    const given = table({ f: q(200, 30), e: -15, rim: 16, M: q(10, 0.1) });
    const rulers = (n: number): Sighting[] => Array.from({ length: n }, () => ({ ...ruler(2.35, 1e-4), gives: 'relay' }) as Sighting);
    const [one, many] = [only(given, ...rulers(1)), only(given, ...rulers(8))];
    expect(many.plusMinus / one.plusMinus).toBeGreaterThan(0.999);
    // With a coarse ruler the doubt of the readings does shrink.
    const coarse = (n: number): Sighting[] => Array.from({ length: n }, () => ruler(2.35, 0.05));
    expect(only(bare(), ...coarse(9)).plusMinus).toBeCloseTo(only(bare(), ...coarse(1)).plusMinus / 3, 1);
  });
});

describe('what is found is taken', () => {
  const powered: Pairing = { ...bare(), relay: { kind: 'supplementary', powerDioptre: 5, clearApertureMm: 54 } };

  test('as measured, with its 95 % as ±, the engraving kept, and the magnification is the one that was seen', () => {
    const saw = sawOf(powered, { sightings: [ruler(2.31)] });
    expect(saw.pairing.relay).toEqual({ ...powered.relay, focalLengthMm: { value: 203.463, plusMinus: 1, origin: 'measured' } });
    const m = evaluate(saw.pairing).answers.systemMagnification;
    expect(numberIn(m)).toBeCloseTo(23.5 / 2.31, 4);
    expect(saw.magnification?.value).toBeCloseTo(23.5 / 2.31, 8);
    expect(saw.magnification?.high).toBeCloseTo(23.5 / (2.31 - NINETY_FIVE_OF_EVEN * 0.01), 6);
    const figure = saw.figures.find(({ id }) => id === 'systemMagnification');
    const width = (a: unknown): number => (a as { high: number }).high - (a as { low: number }).low;
    expect(width(figure?.after) / width(figure?.before)).toBeLessThan(0.11);
    const marked = taken(bare(), saw.results);
    expect(marked.relay.focalLengthMm).toEqual({ value: 203.463, plusMinus: 1, origin: 'measured', marked: 200 });
    // Taken once more it is the same, engraving and all.
    expect(taken(marked, saw.results)).toEqual(marked);
  });

  test('what lies outside the guess that it replaces is told to, in dioptres or mm', () => {
    // 5 dioptres are good to a quarter: 190.5 to 210.5 mm.
    for (const [f, beyond] of [
      [191, false],
      [210, false],
      [189.5, true],
      [211.5, true],
    ] as const)
      expect(only(powered, ruler((20 * 23.5) / f, 0.001)).beyond).toBe(beyond);
  });

  test('what stood there as exact and is far from it is told, by the glass too', () => {
    expect(only(bare(), ruler((20 * 23.5) / 208)).clash).toBeUndefined();
    const far = only(bare(), ruler((20 * 23.5) / 240));
    expect(far.clash).toEqual({ value: 200, path: '/relay/focalLengthMm' });
    expect(findingInWords(far)).toContain('200 stood here as exact');
    const glass = { radiiMm: [1000, -54, -91], thicknessesMm: [11, 4], glasses: ['N-BK7', 'N-SF5'] };
    const pairing: Pairing = { ...bare(), relay: { kind: 'supplementary', clearApertureMm: 40, glass } };
    const [traced] = toldBy(pairing, { sightings: [ruler(1.9)] }, glassworks()).results;
    expect(traced?.clash?.path).toBe('/relay/glass');
    expect(findingInWords(traced as never)).toContain('By its glass it would be');
  });

  test('sightings that are worlds apart give nothing to take', () => {
    const { results, unsolved, inconsistent } = toldBy(bare(), { sightings: [ruler(2.4), ruler(1.2)] });
    expect(results).toEqual([]);
    expect(unsolved[0]).toMatchObject({ path: '/relay/focalLengthMm', why: 'contradicts' });
    expect(inconsistent.length).toBeGreaterThan(0);
  });

  test('the number that is known less well is the one that a ruler tells', () => {
    const loose = {
      ...bare(),
      objective: { ...bare().objective, magnification: q(10, 0.4) },
      relay: { ...bare().relay, focalLengthMm: q(200, 1) },
    };
    const { results, pairing } = toldBy(loose, { sightings: [ruler(2.31)] });
    expect(results[0]?.path).toBe('/objective/magnification');
    expect(results[0]?.value).toBeCloseTo(23.5 / 2.31, 6);
    expect(pairing.objective.magnification).toMatchObject({ origin: 'measured', marked: 10 });
  });

  test('unless the pairing speaks against it', () => {
    const zoom: Pairing = { ...bare(), relay: { kind: 'camera-lens', focalLengthMm: 200, focalLengthRangeMm: [70, 200], fNumber: 4 } };
    const { results, unsolved, pairing } = toldBy(zoom, { sightings: [ruler(2.31)] });
    expect(results).toEqual([]);
    expect(unsolved[0]?.why).toBe('contradicts');
    expect(pairing).toEqual(zoom);
  });

  test('and what is needed first is named', () => {
    const { clearApertureMm: _, ...relay } = bare().relay;
    const { unsolved } = toldBy({ ...bare(), relay }, { sightings: [{ kind: 'wall', cornerLossEv: q(1, 0.1) }] });
    expect(unsolved[0]).toMatchObject({ why: 'missing', missing: ['/relay/clearApertureMm'] });
    expect(() => toldBy({ ...bare(), relay: { kind: 'tube-lens' } }, { sightings: [ruler(2)] })).toThrow(PairingError);
  });
});
