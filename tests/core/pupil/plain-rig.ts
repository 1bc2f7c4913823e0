import type { PlacedStop, Rig } from '../../../core/pupil/stops.ts';

/** Stops with round numbers: the pupil lies in the shoulder, the relay's principal plane in its rim, so that `at` is from the pupil. */
export const pupil = (diameterMm: number): PlacedStop => ({ label: 'pupil', path: '', diameterMm, place: 'pupil', atMm: 0 });
export const ring = (label: string, diameterMm: number, atMm: number): PlacedStop => ({
  label,
  path: `/${label}`,
  diameterMm,
  place: 'shoulder',
  atMm,
});
export const rim = (diameterMm: number, atMm = 0): PlacedStop => ({ label: 'rim', path: '/rim', diameterMm, place: 'relay', atMm });
/** Behind the relay, `atMm` before the sensor: at 0 a frame. */
export const behind = (label: string, diameterMm: number, atMm: number): PlacedStop => ({
  label,
  path: `/${label}`,
  diameterMm,
  place: 'sensor',
  atMm,
});

/** A relay of 200 mm in focus, 100 mm from the pupil, unless said otherwise. */
export const rigWith = (stops: readonly PlacedStop[], other: Partial<Rig> = {}): Rig => ({
  stops,
  infinitySpaceMm: 100,
  exitPupilFromShoulderMm: 0,
  principalPlaneFromRimMm: 0,
  relayFocalLengthMm: 200,
  sensorOffsetMm: 0,
  ...other,
});
