import { figure, Gap, openFigure, openStep, step } from '../figure.ts';
import { crossing } from '../numeric.ts';
import { focalLengthForScale } from '../paraxial/conjugates.ts';
import { relativeIllumination } from '../pupil/illumination.ts';
import { type Rig, scaleOf, seenStops } from '../pupil/stops.ts';
import { rig, seen } from './aperture.ts';
import { circleInRectangle } from './circle.ts';
import { principalPlaneDistance, scale, sensorDiagonal, systemMagnification } from './first-order.ts';
import {
  exitPupilFromShoulder,
  fieldNumber,
  givenDetail,
  glassRelay,
  height,
  infinitySpace,
  litThreshold,
  ratedCircle,
  referenceFocalLength,
  sensorOffset,
  sharpContrast,
  sharpFocus,
  sharpSpectrum,
  testedField,
  wavelength,
  width,
} from './leaves.ts';
import { litCircleMm, litSlope } from './light.ts';
import { cutoffImageLpPerMm, nyquistLpPerMm, opticalDetailMegapixels, pixelCount } from './resolution.ts';

/** The three circles, in the order in which ties are told. */
export const CIRCLES = ['corrected', 'lit', 'sharp'] as const;
export type Circle = (typeof CIRCLES)[number];

/** The field that the objective keeps corrected, at its reference focal length: tested beats rated. */
const goodField = openStep({
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

const shareFigure = <const Id extends string>(
  id: Id,
  circle: typeof correctedCircleMm | typeof litCircleMm | typeof sharpCircleMm,
  symbol: string,
  words: string,
) => {
  const area = step({
    id: `${id}Area`,
    symbol: `A_${symbol}`,
    unit: 'mm²',
    words: 'area of the sensor inside that circle, closed form',
    needs: [circle, width, height],
    of: (d: number, W: number, H: number) => circleInRectangle(Math.min(d, W + H) / 2, W, H),
  });
  return figure({
    id,
    unit: '1',
    symbol: `q_${symbol}`,
    words,
    source: 'area that a circle shares with a rectangle, closed form',
    needs: [area, width, height],
    of: (A, W, H) => Math.min(1, A / (W * H)),
    as: (A, W, H) => `min(1, ${A} / (${W} × ${H}))`,
    bounds: [0, 1],
  });
};

export const correctedShare = shareFigure(
  'correctedShare',
  correctedCircleMm,
  'cor',
  "share of the sensor inside the objective's corrected field",
);
export const litShare = shareFigure('litShare', litCircleMm, 'lit', 'share of the sensor that gets at least the threshold of the light');
export const sharpShare = shareFigure('sharpShare', sharpCircleMm, 'sharp', 'share of the sensor inside the sharp circle');

const leastKnown = (a: number | Gap, b: number | Gap, c: number | Gap): number =>
  Math.min(
    typeof a === 'number' ? a : Number.POSITIVE_INFINITY,
    typeof b === 'number' ? b : Number.POSITIVE_INFINITY,
    typeof c === 'number' ? c : Number.POSITIVE_INFINITY,
  );

export const coveredShare = openFigure({
  id: 'coveredShare',
  unit: '1',
  symbol: 'q',
  words: 'the smallest of the known shares; an unknown circle does not count as passing',
  source: 'the limit that bites',
  needs: [correctedShare, litShare, sharpShare],
  of: (a, b, c) => {
    const least = leastKnown(a, b, c);
    return least < Number.POSITIVE_INFINITY ? least : Gap.join([a, b, c].filter((s) => s instanceof Gap));
  },
  as: (...shares) => `min(${shares.filter(Boolean).join(', ')})`,
  bounds: [0, 1],
});

export const goodFieldMm = openFigure({
  id: 'goodFieldMm',
  unit: 'mm',
  symbol: 'd_g',
  words:
    'diameter at the subject of the smallest known circle: corrected, lit and sharp inside it; an unknown circle does not count as passing',
  source: 'the limit that bites, over the magnification',
  needs: [correctedCircleMm, litCircleMm, sharpCircleMm, systemMagnification],
  of: (corrected, lit, sharp, m) => {
    const known = typeof corrected === 'number' || typeof lit === 'number' || typeof sharp === 'number';
    if (!known || typeof m !== 'number') return Gap.join([corrected, lit, sharp, m].filter((v) => v instanceof Gap));
    return leastKnown(corrected, lit, sharp) / m;
  },
  as: (corrected, lit, sharp, m) => `min(${[corrected, lit, sharp].filter(Boolean).join(', ')}) / ${m}`,
});

export const recordedDetailMegapixels = figure({
  id: 'recordedDetailMegapixels',
  unit: 'MP',
  symbol: 'n_rec',
  words: 'samples with detail in them that end up in the file: the smaller of optical detail and pixels, times the covered share',
  source: 'sampling theorem',
  needs: [opticalDetailMegapixels, pixelCount, coveredShare],
  of: (optical, pixels, share) => Math.min(optical, pixels) * share,
  as: (optical, pixels, share) => `min(${optical}, ${pixels}) × ${share}`,
});

/** Relay focal length from which the corrected field reaches the corners, spacing held. */
const coveringByField = openStep({
  id: 'coveringByField',
  symbol: 'f_cor',
  unit: 'mm',
  words: "relay focal length at which the objective's field reaches the corners",
  needs: [goodField, referenceFocalLength, sensorDiagonal, sensorOffset, principalPlaneDistance],
  of: (FN, reference, d, s, z) =>
    typeof FN === 'number' && typeof reference === 'number' && typeof d === 'number' && typeof s === 'number' && typeof z === 'number'
      ? focalLengthForScale((d * reference) / FN, s, z)
      : Gap.join([FN, reference, d, s, z].filter((v) => v instanceof Gap)),
});

const SHORTEST = 5;
const LONGEST = 5000;
/** Steps in which the first crossing is looked for: a fifth longer each at the most. */
const SCAN = 38;
const UNLIT = Gap.none('no relay lights the corners with these openings');

/**
 * Shortest relay focal length, from `least` on, at which the corner gets the threshold of the light.
 * With all stops before the relay the discs do not know the focal length: it is the corner's height over
 * the slope at the threshold, and longer ones are lit too. A stop behind the relay changes with it and
 * may close the corner again: then the first lit length is looked for from `least` up.
 */
function coveringByLight(r: Rig, threshold: number, cornerMm: number, slope: number, least: number): number | Gap {
  if (r.sensorOffsetMm === 0 && r.stops.every((stop) => stop.place !== 'sensor'))
    return slope > 0 ? Math.max(least, cornerMm / slope) : UNLIT;
  const margin = (f: number): number => {
    const at = { ...r, relayFocalLengthMm: f };
    const F = scaleOf(at);
    return F > 0 ? relativeIllumination(seenStops(at), cornerMm / F) - threshold : -threshold;
  };
  const from = Math.max(least, SHORTEST, ...r.stops.map((stop) => (stop.place === 'sensor' ? stop.atMm - r.sensorOffsetMm : 0)));
  let dark = { f: from, margin: margin(from) };
  if (dark.margin >= 0) return from;
  const ratio = (LONGEST / from) ** (1 / SCAN);
  for (let i = 1; i <= SCAN && ratio > 1; i++) {
    const f = from * ratio ** i;
    const here = margin(f);
    if (here >= 0) return crossing(margin, dark.f, f, dark.margin, here);
    dark = { f, margin: here };
  }
  return UNLIT;
}

const coveringByBoth = openStep({
  id: 'coveringByBoth',
  symbol: 'f_lit',
  unit: 'mm',
  words: 'relay focal length, no shorter than f_cor, at which the corners get the threshold of the light',
  needs: [rig, litThreshold, sensorDiagonal, litSlope, coveringByField],
  of: (r, threshold, d, slope, field) =>
    r instanceof Gap || slope instanceof Gap || typeof threshold !== 'number' || typeof d !== 'number'
      ? Gap.join([r, slope].filter((v) => v instanceof Gap))
      : coveringByLight(r, threshold, d / 2, slope, typeof field === 'number' ? field : 0),
});

export const shortestCoveringFocalLengthMm = openFigure({
  id: 'shortestCoveringFocalLengthMm',
  unit: 'mm',
  symbol: 'f_min',
  words:
    "shortest relay focal length at which the corrected field and the light reach the corners, spacing and openings held; another relay's own sharpness is not part of it",
  source: 'field number × f_R / f_ref, and the shared area',
  needs: [coveringByField, coveringByBoth],
  of: (field, both) => {
    if (typeof both === 'number' || both.state === 'none') return both;
    return typeof field === 'number' ? field : Gap.join([field, both]);
  },
  as: (...lengths) => `max(${lengths.filter(Boolean).join(', ')})`,
  noneCountsAs: Number.POSITIVE_INFINITY,
});
