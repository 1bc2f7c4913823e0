import { figure, Gap, openFigure, openStep, step } from '../figure.ts';
import { seen } from './aperture.ts';
import { scale, sensorDiagonal } from './first-order.ts';
import {
  exitPupilFromShoulder,
  fieldNumber,
  givenDetail,
  glassRelay,
  infinitySpace,
  ratedCircle,
  referenceFocalLength,
  sharpContrast,
  sharpFocus,
  sharpSpectrum,
  testedField,
  wavelength,
} from './leaves.ts';
import { cutoffImageLpPerMm, nyquistLpPerMm } from './resolution.ts';

/** The three circles, in the order in which ties are told. */
export const CIRCLES = ['corrected', 'lit', 'sharp'] as const;
export type Circle = (typeof CIRCLES)[number];

/** The field that the objective keeps corrected, at its reference focal length: tested beats rated. */
export const goodField = openStep({
  id: 'goodField',
  symbol: 'FN_g',
  unit: 'mm',
  words: 'field number, or the field that you tested good',
  needs: [testedField, fieldNumber],
  of: (tested, rated) => (typeof tested === 'number' ? tested : rated),
  as: (tested, rated) => tested || rated,
});

export const correctedCircleMm = figure({
  id: 'correctedCircleMm',
  unit: 'mm',
  symbol: 'd_cor',
  words: "circle on the sensor that the objective's corrected field fills",
  source: 'field number: diameter of the field in the primary image (ISO 8578)',
  needs: [goodField, scale, referenceFocalLength],
  of: (FN, F, reference) => (FN * F) / reference,
  as: (FN, F, reference) => `${FN} × ${F} / ${reference}`,
});

/** Half of what the optics and the pixels both still pass: where a loss of contrast shows first as softness. */
export const sharpDetail = openStep({
  id: 'sharpDetail',
  symbol: 'ν_s',
  unit: 'lp/mm',
  words: "detail on the sensor in which sharpness is judged: half of the lower of the diffraction cut-off and the pixels' limit",
  needs: [givenDetail, cutoffImageLpPerMm, nyquistLpPerMm],
  of: (given, cutoff, nyquist) => {
    if (typeof given === 'number') return given;
    return typeof cutoff === 'number' && typeof nyquist === 'number'
      ? Math.min(cutoff, nyquist) / 2
      : cutoff instanceof Gap
        ? cutoff
        : cutoff / 2;
  },
  as: (given, cutoff, nyquist) => given || `min(${[cutoff, nyquist].filter(Boolean).join(', ')}) / 2`,
});

/** Nothing is looked at farther from the middle than this many half-diagonals. */
const SHARP_LOOK = 1.5;

/** By what sharpness is judged. */
const sharpness = step({
  id: 'sharpness',
  needs: [sharpContrast, sharpFocus, sharpSpectrum, wavelength],
  of: (relativeContrast, focus, spectrum, wavelengthNm) => ({ relativeContrast, focus, spectrum, wavelengthNm }),
});

const pupilToRim = step({ id: 'pupilToRim', needs: [infinitySpace, exitPupilFromShoulder], of: (S, e) => S - e });

const tracedCircle = openStep({
  id: 'tracedCircle',
  symbol: 'd_tr',
  unit: 'mm',
  words: `circle in which contrast at ν_s is at least q_s of that without the relay's aberrations, by real rays through its glass; looked for out to ${SHARP_LOOK} half-diagonals`,
  needs: [glassRelay, seen, pupilToRim, sharpDetail, sharpness, sensorDiagonal, scale],
  of: (glass, discs, pupilDistanceMm, frequency, judged, d, F): number | Gap =>
    glass instanceof Gap || discs instanceof Gap || frequency instanceof Gap || F instanceof Gap
      ? (Gap.among([glass, discs, frequency, F]) as Gap)
      : 2 *
        glass.sharpRadiusMm({
          ...(judged as Exclude<typeof judged, Gap>),
          discs,
          pupilDistanceMm: pupilDistanceMm as number,
          frequencyLpPerMm: frequency,
          scaleMm: F,
          limitMm: (SHARP_LOOK * (d as number)) / 2,
        }),
});

const NO_SHARP_CIRCLE = Gap.unknown('/relay/glass', '/relay/imageCircleMm');

export const sharpCircleMm = openFigure({
  id: 'sharpCircleMm',
  unit: 'mm',
  symbol: 'd_sharp',
  words: 'circle in which the relay is sharp: traced through its glass where that is known, else its rated image circle',
  source: "Hopkins's tolerance on the contrast of an aberrated pupil; maker's rating without the glass",
  needs: [tracedCircle, ratedCircle],
  of: (traced, rated) => {
    if (typeof traced === 'number') return traced;
    if (typeof rated === 'number') return rated;
    return traced.missing.includes('/relay/glass') ? NO_SHARP_CIRCLE : traced;
  },
  as: (traced, rated) => traced || rated,
});
