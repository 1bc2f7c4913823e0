import { describe, expect, it } from 'vitest';
import { sellmeier } from '../../../core/glass/dispersion.ts';
import { GLASS_NAMES, glassNamed } from '../../../core/glass/glasses.ts';
import { AIR, type Medium, plainIndex, WavelengthError } from '../../../core/glass/medium.ts';

const crown = glassNamed('N-BK7') as Medium;

describe('a medium', () => {
  it('is asked inside its range, both ends included', () => {
    expect(crown.rangeNm).toEqual([300, 2500]);
    expect(crown.indexAt(300)).toBeGreaterThan(crown.indexAt(2500));
  });

  it.each([299.999, 2500.001, 0, -550, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d nm instead of extrapolating', (nm) => {
    let thrown: unknown;
    try {
      crown.indexAt(nm);
    } catch (error) {
      thrown = error;
    }
    expect(thrown).toBeInstanceOf(WavelengthError);
    expect(thrown).toMatchObject({ name: 'WavelengthError', medium: 'N-BK7', wavelengthNm: nm, rangeNm: [300, 2500] });
    expect((thrown as Error).message).toBe(`N-BK7 is known from 300 to 2500 nm, not at ${nm} nm`);
  });

  it('may be air, or an index without dispersion, at every wavelength that a pairing may ask for', () => {
    for (const nm of [100, 550, 3000]) {
      expect(AIR.indexAt(nm)).toBe(1);
      expect(plainIndex(1.517).indexAt(nm)).toBe(1.517);
    }
    expect(plainIndex(1.517).name).toBe('1.517');
    expect(() => AIR.indexAt(99)).toThrow(WavelengthError);
  });
});

describe('a glass by its name', () => {
  it('is found in any case, with blanks around it', () => {
    expect(glassNamed(' n-bk7 ')).toBe(crown);
    expect(glassNamed('FUSED SILICA')).toBe(glassNamed('fused silica'));
    for (const name of GLASS_NAMES) expect(glassNamed(name.toLowerCase())?.name).toBe(name);
  });
  it('is air by that name, and is not where there is none', () => {
    expect(glassNamed('Air')).toBe(AIR);
    expect(GLASS_NAMES).not.toContain('air');
    for (const name of ['', 'BK', '__proto__', 'constructor', '1.5']) expect(glassNamed(name)).toBeUndefined();
  });
});

it("follows Sellmeier's formula: one resonance at 0.1 µm of strength 1.25 makes n² = 1 + 1.25 / (1 - 0.01 / λ²)", () => {
  const one = sellmeier({ name: 'one', B: [1.25], C: [0.01], rangeUm: [0.2, 2] });
  expect(one.indexAt(200)).toBeCloseTo(Math.sqrt(1 + 1.25 / 0.75), 14);
  expect(one.indexAt(1000)).toBeCloseTo(Math.sqrt(1 + 1.25 / 0.99), 14);
  const halves = sellmeier({ name: 'halves', B: [0.5, 0.75], C: [0.01, 0.01], rangeUm: [0.2, 2] });
  expect(halves.indexAt(517)).toBeCloseTo(one.indexAt(517), 14);
});
