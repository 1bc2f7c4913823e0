import {
  amount,
  bareRigOf,
  diagonalOf,
  divergence,
  type Evaluation,
  fromPupil,
  numberIn,
  type PlacedStop,
  type Rig,
  scaleOf,
  stopsOf,
  toPrincipalPlane,
} from '../../core/index.ts';

/** A point of the drawing: `z` from the objective's shoulder toward the sensor, `y` from the axis, mm. */
export type Point = readonly [z: number, y: number];

export interface StandingStop {
  label: string;
  path: string;
  z: number;
  half: number;
  /** Seen from the front and drawn there: a camera lens's aperture lies behind the glass that shows it. */
  virtual: boolean;
}

export interface Ray {
  /** Where it starts in the exit pupil, mm from the axis. */
  p: number;
  /** From the subject to the exit pupil: inside the objective its course is not known. */
  before: Point[];
  points: Point[];
  /** Beyond the relay's plane to a stop that is only seen there. */
  seen: Point[];
  /** The stop in the scene's list that ends it; undefined where it arrives. */
  endsAt: number | undefined;
}

export interface Scene {
  subject: number;
  nose: number;
  /** Whether the objective's length is known, or drawn at a length of its class. */
  lengthKnown: boolean;
  pupil: number;
  /** The interval that surely holds the pupil. */
  pupilBetween: readonly [number, number];
  pupilHalf: number;
  noseHalf: number;
  rim: number;
  plane: number;
  sensor: number;
  cornerHeight: number;
  stops: StandingStop[];
  /** False where an opening of the relay is not known. */
  openingsKnown: boolean;
  middle: Ray[];
  corner: Ray[];
  rig: Rig;
}

/** Taken for the drawing alone where the objective's length is not known, mm. */
const DRAWN_LENGTH = 40;
const RAYS = 9;

/** Where everything stands and how the beams of the middle and of the corner go; lengths in mm. */
export function sceneOf(evaluation: Evaluation): Scene {
  const stops = stopsOf(evaluation.sheet);
  const given = stops?.rig ?? bareRigOf(evaluation.sheet);
  const { objective, sensor: chip } = evaluation.pairing;
  const working = objective.workingDistanceMm === undefined ? undefined : amount(objective.workingDistanceMm);
  const parfocal = objective.parfocalDistanceMm === undefined ? undefined : amount(objective.parfocalDistanceMm);
  const lengthKnown = working !== undefined && parfocal !== undefined && parfocal > working;
  const nose = lengthKnown ? working - parfocal : -DRAWN_LENGTH;
  const subject = lengthKnown ? -parfocal : nose - (working ?? 0.1 * DRAWN_LENGTH);
  const plane = given.infinitySpaceMm + given.principalPlaneFromRimMm;
  const sensor = plane + given.relayFocalLengthMm + given.sensorOffsetMm;
  const inOrder = given.stops.map((stop) => ({ stop, stands: stand(given, stop, plane, sensor) })).sort((a, b) => a.stands.z - b.stands.z);
  const rig = { ...given, stops: inOrder.map(({ stop }) => stop) };
  const standing = inOrder.map(({ stands }) => stands);
  const cornerHeight = diagonalOf(chip) / 2;
  const pupilHalf = (given.stops[0] as PlacedStop).diameterMm / 2;
  const place = evaluation.inputs.find((input) => input.path === '/objective/exitPupilFromShoulderMm');
  const noseHalf = objective.noseDiameterMm === undefined ? Math.max(6, 0.8 * pupilHalf) : amount(objective.noseDiameterMm) / 2;
  const base = { subject, nose, pupil: rig.exitPupilFromShoulderMm, plane, sensor, stops: standing, rig };
  const m = scaleOf(rig) / (numberIn(evaluation.answers.objectiveFocalLengthMm) ?? 1);
  const fan = (height: number): Ray[] =>
    Array.from({ length: RAYS }, (_, i) => ray(base, pupilHalf * ((2 * i) / (RAYS - 1) - 1), height, height / m));
  return {
    ...base,
    lengthKnown,
    pupilBetween: [place?.least ?? base.pupil, place?.greatest ?? base.pupil],
    pupilHalf,
    noseHalf,
    rim: rig.infinitySpaceMm,
    cornerHeight,
    openingsKnown: stops !== undefined,
    middle: fan(0),
    corner: fan(cornerHeight),
  };
}

type Base = Pick<Scene, 'subject' | 'nose' | 'pupil' | 'plane' | 'sensor' | 'stops' | 'rig'>;

/** The ray through `p` in the exit pupil that would land at `height`; its subject point lies at `-below`. */
function ray(scene: Base, p: number, height: number, below: number): Ray {
  const { rig, pupil, plane, sensor, stops } = scene;
  const f = rig.relayFocalLengthMm;
  const zH = toPrincipalPlane(rig);
  const slope = height / scaleOf(rig) + divergence(f, rig.sensorOffsetMm, zH) * p;
  const before = (z: number): number => p + slope * (z - pupil);
  const bent = slope - before(plane) / f;
  const behind = (z: number): number => before(plane) + bent * (z - plane);
  const start = Math.min(pupil, ...stops.filter((s) => !s.virtual && s.z < plane).map((s) => s.z));
  const entry: Point[] = [
    [scene.subject, -below],
    [start, before(start)],
  ];
  const lead: Point[] = [[start, before(start)]];
  const through: Point = [plane, before(plane)];
  for (const i of asMet(scene)) {
    const stop = stops[i] as StandingStop;
    const rear = rig.stops[i]?.place === 'sensor';
    const y = rear ? behind(stop.z) : before(stop.z);
    if (Math.abs(y) <= stop.half * (1 + 1e-9)) continue;
    const end: Point = [stop.z, y];
    if (rear) return { p, before: entry, points: [...lead, through, end], seen: [], endsAt: i };
    if (stop.virtual) return { p, before: entry, points: [...lead, through], seen: [through, end], endsAt: i };
    return { p, before: entry, points: [...lead, end], seen: [], endsAt: i };
  }
  return { p, before: entry, points: [...lead, through, [sensor, behind(sensor)]], seen: [], endsAt: undefined };
}

/** The stops in the order in which light meets them: those before the relay, then those behind it. */
function asMet({ stops, rig }: Base): number[] {
  const rear = (i: number): number => (rig.stops[i]?.place === 'sensor' ? 1 : 0);
  return stops.map((_, i) => i).sort((a, b) => rear(a) - rear(b) || (stops[a] as StandingStop).z - (stops[b] as StandingStop).z);
}

function stand(rig: Rig, stop: PlacedStop, plane: number, sensor: number): StandingStop {
  const z = stop.place === 'sensor' ? sensor - stop.atMm : fromPupil(rig, stop) + rig.exitPupilFromShoulderMm;
  const virtual = stop.place !== 'sensor' && z > plane + 1e-9;
  return { label: stop.label, path: stop.path, z, half: stop.diameterMm / 2, virtual };
}
