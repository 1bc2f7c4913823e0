import { platesAberration, SLIP_INDEX } from '../aberration/plate.ts';
import type { Objective } from '../parts/objective.ts';
import { amount } from '../parts/quantity.ts';
import { MM_PER_NM } from '../units.ts';

/** From here on the middle of the picture is softer than a perfect lens draws it (Maréchal 1947: Strehl ratio 0.8). */
const SOFT = 1 / 14;
/** As steep as light in air is followed: from a right angle no ray comes. */
const STEEPEST = 0.99;

/** What a cover glass that an objective is not made for does, in words; undefined where it does not show, or nothing is known of it. */
export function coverGlassCaution(objective: Objective, coverGlassMm: number | undefined, wavelengthNm: number): string | undefined {
  if (coverGlassMm === undefined || objective.coverGlassMm === undefined || amount(objective.immersionIndex ?? 1) !== 1) return undefined;
  const made = amount(objective.coverGlassMm);
  const slip = { thicknessMm: coverGlassMm - made, index: SLIP_INDEX };
  const rms = platesAberration([slip], 1, Math.min(STEEPEST, amount(objective.na))).rms / (wavelengthNm * MM_PER_NM);
  if (rms < SOFT) return undefined;
  const used = coverGlassMm === 0 ? 'without one' : `with ${coverGlassMm} mm`;
  return `Made for ${made === 0 ? 'no cover glass' : `a cover glass of ${made} mm`} and used ${used}: ${rms.toFixed(2)} waves of spherical aberration, softer than these figures.`;
}
