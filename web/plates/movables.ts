import { amount, BOUNDS, type Evaluation, numberIn } from '../../core/index.ts';
import { withAmount } from '../fields/whole.ts';
import { draft, edit, take, takeSound } from '../state/draft.ts';
import { fieldPointMm, pointAt } from '../state/field-point.ts';
import { withAt } from '../state/json.ts';
import { AXIS, HEIGHT, here, type Movable, ofPath, opening } from './movable.ts';
import type { Scene } from './path-geometry.ts';

/** Everything that the light path lets one move, from the subject to the sensor. */
export function movablesOf(evaluation: Evaluation, scene: Scene): Movable[] {
  return [
    ...workingDistance(evaluation, scene),
    pupil(evaluation, scene),
    ...rings(evaluation, scene),
    relay(evaluation, scene),
    ...rim(evaluation, scene),
    ...iris(evaluation, scene),
    ...focal(evaluation, scene),
    fieldOf(scene),
  ];
}

/** The number alone: it follows from the objective, nobody slides it. */
const workingDistance = (evaluation: Evaluation, { lengthKnown, subject, nose }: Scene): Movable[] =>
  !lengthKnown
    ? []
    : [
        ofPath(evaluation, AXIS, {
          name: 'working',
          label: 'Working distance',
          short: 'working distance',
          path: '/objective/workingDistanceMm',
          value: nose - subject,
          least: 0,
          greatest: -subject,
          at: undefined,
        }),
      ];

const pupil = (evaluation: Evaluation, { pupil: z, subject, nose, rim }: Scene): Movable =>
  ofPath(evaluation, AXIS, {
    name: 'pupil',
    label: 'Exit pupil, from the shoulder toward the relay',
    short: 'exit pupil at',
    path: '/objective/exitPupilFromShoulderMm',
    value: z,
    least: Math.min(z, Math.max(subject, nose - 20)),
    greatest: Math.max(z, Math.min(rim, 60)),
    at: { z, y: 0 },
  });

/** Farther than this nobody builds, mm. */
const MOST_SPACE = 600;

function relay(evaluation: Evaluation, { rim }: Scene): Movable {
  const { infinitySpaceMm, stops = [] } = evaluation.pairing;
  const value = amount(infinitySpaceMm);
  return ofPath(evaluation, AXIS, {
    name: 'relay',
    label: 'Infinity space, shoulder to relay',
    short: 'infinity space',
    path: '/infinitySpaceMm',
    value,
    // A ring of the infinity space cannot stand behind the relay: the relay stops at it.
    least: Math.max(0, ...stops.flatMap((s) => (s.fromShoulderMm === undefined ? [] : [amount(s.fromShoulderMm)]))),
    greatest: Math.max(MOST_SPACE, value),
    at: { z: rim, y: 0 },
  });
}

/** The relay's focal length, in dioptres where it is given so; its glass, where that says it, is not stretched. */
function focal(evaluation: Evaluation, { sensor }: Scene): Movable[] {
  const { relay } = evaluation.pairing;
  const answer = evaluation.answers.relayFocalLengthMm;
  const value = numberIn(answer);
  if (relay.glass || value === undefined) return [];
  const [least, greatest] = relay.focalLengthRangeMm ?? [10, 1000];
  const byLength = relay.focalLengthMm !== undefined;
  const path = byLength ? '/relay/focalLengthMm' : '/relay/powerDioptre';
  const put = (f: number): object => {
    const set = byLength ? withAt(draft.peek(), path, withAmount(here(path), f)) : draft.peek();
    if (relay.powerDioptre === undefined) return set;
    return withAt(set, '/relay/powerDioptre', withAmount(here('/relay/powerDioptre'), Number((1000 / f).toPrecision(5))));
  };
  const doubt = answer.state === 'known' && answer.low !== undefined && answer.high !== undefined ? (answer.high - answer.low) / 2 : 0;
  return [
    ofPath(evaluation, AXIS, {
      name: 'focal',
      label: "Relay's focal length",
      short: 'focal length',
      path,
      value,
      least: Math.min(least, value),
      greatest: Math.max(greatest, value),
      at: { z: sensor, y: 0 },
      plusMinus: doubt,
      assumed: answer.state === 'known' && answer.origin === 'assumed',
      valueAt: (place) => place - sensor + value,
      set: (f) => takeSound(put(f)),
      type: (f) => (typeof f === 'number' ? take(put(f)) : edit(path, f)),
    }),
  ];
}

