import type { Medium } from '../glass/medium.ts';
import { heightBetween } from './surface.ts';

/**
 * A centred lens of spherical and plane surfaces in air, listed in the order in which light meets them.
 * Radii are positive where the centre lies behind the surface, Infinity for a plane.
 */
export interface Lens {
  readonly radiiMm: readonly number[];
  /** From each surface's vertex to the next one's: one fewer than surfaces. */
  readonly thicknessesMm: readonly number[];
  /** What fills each thickness. */
  readonly media: readonly Medium[];
  /** The height to which each surface lets light through. */
  readonly semiAperturesMm: readonly number[];
}

/** A radius seen from the other side; a plane stays Infinity. */
export const turned = (radiusMm: number): number => (Number.isFinite(radiusMm) ? 0 - radiusMm : radiusMm);

/** The same lens with its other side first. Twice is the identity. */
export const reversed = (lens: Lens): Lens => ({
  radiiMm: lens.radiiMm.toReversed().map(turned),
  thicknessesMm: lens.thicknessesMm.toReversed(),
  media: lens.media.toReversed(),
  semiAperturesMm: lens.semiAperturesMm.toReversed(),
});

/** The same lens `k` times as large, of the same glasses. */
export const scaled = (lens: Lens, k: number): Lens => ({
  ...lens,
  radiiMm: lens.radiiMm.map((r) => k * r),
  thicknessesMm: lens.thicknessesMm.map((t) => k * t),
  semiAperturesMm: lens.semiAperturesMm.map((s) => k * s),
});

/** Two lenses in a row, `gapMm` of `between` from the last vertex of the first to the first vertex of the second. */
export const inRow = (first: Lens, second: Lens, gapMm: number, between: Medium): Lens => ({
  radiiMm: [...first.radiiMm, ...second.radiiMm],
  thicknessesMm: [...first.thicknessesMm, gapMm, ...second.thicknessesMm],
  media: [...first.media, between, ...second.media],
  semiAperturesMm: [...first.semiAperturesMm, ...second.semiAperturesMm],
});

/** The height to which each surface has something on both its sides: where a lens without a rim would end. */
export function widestSemiApertures(radiiMm: readonly number[], thicknessesMm: readonly number[]): number[] {
  const between = thicknessesMm.map((t, i) => heightBetween(radiiMm[i] as number, radiiMm[i + 1] as number, t));
  return radiiMm.map((_, i) => Math.min(between[i - 1] ?? Number.POSITIVE_INFINITY, between[i] ?? Number.POSITIVE_INFINITY));
}

/** From the first vertex to the last, mm. */
export const lengthOf = (lens: Lens): number => lens.thicknessesMm.reduce((sum, t) => sum + t, 0);

/** The wavelengths that every one of the lens's media is known for, nm. */
export const rangeOf = (lens: Lens): readonly [least: number, greatest: number] => [
  Math.max(...lens.media.map((m) => m.rangeNm[0])),
  Math.min(...lens.media.map((m) => m.rangeNm[1])),
];
