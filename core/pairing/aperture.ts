import { figure, Gap, openStep, step } from '../figure.ts';
import { chiefRaySlope } from '../paraxial/conjugates.ts';
import { type PlacedStop, type Rig, seenAlike, seenStops } from '../pupil/stops.ts';
import { DEG_PER_RAD } from '../units.ts';
import {
  objectiveFocalLengthMm,
  principalPlaneDistance,
  pupilDiameterMm,
  relayFocalLengthMm,
  scale,
  sensorDiagonal,
  systemMagnification,
} from './first-order.ts';
import {
  clearAperture,
  entrancePupilDepth,
  exitPupilFromShoulder,
  fNumber,
  givenEntrancePupil,
  infinitySpace,
  principalPlane,
  relayKind,
  rings,
  sensorOffset,
  subjectIndex,
} from './leaves.ts';

const OBJECTIVE_PUPIL = "the objective's own pupil";
export const RELAY_RIM = "the relay's rim";
const LENS_APERTURE = "the camera lens's aperture";

const front = (diameterMm: number): PlacedStop => ({
  label: RELAY_RIM,
  path: '/relay/clearApertureMm',
  diameterMm,
  place: 'relay',
  atMm: 0,
});

/** The relay's own openings; what is missing stays a gap. */
const relayOpenings = openStep({
  id: 'relayOpenings',
  needs: [relayKind, clearAperture, givenEntrancePupil, fNumber, entrancePupilDepth, relayFocalLengthMm],
  of: (kind, rim, pupil, N, depth, f): PlacedStop[] | Gap => {
    if (kind !== 'camera-lens') return typeof rim === 'number' ? [front(rim)] : rim;
    const path = typeof pupil === 'number' ? '/relay/entrancePupilDiameterMm' : '/relay/fNumber';
    const diameterMm = typeof pupil === 'number' ? pupil : typeof N === 'number' && typeof f === 'number' ? f / N : undefined;
    if (diameterMm === undefined) return Gap.unknown('/relay/fNumber');
    if (typeof rim !== 'number' || typeof depth !== 'number') return Gap.unknown('/relay/clearApertureMm');
    return [front(rim), { label: LENS_APERTURE, path, diameterMm, place: 'relay', atMm: depth }];
  },
});

/** Rings, tubes and the relay's own openings behind the objective's pupil, and where everything stands, in mm. */
export function rigOf(
  pupilMm: number,
  more: readonly PlacedStop[],
  openings: readonly PlacedStop[],
  infinitySpaceMm: number,
  exitPupilFromShoulderMm: number,
  principalPlaneFromRimMm: number,
  relayFocalLength: number,
  sensorOffsetMm: number,
): Rig {
  // A list of the right length from the start, because a rig is put together for every row of every ±.
  const stops = new Array<PlacedStop>(1 + more.length + openings.length);
  stops[0] = { label: OBJECTIVE_PUPIL, path: '', diameterMm: pupilMm, place: 'pupil', atMm: 0 };
  for (let i = 0; i < more.length; i++) stops[1 + i] = more[i] as PlacedStop;
  for (let i = 0; i < openings.length; i++) stops[1 + more.length + i] = openings[i] as PlacedStop;
  return {
    stops,
    infinitySpaceMm,
    exitPupilFromShoulderMm,
    principalPlaneFromRimMm,
    relayFocalLengthMm: relayFocalLength,
    sensorOffsetMm,
  };
}

/** Every stop from the objective's pupil to the sensor, each where it stands. */
export const rig = step({
  id: 'rig',
  needs: [pupilDiameterMm, rings, relayOpenings, infinitySpace, exitPupilFromShoulder, principalPlane, relayFocalLengthMm, sensorOffset],
  of: rigOf,
});

export const seen = step({ id: 'seen', needs: [rig], of: seenStops, same: seenAlike });

/** Radius of the smallest disc: what is left of the pupil on axis, mm. */
const axisRadius = step({
  id: 'axisRadius',
  symbol: 'r_0',
  unit: 'mm',
  words: 'radius of the axial beam in the pupil: the narrowest stop',
  needs: [seen],
  of: (s) => s.radius[s.limiting] as number,
});

export const systemNa = figure({
  id: 'systemNa',
  unit: '1',
  symbol: 'NA_s',
  words: 'numerical aperture that the whole rig uses on axis',
  source: "Abbe's sine condition, with the narrowest stop seen in the pupil",
  needs: [axisRadius, objectiveFocalLengthMm],
  of: (r, fo) => r / fo,
  as: (r, fo) => `${r} / ${fo}`,
});

export const workingFNumber = figure({
  id: 'workingFNumber',
  unit: '1',
  symbol: 'N',
  words: 'working f-number at the middle of the sensor',
  source: "1 / (2 sin u'), with sin u' = NA / m",
  needs: [systemMagnification, systemNa],
  of: (m, NA) => m / (2 * NA),
  as: (m, NA) => `${m} / (2 × ${NA})`,
});

/**
 * Distance from the objective's pupil at which a stop would limit a collimated beam as this one does, mm:
 * a stop behind the relay stands where its image is, and off the focus the beam's own slope counts in.
 */
const limitingDistance = step({
  id: 'limitingDistance',
  symbol: 'z_0',
  unit: 'mm',
  words: "from the objective's exit pupil to the stop that limits the beam, as seen from there",
  needs: [seen],
  of: (s) => 0 - (s.walk[s.limiting] as number),
});

export const magnificationChangePerMm = figure({
  id: 'magnificationChangePerMm',
  unit: '1/mm',
  symbol: 'κ',
  words: 'relative change of magnification per mm of depth at the subject; positive: farther parts look larger',
  source: "Newton's equation: a stop z from the exit pupil has its image n f_o²/z from the subject, in what is around that",
  needs: [limitingDistance, subjectIndex, objectiveFocalLengthMm],
  of: (z, n, fo) => z / (n * fo * fo),
  as: (z, n, fo) => `${z} / (${n} × ${fo}²)`,
  bounds: [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
});

const chiefSlope = step({
  id: 'chiefSlope',
  symbol: 'u_c',
  words: "slope at the corner of the ray through the middle of the objective's pupil",
  needs: [sensorDiagonal, scale, relayFocalLengthMm, principalPlaneDistance],
  of: (d, F, f, z) => chiefRaySlope(d / 2, F, f, z),
  as: (d, F, f, z) => `${d} / 2 / ${F} × (1 − ${z} / ${f})`,
});

export const cornerChiefRayDeg = figure({
  id: 'cornerChiefRayDeg',
  unit: '°',
  symbol: 'θ_c',
  words: 'slant of the light that reaches the corner; positive: away from the axis',
  source: 'paraxial ray through the middle of the exit pupil',
  needs: [chiefSlope],
  of: (u) => Math.atan(u) * DEG_PER_RAD,
  as: (u) => `atan(${u}) × 180 / π`,
  bounds: [-90, 90],
});
