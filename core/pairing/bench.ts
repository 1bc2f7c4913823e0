import { figure, Gap, openFigure, openStep, step } from '../figure.ts';
import { DEG_PER_RAD } from '../units.ts';
import { objectFieldDiagonalMm, objectiveFocalLengthMm, relayFocalLengthMm, scale } from './first-order.ts';
import {
  clearAperture,
  givenRimToSensor,
  immersion,
  infinitySpace,
  noseDiameter,
  parfocalDistance,
  principalPlane,
  sensorOffset,
  workingDistance,
} from './leaves.ts';

/** How the rig stands on the bench: its length, and the room that it leaves at the subject. */

/** How much nearer the subject stands than in focus at infinity, in what the nose dips in. */
export const subjectNearer = step({
  id: 'subjectNearer',
  symbol: 'δ_z',
  unit: 'mm',
  words: "how much nearer the subject stands than with the sensor at the relay's focus; in a medium as many times more as its index",
  needs: [immersion, sensorOffset, objectiveFocalLengthMm, relayFocalLengthMm, scale],
  of: (n, s, fo, f, F) => (n * s * fo * fo) / (f * F),
  as: (n, s, fo, f, F) => `${n} × ${s} × ${fo}² / (${f} × ${F})`,
});

export const clearWorkingDistanceMm = figure({
  id: 'clearWorkingDistanceMm',
  unit: 'mm',
  symbol: 'a_c',
  words: "free space between the objective's nose and the subject; a sensor beyond the relay's focus brings the subject closer",
  source: 'the working distance engraved, and conjugates of two lenses: δz = −n s f_o² / (f_R F), after two thin lenses',
  needs: [workingDistance, subjectNearer],
  of: (a, nearer) => Math.max(0, a - nearer),
  as: (a, nearer) => `max(0, ${a} − ${nearer})`,
});

/** Elevation, in degrees, of a ray that just passes over an edge `height` up and `aside` to the side. */
const elevation = (height: number, aside: number): number => Math.atan(height / aside) * DEG_PER_RAD;

/** How high light may come in beside the relay, which stands behind the objective and may be wider. */
const besideRelay = openStep({
  id: 'besideRelay',
  symbol: 'α_r',
  unit: '°',
  words: "height above the subject's plane at which light passes the relay's rim",
  needs: [parfocalDistance, subjectNearer, infinitySpace, clearAperture, objectFieldDiagonalMm],
  of: (parfocal, nearer, S, rim, field) =>
    typeof parfocal === 'number' &&
    typeof nearer === 'number' &&
    typeof rim === 'number' &&
    typeof S === 'number' &&
    typeof field === 'number'
      ? elevation(Math.max(0, parfocal - nearer + S), (rim + field) / 2)
      : 90,
  as: (parfocal, nearer, S, rim, field) =>
    parfocal && rim ? `atan(max(0, ${parfocal} − ${nearer} + ${S}) / ((${rim} + ${field}) / 2)) × 180 / π` : '90',
});

export const lightConeDeg = openFigure({
  id: 'lightConeDeg',
  unit: '°',
  symbol: 'α',
  words:
    "room for light: from the subject's plane up to what stands in the way, the objective's nose or the relay behind it, for the point of the field farthest from the lamp",
  source: 'straight lines past the edges of the nose and of the relay',
  needs: [clearWorkingDistanceMm, noseDiameter, objectFieldDiagonalMm, besideRelay],
  of: (a, nose, field, relay) =>
    typeof a === 'number' && typeof nose === 'number' && typeof field === 'number'
      ? Math.min(elevation(a, (nose + field) / 2), relay as number)
      : Gap.join([a, nose, field].filter((v) => v instanceof Gap)),
  as: (a, nose, field, relay) => `min(atan(${a} / ((${nose} + ${field}) / 2)) × 180 / π, ${relay})`,
  bounds: [0, 90],
});

/** From the relay's rim to where a far thing is sharp: as given or as its glass has it, else as of a thin lens in its principal plane. */
export const rimToFocus = openStep({
  id: 'rimToFocus',
  symbol: 'l_r',
  unit: 'mm',
  words: "from the relay's front rim to its focus; without its length or its glass, as of a thin lens in its principal plane",
  needs: [givenRimToSensor, principalPlane, relayFocalLengthMm],
  of: (given, h, f) => (typeof given === 'number' ? given : typeof f === 'number' ? (h as number) + f : f),
  as: (given, h, f) => given || `${h} + ${f}`,
});

export const totalLengthMm = figure({
  id: 'totalLengthMm',
  unit: 'mm',
  symbol: 'L',
  words: "from the objective's shoulder to the sensor",
  source: 'lengths in a row',
  needs: [infinitySpace, rimToFocus, sensorOffset],
  of: (S, l, s) => (l + s > 0 ? S + l + s : Gap.none("by these numbers the sensor would stand before the relay's rim")),
  as: (S, l, s) => `${S} + ${l} + ${s}`,
});
