import { imageScale } from '../paraxial/conjugates.ts';
import { offConjugate } from './off-conjugate.ts';
import { type Refocused, rmsForStrehl, whereStrehl } from './refocused.ts';

/** An objective and a relay, lengths in mm: what a sensor off the relay's focus asks of them. */
export interface Conjugates {
  readonly n: number;
  /** Numerical aperture of the whole with the sensor so far beyond the relay's focus: a ring far from the pupil lets more through, or less. */
  naAt(offset: number): number;
  readonly objectiveFocalLength: number;
  readonly relayFocalLength: number;
  /** From the exit pupil to the relay's front principal plane. */
  readonly principalPlane: number;
  readonly wavelength: number;
}

/** Optical length `−n δz` by which the object is nearer than the focal plane, mm, with the sensor `s` beyond the relay's focus. */
export const opticalShift = ({ n, objectiveFocalLength: fo, relayFocalLength: f, principalPlane: z }: Conjugates, s: number): number =>
  (n * n * fo * fo * s) / (f * imageScale(f, s, z));

/** As far as the sensor may go and the picture still be one: to the relay's own focal length, and not to where nothing is left of its size. */
const LEAST_SIZE = 0.1;
const NEAREST = 0.9;

/** How far the sensor is followed, mm, away from the relay (`1`) or toward it (`-1`). */
export function farthestOffset({ relayFocalLength: f, principalPlane: z }: Conjugates, sense: 1 | -1): number {
  const shrinking = (sense * (z - f)) / (f * f);
  const most = sense === 1 ? f : NEAREST * f;
  return sense * (shrinking > 0 ? Math.min(most, (1 - LEAST_SIZE) / shrinking) : most);
}

/**
 * The sensor's place beyond the relay's focus, mm, at which spherical aberration has taken the Strehl ratio down to
 * `limit`; Infinity, with its sign, where it has not by `farthestOffset`.
 */
export function offsetAtStrehl(rig: Conjugates, limit: number, sense: 1 | -1): number {
  const { n, naAt, objectiveFocalLength: fo, relayFocalLength: f, principalPlane: z, wavelength } = rig;
  const leftAt = (s: number): Refocused => offConjugate(n, naAt(s), imageScale(f, s, z) / fo);
  const ratio = (far: number): number => leftAt(sense * far).strehl(opticalShift(rig, sense * far) / wavelength);
  const perMm = (Math.abs(opticalShift(rig, 1e-6 * sense * f)) * leftAt(0).rms) / (1e-6 * f * wavelength);
  return sense * whereStrehl(ratio, limit, rmsForStrehl(limit) / perMm, Math.abs(farthestOffset(rig, sense)));
}
