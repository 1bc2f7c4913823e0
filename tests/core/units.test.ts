import { describe, expect, it } from 'vitest';
import { DEG_PER_RAD, DIMENSION, MM_PER_INCH, MM_PER_M, MM_PER_NM, MM_PER_UM, UM_PER_MM } from '../../core/units.ts';

describe('units', () => {
  it('cross over as the SI has them, and the international inch of 1959', () => {
    expect(1 / MM_PER_UM).toBe(UM_PER_MM);
    expect(UM_PER_MM * 1000 * MM_PER_NM).toBe(1);
    expect(MM_PER_M * UM_PER_MM).toBe(1e6);
    expect(MM_PER_INCH * 10).toBe(254);
    // A full turn.
    expect(2 * Math.PI * DEG_PER_RAD).toBeCloseTo(360, 12);
  });

  it('have the power of length that is written in them', () => {
    /** Of each symbol alone; a count, a ratio, a logarithm, an angle and a time have none. A wavelength is counted in itself. */
    const alone: Record<string, number> = { mm: 1, µm: 1, m: 1, D: -1, 1: 0, lp: 0, MP: 0, EV: 0, '°': 0, s: 0, λ: 0 };
    for (const [unit, power] of Object.entries(DIMENSION)) {
      const [over = '', under] = unit.split('/');
      expect(power, unit).toBe((alone[over] as number) - (under === undefined ? 0 : (alone[under] as number)));
    }
  });
});
