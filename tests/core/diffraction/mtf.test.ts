import { describe, expect, it } from 'vitest';
import { AIRY_ZERO, airyDiameter, rayleigh } from '../../../core/diffraction/airy.ts';
import { cutMtf } from '../../../core/diffraction/cut.ts';
import { detectorTerm, waveTerm } from '../../../core/diffraction/depth.ts';
import { diffractionMtf, pixelMtf, systemMtf } from '../../../core/diffraction/mtf.ts';
import type { SeenStops } from '../../../core/pupil/stops.ts';

/** Bessel's function of order 1 by its series, `Σ (-1)^k (x/2)^(2k+1) / (k! (k+1)!)`. */
function J1(x: number): number {
  let [term, sum] = [x / 2, x / 2];
  for (let k = 1; k < 30; k++) {
    term *= -((x / 2) ** 2) / (k * (k + 1));
    sum += term;
  }
  return sum;
}

describe('the Airy pattern', () => {
  it('has its first dark ring at the first zero of J1', () => {
    expect(Math.abs(J1(Math.PI * AIRY_ZERO))).toBeLessThan(1e-12);
    for (let x = 0.1; x < 3.8; x += 0.1) expect(J1(x)).toBeGreaterThan(0);
  });
  it('is 0.61 λ/NA from middle to ring at the subject, and 2.44 λN across on the sensor', () => {
    expect(rayleigh(0.55, 0.5)).toBeCloseTo(0.61 * 1.1, 3);
    expect(airyDiameter(0.55, 20)).toBeCloseTo(2.44 * 11, 1);
  });
});

describe('contrast', () => {
  it('is the same for a frequency told with the other sign', () => {
    // (2/π)(π/3 - √3/4)
    for (const v of [0.5, -0.5]) expect(diffractionMtf(v)).toBeCloseTo(2 / 3 - Math.sqrt(3) / (2 * Math.PI), 12);
    for (const v of [0.5, -0.5]) expect(pixelMtf(v)).toBeCloseTo(2 / Math.PI, 12);
    expect(diffractionMtf(-1.5)).toBe(0);
  });
  it('of a pixel is whole for what does not vary', () => expect(pixelMtf(0)).toBe(1));
  it('of both is the product: at half the cut-off, with half a cycle to a pixel of 12.5 µm', () =>
    expect(systemMtf(40, 80, 0.0125)).toBeCloseTo((diffractionMtf(0.5) * 2) / Math.PI, 12));
});

describe('a cut pupil', () => {
  const seen = (radius: number): SeenStops => ({
    walk: [0, 10],
    radius: [radius, 2 * radius],
    fieldSlope: 0.05,
    limiting: 0,
    stopOf: [0, 1],
    fieldStop: undefined,
  });
  it('gets light as far as the field stop, its edge included, on both sides of the axis', () => {
    for (const slope of [0.05, -0.05, 0]) expect(cutMtf(seen(4), slope, 0.2)).toBeDefined();
    for (const slope of [0.0501, -0.0501]) expect(cutMtf(seen(4), slope, 0.2)).toBeUndefined();
  });
  it('may be as small as it likes: contrast goes by parts of it', () =>
    expect(cutMtf(seen(0.01), 0, 0.3)?.sagittal).toBeCloseTo(diffractionMtf(0.3), 9));
  it('does not mind the sign of a frequency', () => expect(cutMtf(seen(4), 0.04, -0.3)).toEqual(cutMtf(seen(4), 0.04, 0.3)));
});

describe('depth of field', () => {
  // NA over the index is 0.6, its cosine 0.8: λ / (2 · 1.25 · 0.2) = 2 λ.
  it('at a high aperture in a medium is by the angle there', () =>
    expect(waveTerm('high-aperture', 0.55, 0.75, 1.25)).toBeCloseTo(1.1, 12));
  it('by the other conventions is λn/NA², half and twice that', () =>
    expect((['wave-and-pixel', 'half-wave-term', 'double-wave-term'] as const).map((name) => waveTerm(name, 0.5, 0.5, 1.5))).toEqual([
      3, 1.5, 6,
    ]));
  it('of a blur on the sensor is that over the magnification and the aperture', () =>
    expect(detectorTerm(6, 10, 0.3, 1.5)).toBeCloseTo(3, 12));
});
