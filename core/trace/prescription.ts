import type { Lens } from './lens.ts';

/** A lens at one wavelength, in the flat arrays that the tracing loop reads. Air before and behind. */
export interface Prescription {
  readonly count: number;
  /** 1/mm; 0 for a plane. */
  readonly curvature: Float64Array;
  /** From the vertex before; 0 for the first surface. */
  readonly gap: Float64Array;
  /** Refractive index before each surface, and behind the last: one more than surfaces. */
  readonly index: Float64Array;
  /** Square of the height to which a surface lets light through, mm². */
  readonly clear: Float64Array;
}

/** @throws WavelengthError where a medium is not known for this wavelength */
export function prescription(lens: Lens, wavelengthNm: number): Prescription {
  const count = lens.radiiMm.length;
  return {
    count,
    curvature: Float64Array.from(lens.radiiMm, (r) => 1 / r),
    gap: Float64Array.of(0, ...lens.thicknessesMm),
    index: Float64Array.of(1, ...lens.media.map((m) => m.indexAt(wavelengthNm)), 1),
    clear: Float64Array.from(lens.semiAperturesMm, (s) => s * s),
  };
}
