import { figure, Gap, openStep } from '../../figure.ts';
import { sensorDiagonal } from '../../pairing/first-order.ts';
import { clearAperture, relayKind } from '../../pairing/leaves.ts';
import {
  cameraFNumber,
  cameraFocalLength,
  cameraPupilDepth,
  ownClearAperture,
  ownFocalLength,
  secondPower,
  separation,
} from './settings.ts';

/**
 * Whether the close-up lens's rim cuts what the camera lens, at infinity, would see: the beam for a corner of slope
 * t = d / (2 f) is as wide as the entrance pupil, f / N, and stands depth × t off the axis where the rim is.
 */

/** Of the lens told on the table, else of the relay where that is the close-up lens. */
const rim = openStep({
  id: 'closeUpRim',
  symbol: 'D_cu',
  unit: 'mm',
  words: "clear diameter of the close-up lens's rim",
  needs: [ownClearAperture.leaf, ownFocalLength.leaf, relayKind, clearAperture],
  of: (own, lens, kind, relay) =>
    typeof own === 'number' ? own : typeof lens === 'number' || kind !== 'supplementary' ? Gap.unknown('/closeUpClearApertureMm') : relay,
  as: (own, _lens, _kind, relay) => own || relay,
});

const rimToPupil = openStep({
  id: 'rimToPupil',
  symbol: 'd_r',
  unit: 'mm',
  words: "from the front close-up lens to the camera lens's entrance pupil; a second lens stands before the first, and is taken as wide",
  needs: [cameraPupilDepth.leaf, secondPower.leaf, separation.leaf],
  of: (depth, P2, d) => (typeof depth !== 'number' || typeof P2 !== 'number' ? depth : typeof d === 'number' ? depth + d : d),
  as: (depth, P2, d) => (P2 && d ? `${depth} + ${d}` : depth),
});

export const closeUpRoomMm = figure({
  id: 'closeUpRoomMm',
  unit: 'mm',
  symbol: 'y_cu',
  words: "how much wider the close-up lens is than the corner's whole beam needs, the camera lens at infinity; below 0 corners grow dark",
  source: "straight lines: the entrance pupil, and twice the corner's chief ray where the rim stands",
  needs: [rim, cameraFocalLength.leaf, cameraFNumber.leaf, rimToPupil, sensorDiagonal],
  of: (D, f, N, depth, d) => D - f / N - (Math.abs(depth) * d) / f,
  as: (D, f, N, depth, d) => `${D} − ${f} / ${N} − max(${depth}, 0 − ${depth}) × ${d} / ${f}`,
  bounds: [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
});

export const closeUpShortestCameraMm = figure({
  id: 'closeUpShortestCameraMm',
  unit: 'mm',
  symbol: 'f_min',
  words:
    "the shortest camera lens, its entrance pupil as deep as this one's, whose very corner still gets about half its light past the close-up lens",
  source: "straight lines: the corner's chief ray just meets the rim",
  needs: [rim, rimToPupil, sensorDiagonal],
  of: (D, depth, d) => (Math.abs(depth) * d) / D,
  as: (D, depth, d) => `max(${depth}, 0 − ${depth}) × ${d} / ${D}`,
});
