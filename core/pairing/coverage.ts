import { figure, Gap, openFigure, openStep, step } from '../figure.ts';
import { crossing } from '../numeric.ts';
import { focalLengthForScale } from '../paraxial/conjugates.ts';
import { relativeIllumination } from '../pupil/illumination.ts';
import { type Rig, scaleOf, seenStops } from '../pupil/stops.ts';
import { rig } from './aperture.ts';
import { circleInRectangle } from './circle.ts';
import { principalPlaneDistance, scale, sensorDiagonal } from './first-order.ts';
import { fieldNumber, height, litThreshold, ratedCircle, referenceFocalLength, sensorOffset, testedField, width } from './leaves.ts';
import { litCircleMm, litSlope } from './light.ts';
import { opticalDetailMegapixels, pixelCount } from './resolution.ts';

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

export const sharpCircleMm = openFigure({
  id: 'sharpCircleMm',
  unit: 'mm',
  symbol: 'd_sharp',
  words: 'circle in which the relay is sharp: its rated image circle, as long as its glass is not traced',
  source: "maker's rating for the relay's usual job",
  needs: [ratedCircle],
  of: (rated) => (typeof rated === 'number' ? rated : Gap.unknown('/relay/imageCircleMm')),
  as: (rated) => rated,
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

export const coveredShare = openFigure({
  id: 'coveredShare',
  unit: '1',
  symbol: 'q',
  words: 'the smallest of the known shares; an unknown circle does not count as passing',
  source: 'the limit that bites',
  needs: [correctedShare, litShare, sharpShare],
  of: (...shares) => {
    const known = shares.filter((s) => typeof s === 'number');
    return known.length > 0 ? Math.min(...known) : Gap.join(shares.filter((s) => s instanceof Gap));
  },
  as: (...shares) => `min(${shares.filter(Boolean).join(', ')})`,
  bounds: [0, 1],
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

/**
 * Relay focal length from which the corner is lit. With all stops before the relay the discs do not
 * know the focal length: it is the corner's height over the slope at the threshold. Stops behind the
 * relay change with it: then the first crossing is looked for from the short end.
 */
function coveringByLight(r: Rig, threshold: number, cornerMm: number, litSlope: number): number | Gap {
  const lone = r.sensorOffsetMm === 0 && r.stops.every((stop) => stop.place !== 'sensor');
  if (lone) {
    return litSlope > 0 ? cornerMm / litSlope : Gap.none('no relay lights the corners with these openings');
  }
  const margin = (f: number): number => {
    const at = { ...r, relayFocalLengthMm: f };
    const F = scaleOf(at);
    return F > 0 ? relativeIllumination(seenStops(at), cornerMm / F) - threshold : -threshold;
  };
  const rearmost = Math.max(SHORTEST, ...r.stops.map((stop) => (stop.place === 'sensor' ? stop.atMm - r.sensorOffsetMm : 0)));
  let dark = { f: rearmost, margin: margin(rearmost) };
  if (dark.margin >= 0) return rearmost;
  const ratio = (LONGEST / rearmost) ** (1 / SCAN);
  for (let i = 1; i <= SCAN; i++) {
    const f = rearmost * ratio ** i;
    const here = margin(f);
    if (here >= 0) return crossing(margin, dark.f, f, dark.margin, here);
    dark = { f, margin: here };
  }
  return Gap.none('no relay lights the corners with these openings');
}

const coveringLight = step({
  id: 'coveringLight',
  symbol: 'f_lit',
  unit: 'mm',
  words: 'relay focal length at which the corners get the threshold of the light',
  needs: [rig, litThreshold, sensorDiagonal, litSlope],
  of: (r, threshold, d, slope) => coveringByLight(r, threshold, d / 2, slope),
});

export const shortestCoveringFocalLengthMm = openFigure({
  id: 'shortestCoveringFocalLengthMm',
  unit: 'mm',
  symbol: 'f_min',
  words:
    "shortest relay focal length at which the corrected field and the light reach the corners, spacing and openings held; another relay's own sharpness is not part of it",
  source: 'field number × f_R / f_ref, and the shared area',
  needs: [coveringByField, coveringLight],
  of: (field, light) => {
    if (light instanceof Gap && light.state === 'none') return light;
    const known = [field, light].filter((f) => typeof f === 'number');
    return known.length > 0 ? Math.max(...known) : Gap.join([field, light].filter((v) => v instanceof Gap));
  },
  as: (...lengths) => `max(${lengths.filter(Boolean).join(', ')})`,
  noneCountsAs: Number.POSITIVE_INFINITY,
});
