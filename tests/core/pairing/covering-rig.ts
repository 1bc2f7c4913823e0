import type { Pairing } from '../../../core/index.ts';

/** Rigs whose shortest relay is looked for. */
export interface Change {
  rim?: number;
  space?: number;
  stops?: Pairing['stops'];
  field?: number;
  offset?: number;
  lit?: number;
  /** Half-diagonal of the sensor over 20 mm. */
  size?: number;
  /** Of the relay, mm; what is looked for does not hang on it. */
  focalLengthMm?: number;
}

/** A pupil of 10 mm in the shoulder, a rim with its principal plane in it, a sensor of 40 mm. */
export const pairingOf = ({ rim = 54, space = 60, stops = [], field, offset, lit, size = 1, focalLengthMm = 4000 }: Change): Pairing => ({
  objective: {
    magnification: 10,
    na: 0.25,
    referenceFocalLengthMm: 200,
    exitPupilFromShoulderMm: 0,
    ...(field === undefined ? {} : { fieldNumberMm: field }),
  },
  relay: { kind: 'tube-lens', focalLengthMm, clearApertureMm: rim, frontPrincipalPlaneFromRimMm: 0 },
  sensor: { widthMm: 32 * size, heightMm: 24 * size, pixelPitchUm: 4 },
  infinitySpaceMm: space,
  stops,
  ...(offset === undefined ? {} : { sensorOffsetMm: offset }),
  ...(lit === undefined ? {} : { litThreshold: lit }),
});
