import { describe, expect, it } from 'vitest';
import { achromatPowers, secondarySpectrum } from '../../../core/glass/achromat.ts';
import { GLASS_NAMES, glassNamed } from '../../../core/glass/glasses.ts';
import { abbeNumber, indexAtLine, LINES, type Line, partialDispersion } from '../../../core/glass/lines.ts';
import { AIR, type Medium, plainIndex } from '../../../core/glass/medium.ts';
import { glassOfCode, normalGlass, normalPartialDispersion, offNormalLine } from '../../../core/glass/normal.ts';

const named = (name: string): Medium => glassNamed(name) as Medium;
const all = GLASS_NAMES.map(named);

describe('lines', () => {
  it('run from the ultraviolet to the infrared, in the order of their names in catalogues', () => {
    const nm = Object.values(LINES);
    expect(nm).toEqual(nm.toSorted((a, b) => a - b));
    expect(Object.keys(LINES).join(' ')).toBe("i h g F' F e d C' C r s t");
  });
  it('are the colours of their elements, as ISO 7944 and the tables of spectra have them (nm in air, from memory)', () => {
    const mercury = { i: 365.015, h: 404.656, g: 435.834, e: 546.074, t: 1013.98 };
    const cadmium = { "F'": 479.991, "C'": 643.847 };
    const helium = { d: 587.562, r: 706.519 };
    const caesium = { s: 852.11 };
    for (const [line, nm] of Object.entries({ ...mercury, ...cadmium, ...helium, ...caesium }))
      expect(LINES[line as Line], line).toBeCloseTo(nm, 3);
    // Hydrogen's by Rydberg's formula: 1 / λ = R (1/4 - 1/n²) in the vacuum, R of hydrogen 10967758.3 per metre; air shortens λ by 1.000277 or so.
    for (const [line, n] of [
      ['C', 3],
      ['F', 4],
    ] as const)
      expect(LINES[line], line).toBeCloseTo(1e9 / (10967758.3 * (1 / 4 - 1 / n ** 2)) / 1.000277, 1);
  });
  it('share the main dispersion out among them: parts that join add up, F to C is 1', () => {
    for (const glass of all) {
      expect(partialDispersion(glass, 'F', 'C')).toBe(1);
      expect(partialDispersion(glass, 'F', 'd') + partialDispersion(glass, 'd', 'C')).toBeCloseTo(1, 12);
      expect(partialDispersion(glass, 'g', 'C')).toBeCloseTo(partialDispersion(glass, 'g', 'F') + 1, 12);
    }
  });
});

it('an Abbe number is not told of what has no dispersion', () => {
  for (const plain of [AIR, plainIndex(1.5)]) {
    for (const line of ['d', 'e'] as const) expect(() => abbeNumber(plain, line)).toThrow(`${plain.name} has no dispersion`);
    expect(() => partialDispersion(plain, 'g', 'F')).toThrow(RangeError);
  }
});

describe('a glass known by n_d and Abbe number alone', () => {
  const worst = (glass: Medium, least: number, greatest: number): number => {
    const model = normalGlass('model', indexAtLine(glass, 'd'), abbeNumber(glass, 'd'));
    let off = 0;
    for (let nm = least; nm <= greatest; nm += 5) off = Math.max(off, Math.abs(model.indexAt(nm) - glass.indexAt(nm)));
    return off;
  };
  it('has them, and lies on the normal line', () => {
    for (const [nd, abbe] of [
      [1.5168, 64.17],
      [1.805, 25.4],
    ] as const) {
      const glass = normalGlass('model', nd, abbe);
      expect(indexAtLine(glass, 'd')).toBeCloseTo(nd, 13);
      expect(abbeNumber(glass, 'd')).toBeCloseTo(abbe, 9);
      expect(partialDispersion(glass, 'g', 'F')).toBeCloseTo(normalPartialDispersion(abbe), 11);
      expect(offNormalLine(glass)).toBeCloseTo(0, 11);
    }
  });
  it('is as good as it says for glasses near the line, and no better for others', () => {
    const near = all.filter((glass) => Math.abs(offNormalLine(glass)) < 0.003);
    expect(near.length).toBe(22);
    expect(Math.max(...near.map((glass) => worst(glass, 430, 680)))).toBeLessThan(2e-4);
    expect(Math.max(...near.map((glass) => worst(glass, 400, 750)))).toBeLessThan(4e-4);
    const heaviest = named('N-SF57');
    expect(worst(heaviest, 430, 680)).toBeCloseTo(8e-4, 4);
    expect(worst(heaviest, 400, 750)).toBeCloseTo(2.5e-3, 4);
  });
  it('is named by six digits', () => {
    const glass = named('517642');
    expect(glass).toMatchObject({ name: '517642', rangeNm: [400, 750] });
    expect(indexAtLine(glass, 'd')).toBeCloseTo(1.517, 13);
    expect(abbeNumber(glass, 'd')).toBeCloseTo(64.2, 9);
    expect(Math.abs(glass.indexAt(450) - named('N-BK7').indexAt(450))).toBeLessThan(4e-4);
    // The lightest and the heaviest that are glass: 1.400, and an Abbe number of 15.
    expect(indexAtLine(named('400150'), 'd')).toBeCloseTo(1.4, 13);
    expect(abbeNumber(named('400150'), 'd')).toBeCloseTo(15, 9);
    for (const code of ['51764', '5176420', '399642', '517149', '517-642', '51764x', '000000']) expect(glassOfCode(code)).toBeUndefined();
  });
});

describe('a thin achromat', () => {
  const foci = (first: Medium, second: Medium, line: Line): number => {
    const [one, other] = achromatPowers(1 / 200, abbeNumber(first, 'd'), abbeNumber(second, 'd'));
    const power = (glass: Medium, d: number): number => (d * (indexAtLine(glass, line) - 1)) / (indexAtLine(glass, 'd') - 1);
    return 1 / (power(first, one) + power(second, other));
  };
  it.each([
    ['N-BK7', 'F2'],
    ['N-BAF10', 'N-SF6'],
    ['SF5', 'N-BK7'],
    ['CaF2', 'N-KZFS11'],
  ])('of %s and %s has its power, one focus for F and C, and a secondary spectrum', (...names) => {
    const [first, second] = names.map(named) as [Medium, Medium];
    expect(foci(first, second, 'd')).toBeCloseTo(200, 10);
    expect(foci(first, second, 'F')).toBeCloseTo(foci(first, second, 'C'), 10);
    const behind = (foci(first, second, 'F') - 200) / 200;
    expect(behind).toBeGreaterThan(0);
    // The formula is the first order of a shift over a focal length.
    expect(Math.abs(secondarySpectrum(first, second) / behind - 1)).toBeLessThan(1.01 * behind);
  });
  it('is refused to two glasses of one Abbe number', () => {
    expect(() => achromatPowers(1, 60, 60)).toThrow(RangeError);
    expect(() => secondarySpectrum(named('N-BK7'), named('N-BK7'))).toThrow(RangeError);
  });
  it('changes its lenses with its glasses, and scales with its power', () => {
    const [one, other] = achromatPowers(5, 64.2, 32.2);
    expect(achromatPowers(5, 32.2, 64.2)).toEqual([other, one]);
    expect(achromatPowers(10, 64.2, 32.2)).toEqual([2 * one, 2 * other]);
  });
});
