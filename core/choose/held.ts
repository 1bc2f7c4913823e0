import { type Glassworks, glassOf } from '../pairing/glassworks.ts';
import { inputsOf } from '../pairing/inputs.ts';
import { nameOf } from '../pairing/phrases.ts';
import type { Pairing } from '../pairing/schema.ts';
import { amount } from '../parts/quantity.ts';
import { short } from '../words.ts';
import type { Variable } from './quantities.ts';

/** What else of a rig is told by its number where it is held, in this order. */
const TOLD = [
  '/relay/focalLengthMm',
  '/relay/powerDioptre',
  '/infinitySpaceMm',
  '/relay/clearApertureMm',
  '/relay/entrancePupilDiameterMm',
  '/relay/fNumber',
  '/relay/entrancePupilDepthMm',
  '/relay/imageCircleMm',
  '/relay/frontPrincipalPlaneFromRimMm',
  '/relay/rimToSensorMm',
  '/objective/exitPupilFromShoulderMm',
  '/sensorOffsetMm',
];

/** Where the name of a number is told better than by what is not known of it. */
const NAMES: Readonly<Record<string, string>> = {
  '/relay/focalLengthMm': "the relay's focal length",
  '/relay/powerDioptre': "the relay's power",
  '/objective/exitPupilFromShoulderMm': 'the exit pupil',
  '/relay/entrancePupilDepthMm': "the depth of the camera lens's aperture",
};

const UNITS: Readonly<Record<string, string>> = { '/relay/powerDioptre': ' D', '/relay/fNumber': '' };

/** Of a camera lens these are guessed anew for each focal length where they are not given. */
const BY_CLASS = ['/relay/clearApertureMm', '/relay/entrancePupilDepthMm', '/relay/rimToSensorMm'];

/** What stays as it is while one quantity is varied, and what does not, in words. */
export function heldOf(pairing: Pairing, vary: Variable, works?: Glassworks): string[] {
  const { relay, sensor, stops = [] } = pairing;
  const { list } = inputsOf(pairing, glassOf(pairing, works));
  const lengthVaries = vary === '/relay/focalLengthMm';
  const numbers = TOLD.flatMap((path) => {
    const input = list.find((one) => one.path === path);
    if (
      path === vary ||
      (lengthVaries && path === '/relay/powerDioptre') ||
      !input ||
      (input.value === 0 && input.origin === 'assumed') ||
      (path === '/sensorOffsetMm' && input.value === 0)
    )
      return [];
    if (lengthVaries && relay.kind === 'camera-lens' && input.guess && BY_CLASS.includes(path) && !given(pairing, path))
      return [`${NAMES[path] ?? nameOf(path)}, as is typical of each focal length`];
    const unit = UNITS[path] ?? ' mm';
    const typical = input.origin === 'assumed' ? ', taken as typical' : '';
    const from = path === '/objective/exitPupilFromShoulderMm' ? ' from the shoulder' : '';
    return [`${NAMES[path] ?? nameOf(path)}, ${path === '/relay/fNumber' ? 'f/' : ''}${short(input.value)}${unit}${from}${typical}`];
  });
  return [
    ...numbers,
    `the sensor, ${short(amount(sensor.widthMm))} × ${short(amount(sensor.heightMm))} mm`,
    ...(sensor.throatDiameterMm === undefined ? [] : [`the mount's throat, ${short(amount(sensor.throatDiameterMm))} mm`]),
    ...(stops.length > 0 ? [stops.length === 1 ? 'the ring in the way' : `the ${stops.length} rings in the way`] : []),
    ...(!lengthVaries && relay.glass ? ["the relay's glass"] : []),
    ...(lengthVaries && relay.glass ? ['but not its glass: another focal length is another lens'] : []),
  ];
}

const given = ({ relay }: Pairing, path: string): boolean => (relay as Record<string, unknown>)[path.slice('/relay/'.length)] !== undefined;
