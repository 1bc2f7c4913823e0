import {
  amount,
  bareRigOf,
  diagonalOf,
  type Evaluation,
  fromPupil,
  numberIn,
  type PlacedStop,
  type RelayKind,
  type Rig,
  scaleOf,
  stopsOf,
} from '../../core/index.ts';
import { type Beam, beamTo, type Course, fanTo, type Ray, type Standing, type StandingStop } from './path-rays.ts';

export interface Scene extends Standing {
  nose: number;
  /** Whether the objective's length is known, or drawn at a length of its class. */
  lengthKnown: boolean;
  /** The interval that surely holds the pupil. */
  pupilBetween: readonly [number, number];
  noseHalf: number;
  rim: number;
  cornerHeight: number;
  /** Where on the sensor the drawn beam goes, mm from the middle. */
  fieldHeight: number;
  kind: RelayKind;
  /** False where an opening of the relay is not known. */
  openingsKnown: boolean;
  middle: Ray[];
  field: Ray[];
  /** The same two by their edges. */
  beams: { middle: Beam; field: Beam };
}

/** Taken for the drawing alone where the objective's length is not known, mm. */
const DRAWN_LENGTH = 40;

/**
 * Where everything stands and how the beams of the middle and of a field point go; lengths in mm.
 * @param fieldHeight distance of the field point from the middle; the corner's by itself
 * @param lens the relay's glass, where that is known: the rays' real course through it, and where it has its focus
 */
export function sceneOf(
  evaluation: Evaluation,
  fieldHeight = diagonalOf(evaluation.pairing.sensor) / 2,
  lens?: { course: Course; focusMm: number },
): Scene {
  const stops = stopsOf(evaluation.sheet);
  const given = stops?.rig ?? bareRigOf(evaluation.sheet);
  const { objective, relay, sensor: chip } = evaluation.pairing;
  const working = objective.workingDistanceMm === undefined ? undefined : amount(objective.workingDistanceMm);
  const parfocal = objective.parfocalDistanceMm === undefined ? undefined : amount(objective.parfocalDistanceMm);
  const lengthKnown = working !== undefined && parfocal !== undefined && parfocal > working;
  const nose = lengthKnown ? working - parfocal : -DRAWN_LENGTH;
  const subject = lengthKnown ? -parfocal : nose - (working ?? 0.1 * DRAWN_LENGTH);
  const plane = given.infinitySpaceMm + given.principalPlaneFromRimMm;
  // Real glass has its principal planes apart: what is behind it stands so much farther away.
  const hiatus = lens ? lens.focusMm - (plane + given.relayFocalLengthMm) : 0;
  const sensor = plane + hiatus + given.relayFocalLengthMm + given.sensorOffsetMm;
  const inOrder = given.stops.map((stop) => ({ stop, stands: stand(given, stop, plane, sensor) })).sort((a, b) => a.stands.z - b.stands.z);
  const rig = { ...given, stops: inOrder.map(({ stop }) => stop) };
  const pupilHalf = (given.stops[0] as PlacedStop).diameterMm / 2;
  const place = evaluation.inputs.find((input) => input.path === '/objective/exitPupilFromShoulderMm');
  const noseHalf = objective.noseDiameterMm === undefined ? Math.max(6, 0.8 * pupilHalf) : amount(objective.noseDiameterMm) / 2;
  const standing = {
    subject,
    pupil: rig.exitPupilFromShoulderMm,
    pupilHalf,
    plane,
    hiatus,
    sensor,
    stops: inOrder.map(({ stands }) => stands),
    rig,
  };
  const m = scaleOf(rig) / (numberIn(evaluation.answers.objectiveFocalLengthMm) ?? 1);
  return {
    ...standing,
    nose,
    lengthKnown,
    pupilBetween: [place?.least ?? standing.pupil, place?.greatest ?? standing.pupil],
    noseHalf,
    rim: rig.infinitySpaceMm,
    cornerHeight: diagonalOf(chip) / 2,
    fieldHeight,
    kind: relay.kind,
    openingsKnown: stops !== undefined,
    middle: fanTo(standing, 0, 0),
    field: fanTo(standing, fieldHeight, fieldHeight / m),
    beams: { middle: beamTo(standing, 0, 0, lens?.course), field: beamTo(standing, fieldHeight, fieldHeight / m, lens?.course) },
  };
}

function stand(rig: Rig, stop: PlacedStop, plane: number, sensor: number): StandingStop {
  const z = stop.place === 'sensor' ? sensor - stop.atMm : fromPupil(rig, stop) + rig.exitPupilFromShoulderMm;
  const virtual = stop.place !== 'sensor' && z > plane + 1e-9;
  return { label: stop.label, path: stop.path, z, half: stop.diameterMm / 2, virtual };
}
