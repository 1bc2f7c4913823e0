import type { Pairing, Rig } from '../../../core/index.ts';
import type { Train } from './train.ts';

/** A train as core's rig: the same numbers under core's names. */
export const rigOf = (train: Train): Rig => ({
  stops: [
    { label: 'pupil', path: '', diameterMm: 2 * train.pupilRadius, place: 'pupil', atMm: 0 },
    ...train.rings.map((ring, i) => ({
      label: `ring ${i}`,
      path: `/stops/${i}`,
      diameterMm: 2 * ring.radius,
      place: ring.from,
      atMm: ring.at,
    })),
    { label: 'rim', path: '/rim', diameterMm: 2 * train.rimRadius, place: 'relay', atMm: 0 },
    ...(train.entrancePupil
      ? [
          {
            label: 'aperture',
            path: '/aperture',
            diameterMm: 2 * train.entrancePupil.radius,
            place: 'relay' as const,
            atMm: train.entrancePupil.depth,
          },
        ]
      : []),
  ],
  infinitySpaceMm: train.space,
  exitPupilFromShoulderMm: train.exitPupil,
  principalPlaneFromRimMm: train.plane,
  relayFocalLengthMm: train.focalLength,
  sensorOffsetMm: train.offset,
});

const REFERENCE = 200;

export const naOf = (train: Train): number => train.pupilRadius / train.objectiveFocalLength;

/** A train as a pairing with nothing left to guess; the sensor's diagonal is `diagonal`. */
export const pairingOf = (train: Train, diagonal = 43.266615, radiiMm?: number[]): Pairing => ({
  objective: {
    magnification: REFERENCE / train.objectiveFocalLength,
    na: naOf(train),
    referenceFocalLengthMm: REFERENCE,
    exitPupilFromShoulderMm: train.exitPupil,
    immersionIndex: naOf(train) >= 1 ? 2 * naOf(train) : 1,
  },
  relay: {
    kind: train.entrancePupil ? 'camera-lens' : 'tube-lens',
    focalLengthMm: { value: train.focalLength, plusMinus: 0 },
    clearApertureMm: 2 * train.rimRadius,
    frontPrincipalPlaneFromRimMm: train.plane,
    ...(train.entrancePupil
      ? { entrancePupilDiameterMm: 2 * train.entrancePupil.radius, entrancePupilDepthMm: train.entrancePupil.depth }
      : {}),
  },
  sensor: { widthMm: 0.8 * diagonal, heightMm: 0.6 * diagonal, pixelPitchUm: 4 },
  infinitySpaceMm: train.space,
  stops: train.rings.map(({ radius, from, at }) => ({
    diameterMm: 2 * radius,
    ...(from === 'shoulder' ? { fromShoulderMm: at } : { fromSensorMm: at }),
  })),
  sensorOffsetMm: train.offset,
  ...(radiiMm ? { radiiMm } : {}),
});
