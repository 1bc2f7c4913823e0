import { describe, expect, it } from 'vitest';
import { LUMINOUS_EFFICIENCY, oneWavelength, photopic, type Spectrum } from '../../../core/diffraction/spectrum.ts';

type Of = (nm: number) => number;

const sum = (light: Spectrum, of: Of): number => light.reduce((total, { wavelengthNm, weight }) => total + weight * of(wavelengthNm), 0);

/** The table between its samples: the cubic through the four nearest. */
function efficiencyAt(nm: number): number {
  const first = Math.min(Math.max(10 * Math.floor(nm / 10) - 10, 380), 750);
  const nodes = [0, 10, 20, 30].map((step) => first + step);
  const share = (node: number): number =>
    nodes.reduce((product, other) => (other === node ? product : (product * (nm - other)) / (node - other)), 1);
  return nodes.reduce((total, node) => total + share(node) * (LUMINOUS_EFFICIENCY.get(node) as number), 0);
}

/** Mean of a function under V, over samples of any density. */
function mean(wavelengths: readonly number[], efficiency: Of, of: Of): number {
  const total = wavelengths.reduce((all, nm) => all + efficiency(nm), 0);
  return wavelengths.reduce((all, nm) => all + (efficiency(nm) / total) * of(nm), 0);
}
it("the eye's efficiency has the area that is printed for it, 106.857 nm, and its peak of 1 at 555 nm", () => {
  // Σ V(λ) as tables of the CIE 1931 observer end on (from memory): 106.857 where λ goes by single nanometres.
  const area = 10 * [...LUMINOUS_EFFICIENCY.values()].reduce((sum, v) => sum + v, 0);
  expect(area).toBeCloseTo(106.857, 2);
  expect(LUMINOUS_EFFICIENCY.get(550)).toBeCloseTo(LUMINOUS_EFFICIENCY.get(560) as number, 3);
  expect(Math.max(...LUMINOUS_EFFICIENCY.values())).toBe(0.995);
});

const coarse = [...LUMINOUS_EFFICIENCY.keys()];
const fine = Array.from({ length: 4001 }, (_, i) => 380 + i / 10);
const overTable = (of: Of): number => mean(coarse, (nm) => LUMINOUS_EFFICIENCY.get(nm) as number, of);
const power =
  (degree: number): Of =>
  (nm) =>
    ((nm - 580) / 200) ** degree;

describe('light as the eye weighs it', () => {
  const counts = Array.from({ length: 12 }, (_, i) => i + 1);

  it.each(counts)('in %d wavelengths: in rising order inside the table, weights positive and 1 in all', (count) => {
    const light = photopic(count);
    expect(light.length).toBe(count);
    const nm = light.map((l) => l.wavelengthNm);
    for (let i = 0; i <= count; i++) expect(nm[i] ?? 780).toBeGreaterThan(nm[i - 1] ?? 380);
    for (const { weight } of light) expect(weight).toBeGreaterThan(0);
    expect(Math.abs(sum(light, () => 1) - 1)).toBeLessThan(2e-12);
  });

  it.each(counts)('in %d wavelengths: exact for polynomials of degree below twice that, not for the next', (count) => {
    const light = photopic(count);
    for (let degree = 0; degree < 2 * count; degree++)
      expect(Math.abs(sum(light, power(degree)) - overTable(power(degree)))).toBeLessThan(2e-12);
    expect(Math.abs(sum(light, power(2 * count)) - overTable(power(2 * count)))).toBeGreaterThan(1e-9);
  });

  it('of one wavelength is the centre of gravity of V', () => {
    expect(photopic(1)[0]?.wavelengthNm).toBeCloseTo(
      overTable((nm) => nm),
      9,
    );
  });

  it('is five wavelengths unless another number is asked for', () => expect(photopic()).toEqual(photopic(5)));

  it.each([0, 13, 2.5, -1, Number.NaN])('is not told in %d wavelengths', (count) => expect(() => photopic(count)).toThrow(RangeError));
});

describe('the table is dense enough', () => {
  // What the CIE's own table of every nanometre has there (1924, read in a copy).
  it.each([
    [486, 0.1762431],
    [546, 0.9840924],
    [555, 1],
    [588, 0.781192],
    [656, 0.07712064],
  ])('between its samples, at %d nm, it interpolates to a thousandth', (nm, v) =>
    expect(Math.abs(efficiencyAt(nm) - v)).toBeLessThan(5e-4),
  );
  // Its table of every 5 nm, from memory: the values half-way, off which a hundredth more in one of ours would be.
  it.each([
    [435, 0.01684, 455, 0.048, 465, 0.0739, 475, 0.1126, 485, 0.1693, 495, 0.2586, 505, 0.4073, 515, 0.6082],
    [525, 0.7932, 535, 0.91485, 545, 0.98, 555, 1, 565, 0.9786, 575, 0.9154, 585, 0.8163, 595, 0.6949],
    [605, 0.5668, 615, 0.4412, 625, 0.321, 635, 0.217, 645, 0.1382, 655, 0.0816, 665, 0.04458, 705, 0.002929, 715, 0.00148],
  ])('half-way it goes by the cubic through the logarithms of its neighbours: from %d nm on', (...told) => {
    const log = (nm: number): number => Math.log(LUMINOUS_EFFICIENCY.get(nm) as number);
    for (let i = 0; i < told.length; i += 2) {
      const [nm, v] = [told[i] as number, told[i + 1] as number];
      const between = (9 * (log(nm - 5) + log(nm + 5)) - log(nm - 15) - log(nm + 15)) / 16;
      expect(Math.abs(Math.exp(between) / v - 1), `at ${nm} nm`).toBeLessThan(5e-3);
    }
  });
  it('for its sum to stand for the integral: a hundred times as many samples mean the same', () => {
    for (let degree = 1; degree <= 10; degree++)
      expect(Math.abs(overTable(power(degree)) - mean(fine, efficiencyAt, power(degree)))).toBeLessThan(5e-6);
  });
});

it('one wavelength is all the light', () => expect(oneWavelength(587.5618)).toEqual([{ wavelengthNm: 587.5618, weight: 1 }]));
