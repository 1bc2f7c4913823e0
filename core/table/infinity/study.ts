import { offConjugate } from '../../aberration/off-conjugate.ts';
import { farthestOffset, opticalShift } from '../../aberration/off-infinity.ts';
import { principalPlane, sensorOffset } from '../../pairing/leaves.ts';
import { imageScale, offsetFocusedOn } from '../../paraxial/conjugates.ts';
import { MM_PER_M } from '../../units.ts';
import { numberAt, valueAt } from '../at.ts';
import type { TableEvaluation } from '../evaluate.ts';
import { conjugates } from './offset.ts';
import { magnificationTolerance, strehlLimit, tubeError } from './settings.ts';

/** One place along the curve of an error of the tube. */
export interface TubePoint {
  tubeErrorMm: number;
  magnification: number;
  strehl: number;
}

/** The error of the tube as a quantity to be followed; all lengths in mm. */
export interface TubeStudy {
  /** What a tube wrong by so much does; undefined where no picture forms. */
  at(tubeErrorMm: number): TubePoint | undefined;
  /** How far it may be too short, and too long, before there is no picture to speak of. */
  reach: readonly [shorter: number, longer: number];
  /** The error that is left where the relay was focused on a thing so many metres from its rim; Infinity where it has no picture. */
  errorFrom(metres: number): number;
  /** The error that is set, and the Strehl ratio that is still sharp. */
  now: number;
  limit: number;
  /** The share by which the magnification may be off. */
  magnificationShare: number;
}

/** Undefined where an input is missing. */
export function tubeStudy(evaluation: TableEvaluation): TubeStudy | undefined {
  const rig = valueAt(evaluation, conjugates);
  if (rig === undefined) return undefined;
  // The rig rests on the place of the relay's plane; the sensor's and what is set here are never without a number.
  const [s0, h] = [sensorOffset, principalPlane].map((node) => numberAt(evaluation, node)) as [number, number];
  const [now, limit, magnificationShare] = [tubeError, strehlLimit, magnificationTolerance].map(({ leaf }) =>
    numberAt(evaluation, leaf),
  ) as [number, number, number];
  const { n, naAt, objectiveFocalLength: fo, relayFocalLength: f, principalPlane: z, wavelength } = rig;
  const [least, most] = [farthestOffset(rig, -1), farthestOffset(rig, 1)];
  return {
    at(tubeErrorMm) {
      const s = s0 + tubeErrorMm;
      const magnification = imageScale(f, s, z) / fo;
      const na = naAt(s);
      if (s < least || s > most || magnification <= na) return undefined;
      return { tubeErrorMm, magnification, strehl: offConjugate(n, na, magnification).strehl(opticalShift(rig, s) / wavelength) };
    },
    reach: [Math.max(0, s0 - least), Math.max(0, most - s0)],
    errorFrom: (metres) => offsetFocusedOn(f, MM_PER_M * metres + h) - s0,
    now,
    limit,
    magnificationShare,
  };
}
