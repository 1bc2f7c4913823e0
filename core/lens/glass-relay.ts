import { coloursOf, spectrumOf } from '../contrast/colours.ts';
import { bestFocus, fieldPoint, spreadOf } from '../contrast/field.ts';
import { sharpSlope } from '../contrast/sharp.ts';
import type { FocusQuestion, GlassRelay, SharpQuestion } from '../pairing/glassworks.ts';
import type { Discs } from '../pupil/discs.ts';
import { cardinal } from '../trace/cardinal.ts';
import { type Lens, lengthOf } from '../trace/lens.ts';
import { mappingFactor } from '../trace/mapping.ts';
import { prescription } from '../trace/prescription.ts';
import { FIELD_POINTS } from './spacing.ts';

/** Answers kept: a report asks for the same circle again and again while its inputs are moved. */
const KEPT = 64;

/** A lens as a pairing's relay. Its wavelengths have been found in the range of its glasses. */
export function glassRelay(lens: Lens, wavelengthNm: number): GlassRelay {
  const prescribed = prescription(lens, wavelengthNm);
  const { effectiveFocalLengthMm: f, backFocalLengthMm, frontPrincipalPlaneMm } = cardinal(prescribed);
  const kept = new Map<string, number>();
  return {
    focalLengthMm: f,
    backFocalLengthMm,
    thicknessMm: lengthOf(lens),
    frontPrincipalPlaneMm,
    clearDiameterMm: 2 * Math.min(...lens.semiAperturesMm),
    mappingFactor: (pupilDistanceMm, slope) => mappingFactor(prescribed, pupilDistanceMm, slope, f),
    sharpRadiusMm(question) {
      const limit = question.limitMm / question.scaleMm;
      const asked = { ...question, discs: cutting(question.discs, limit) };
      const key = JSON.stringify(asked);
      const before = kept.get(key);
      if (before !== undefined) return before;
      const radius = question.scaleMm * slopeOut(lens, asked, limit);
      if (kept.size >= KEPT) kept.clear();
      kept.set(key, radius);
      return radius;
    },
    focusSpreadMm(question) {
      const asked = { ...question, discs: cutting(question.discs, question.cornerSlope) };
      const key = JSON.stringify(asked);
      const before = kept.get(key);
      if (before !== undefined) return before;
      const spread = focusSpread(lens, asked);
      if (kept.size >= KEPT) kept.clear();
      kept.set(key, spread);
      return spread;
    },
  };
}

/** By the same field points and the same best foci as the study of the glass. */
function focusSpread(lens: Lens, { discs, pupilDistanceMm, frequencyLpPerMm, spectrum, wavelengthNm, cornerSlope }: FocusQuestion): number {
  const colours = coloursOf(lens, spectrumOf(spectrum, wavelengthNm), wavelengthNm);
  const setting = { colours, discs, pupilDistanceMm, frequency: frequencyLpPerMm };
  const slopes = Array.from({ length: FIELD_POINTS }, (_, i) => (cornerSlope * i) / (FIELD_POINTS - 1));
  return spreadOf(slopes.flatMap((slope) => fieldPoint(setting, slope) ?? []).map((point) => bestFocus([point]).focusMm));
}

/**
 * Slope out to which the lens is sharp for this question. The reference of the focus is the pairing's wavelength.
 */
function slopeOut(lens: Lens, question: SharpQuestion, limit: number): number {
  const { discs, pupilDistanceMm, frequencyLpPerMm: frequency, spectrum, wavelengthNm, relativeContrast, focus } = question;
  const colours = coloursOf(lens, spectrumOf(spectrum, wavelengthNm), wavelengthNm);
  return sharpSlope({ colours, discs, pupilDistanceMm, frequency }, relativeContrast, focus, limit);
}

/** The discs that take anything from the beam out to a slope, the narrowest among them: others change nothing. */
function cutting({ walk, radius }: Discs, slope: number): Discs {
  const narrowest = radius.indexOf(Math.min(...radius));
  const reach = (i: number): number => Math.abs((walk[i] as number) - (walk[narrowest] as number)) * slope;
  const kept = radius.map((_, i) => i).filter((i) => i === narrowest || reach(i) + (radius[narrowest] as number) > (radius[i] as number));
  return { walk: kept.map((i) => walk[i] as number), radius: kept.map((i) => radius[i] as number) };
}
