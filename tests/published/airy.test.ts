import j1 from '@stdlib/math-base-special-besselj1';
import { describe, expect, it } from 'vitest';
import { agrees } from '../../core/checked/printed.ts';
import { engraved, told } from '../../core/checked/rig.ts';
import { AIRY_ZERO } from '../../core/index.ts';

/**
 * The Airy pattern by the Bessel function of a general-purpose library. That library is first held to
 * published values of its own; then it says where core's dark ring must lie.
 */
const intensity = (x: number): number => ((2 * j1(x)) / x) ** 2;

describe('the library', () => {
  it('has half the intensity at 1.6163399483 (OEIS A221210, R. J. Mathar 2013)', () => {
    const step = 0.5e-10;
    expect(intensity(1.6163399483 - step)).toBeGreaterThan(0.5);
    expect(intensity(1.6163399483 + step)).toBeLessThan(0.5);
  });
  it('has its first dark rings at x/π = 1.220, 2.233 and 3.238 (M. Born, E. Wolf, 8.5.2, from memory)', () => {
    for (const ring of [1.22, 2.233, 3.238])
      expect(Math.sign(j1(Math.PI * (ring - 0.0005)))).toBe(-Math.sign(j1(Math.PI * (ring + 0.0005))));
  });
  it('has bright rings of 0.0175, 0.0042 and 0.0016 (M. Born, E. Wolf, 8.5.2, from memory)', () => {
    for (const [from, to, text] of [
      [1.22, 2.233, '0.0175'],
      [2.233, 3.238, '0.0042'],
      [3.238, 4.241, '0.0016'],
    ] as const) {
      const ring = Array.from({ length: 2001 }, (_, i) => intensity(Math.PI * (from + ((to - from) * i) / 2000)));
      expect(agrees(Math.max(...ring), text)).toBe(true);
    }
  });
});

describe('core against the library', () => {
  it('AIRY_ZERO is its first zero to the last bit but one', () => {
    expect(j1(Math.PI * AIRY_ZERO * (1 - 4e-16))).toBeGreaterThanOrEqual(0);
    expect(Math.abs(j1(Math.PI * AIRY_ZERO))).toBeLessThan(1e-15);
  });
  it.each([
    [10, 0.25, 550],
    [40, 0.65, 486],
    [2, 0.055, 656],
  ])('the edge of the Airy disc of %dx/%d at %d nm is dark, on the sensor and at the subject', (M, NA, nm) => {
    const rig = engraved(`${M}x/${NA}`, { wavelengthNm: nm });
    const onSensor = told(rig, 'airyDiameterUm') / 2;
    const atSubject = told(rig, 'rayleighUm');
    // x = 2π NA r / λ at the subject, with NA / M in the place of NA on the sensor.
    const scale = (2 * Math.PI * 1e3) / nm;
    expect(Math.abs(j1(scale * (NA / M) * onSensor))).toBeLessThan(1e-14);
    expect(Math.abs(j1(scale * NA * atSubject))).toBeLessThan(1e-14);
  });
});
