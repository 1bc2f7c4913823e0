import type { Objective } from '../parts/objective.ts';
import { amount } from '../parts/quantity.ts';
import { MM_PER_NM } from '../units.ts';

/** Index of the glass that cover slips are made of (ISO 8255-1 asks for 1.5255 in the green e line). */
const SLIP_INDEX = 1.5255;

/**
 * Spherical aberration of a plane plate of thickness `d`, mm, and index `n` before a dry objective: the rms of the
 * wavefront in waves of `nm`, refocused. Exact for the plate: a ray at `θ` in air is `d (√(n² − sin²θ) − cos θ)`
 * longer on its way than without it, less a constant and a shift of the focus, `a + b cos θ`, that leave the
 * least rms over the pupil (`sin θ` up to NA, evenly by area: the sine condition). To the fourth order that is
 * `d (n² − 1) NA⁴ / (8 n³)` over `6 √5`.
 */
export function plateRmsWaves(d: number, n: number, na: number, nm: number): number {
  // Evenly by area: each of the points stands for as much of the pupil.
  const points = Array.from({ length: POINTS }, (_, i) => na * na * ((i + 0.5) / POINTS));
  const way = points.map((s2) => d * (Math.sqrt(n * n - s2) - Math.sqrt(1 - s2)));
  const focus = points.map((s2) => Math.sqrt(1 - s2));
  const mean = (xs: readonly number[]): number => xs.reduce((a, b) => a + b, 0) / xs.length;
  const [w0, f0] = [mean(way), mean(focus)];
  const slope = mean(way.map((w, i) => (w - w0) * ((focus[i] as number) - f0))) / mean(focus.map((f) => (f - f0) ** 2));
  const rms = Math.sqrt(mean(way.map((w, i) => (w - w0 - slope * ((focus[i] as number) - f0)) ** 2)));
  return rms / (nm * MM_PER_NM);
}

const POINTS = 400;

/** From here on the middle of the picture is softer than a perfect lens draws it (Maréchal 1947: Strehl ratio 0.8). */
const SOFT = 1 / 14;

/** What a cover glass that an objective is not made for does, in words; undefined where it does not show, or nothing is known of it. */
export function coverGlassCaution(objective: Objective, coverGlassMm: number | undefined, wavelengthNm: number): string | undefined {
  if (coverGlassMm === undefined || objective.coverGlassMm === undefined || amount(objective.immersionIndex ?? 1) !== 1) return undefined;
  const made = amount(objective.coverGlassMm);
  const rms = plateRmsWaves(Math.abs(coverGlassMm - made), SLIP_INDEX, Math.min(0.99, amount(objective.na)), wavelengthNm);
  if (rms < SOFT) return undefined;
  const used = coverGlassMm === 0 ? 'without one' : `with ${coverGlassMm} mm`;
  return `Made for ${made === 0 ? 'no cover glass' : `a cover glass of ${made} mm`} and used ${used}: ${rms.toFixed(2)} waves of spherical aberration, softer than these figures.`;
}