const rim = (evaluation: Evaluation, { stops }: Scene): Movable[] =>
  stops
    .filter((stop) => stop.path === '/relay/clearApertureMm')
    .map((stop) => opening(evaluation, stop, { name: 'rim', label: "Clear opening of the relay's rim", short: 'rim Ø' }));

/** A camera lens's aperture as set: its f-number, or its entrance pupil where that is given. */
function iris(evaluation: Evaluation, { stops }: Scene): Movable[] {
  const f = numberIn(evaluation.answers.relayFocalLengthMm) ?? 0;
  return stops.flatMap((stop): Movable[] => {
    if (stop.path === '/relay/entrancePupilDiameterMm')
      return [opening(evaluation, stop, { name: 'iris', label: 'Entrance pupil of the camera lens', short: 'entrance pupil Ø' })];
    if (stop.path !== '/relay/fNumber') return [];
    const [least, greatest] = BOUNDS.fNumber;
    return [
      ofPath(evaluation, HEIGHT, {
        name: 'iris',
        label: 'f-number of the camera lens, as set',
        short: 'aperture f/',
        unit: '',
        path: stop.path,
        value: f / (2 * stop.half),
        least,
        greatest,
        leap: 2,
        at: { z: stop.z, y: stop.half },
        valueAt: (half) => f / (2 * half),
      }),
    ];
  });
}

/** Each ring can be moved along and opened. */
function rings(evaluation: Evaluation, scene: Scene): Movable[] {
  const { stops = [], infinitySpaceMm } = evaluation.pairing;
  return stops.flatMap((ring, i): Movable[] => {
    const stands = scene.stops.find((s) => s.path === `/stops/${i}/diameterMm`);
    if (!stands) return [];
    const called = ring.label ?? `ring ${i + 1}`;
    const before = ring.fromShoulderMm !== undefined;
    const value = amount((before ? ring.fromShoulderMm : ring.fromSensorMm) ?? 0);
    return [
      ofPath(evaluation, AXIS, {
        name: `ring-${i}`,
        label: `${called}, from the ${before ? 'shoulder' : 'sensor'}`,
        short: `${called}, from the ${before ? 'shoulder' : 'sensor'}`,
        path: `/stops/${i}/${before ? 'fromShoulderMm' : 'fromSensorMm'}`,
        value,
        least: Math.min(value, 0),
        greatest: before ? amount(infinitySpaceMm) : Math.max(value, scene.sensor - scene.plane - 1),
        at: { z: stands.z, y: 0 },
        valueAt: (place) => (before ? place : scene.sensor - place),
      }),
      opening(evaluation, stands, { name: `opening-${i}`, label: `${called}, opening`, short: `${called} Ø` }),
    ];
  });
}

/** The point of the picture whose beam is drawn: it belongs to the one who looks, not to the pairing. */
function fieldOf({ sensor, cornerHeight, fieldHeight }: Scene): Movable {
  return {
    ...HEIGHT,
    name: 'field',
    label: 'Beam drawn to this far from the middle of the picture',
    short: 'beam drawn to',
    path: '',
    value: fieldPointMm.peek(),
    least: 0,
    greatest: cornerHeight,
    leap: 2,
    plusMinus: 0,
    assumed: false,
    digits: 3,
    at: { z: sensor, y: fieldHeight },
    valueAt: (height) => height,
    set: pointAt,
    type: (value) => typeof value === 'number' && value >= 0 && pointAt(value),
  };
}
