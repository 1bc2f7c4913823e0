import { Gap, openFigure, openStep } from '../figure.ts';
import { crossing } from '../numeric.ts';
import { focalLengthForScale } from '../paraxial/conjugates.ts';
import { relativeIllumination } from '../pupil/illumination.ts';
import { type Rig, scaleOf, seenStops } from '../pupil/stops.ts';
import { rig } from './aperture.ts';
import { principalPlaneDistance, sensorDiagonal } from './first-order.ts';
import { goodField } from './image-circles.ts';
import { litThreshold, referenceFocalLength, sensorOffset } from './leaves.ts';
import { litSlope } from './light.ts';

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
      : (Gap.among([FN, reference, d, s, z]) as Gap),
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
  const behind = r.stops.filter((stop) => stop.place === 'sensor');
  if (r.sensorOffsetMm === 0 && behind.length === 0) return Math.max(least, cornerMm / slope);
  const margin = (f: number): number => {
    const at = { ...r, relayFocalLengthMm: f };
    const F = scaleOf(at);
    return F > 0 ? relativeIllumination(seenStops(at), cornerMm / F) - threshold : -threshold;
  };
  const from = Math.max(least, SHORTEST, ...behind.map((stop) => stop.atMm - r.sensorOffsetMm));
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
    r instanceof Gap || slope instanceof Gap
      ? (Gap.among([r, slope]) as Gap)
      : coveringByLight(r, threshold as number, (d as number) / 2, slope, typeof field === 'number' ? field : 0),
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
