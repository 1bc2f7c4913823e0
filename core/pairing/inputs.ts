import type { Node } from '../figure.ts';
import { Gap } from '../figure.ts';
import { imageScale } from '../paraxial/conjugates.ts';
import { amount, BOUNDS, type Bounded, isMeasured, type Origin, type Quantity, type QuantityInput, quantityOf } from '../parts/quantity.ts';
import { diagonalOf } from '../parts/sensor.ts';
import * as typical from '../parts/typical.ts';
import type { PlacedStop } from '../pupil/stops.ts';
import type { GlassRelay } from './glassworks.ts';
import * as leaves from './leaves.ts';
import { DEFAULTS, type Pairing } from './schema.ts';

/** One number that was put in, or taken in its place. */
export interface Input {
  /** JSON Pointer into the pairing. */
  readonly path: string;
  readonly leaf: Node;
  readonly value: number;
  readonly plusMinus: number;
  /** The interval that surely holds the truth. */
  readonly least: number;
  readonly greatest: number;
  readonly origin: Origin;
  /** Why it, or its interval, is a guess; undefined where it is not. */
  readonly guess: string | undefined;
  /**
   * That it moves nothing of the picture but what is told beside it, how long and how roomy the rig is, how well a cover
   * glass suits: it is moved by itself, never with the others at once, whose number decides how often everything is
   * worked out. `one way` where it moves each figure up, or down, only.
   */
  readonly apart?: 'one way' | 'both ways';
  /** The leaf's value with this input moved to `x`. */
  put(current: unknown, x: number): unknown;
}

export interface Inputs {
  readonly values: ReadonlyMap<Node, unknown>;
  readonly list: readonly Input[];
}

const statesItsSpread = (q: QuantityInput): boolean => typeof q !== 'number' && (q.plusMinus !== undefined || q.origin === 'measured');

/**
 * Every leaf's value, with guesses in the place of what is not known and why.
 *
 * @param glass the relay's glass worked out; its focal length and principal plane stand in for what is not measured
 */
export function inputsOf(pairing: Pairing, glass?: GlassRelay): Inputs {
  const { objective, relay, sensor } = pairing;
  const values = new Map<Node, unknown>();
  const list: Input[] = [];

  const scalar = (_: unknown, x: number): number => x;
  const enter = (leaf: Node, name: Bounded, path: string, q: Quantity, guess?: string, put: Input['put'] = scalar): void => {
    const [low, high] = BOUNDS[name];
    const least = Math.max(low, q.value - q.plusMinus);
    const greatest = Math.min(high, q.value + q.plusMinus);
    list.push({ path, leaf, value: q.value, plusMinus: q.plusMinus, least, greatest, origin: q.origin, guess, put });
  };
  const take = (leaf: Node, name: Bounded, path: string, q: QuantityInput, loose?: (q: Quantity) => typical.Guess): void => {
    const plain = quantityOf(q);
    const guess = loose && !statesItsSpread(q) ? loose(plain) : undefined;
    const why = guess?.why ?? (plain.origin === 'assumed' ? 'given as typical of its class' : undefined);
    values.set(leaf, plain.value);
    enter(leaf, name, path, guess ? { ...plain, plusMinus: guess.plusMinus } : plain, why);
  };
  const assume = (leaf: Node, name: Bounded, path: string, guess: typical.Guess): void => {
    const { value, plusMinus, why } = typical.within(name, guess);
    values.set(leaf, value);
    enter(leaf, name, path, { value, plusMinus, origin: 'assumed' }, why);
  };
  const takeIfGiven = (leaf: Node, name: Bounded, path: string, q: QuantityInput | undefined): void => {
    if (q === undefined) values.set(leaf, Gap.unknown(path));
    else take(leaf, name, path, q);
  };
  const takeApart = (leaf: Node, name: Bounded, path: string, q: QuantityInput | undefined, guess?: () => typical.Guess): void => {
    const before = list.length;
    if (q === undefined && guess) assume(leaf, name, path, guess());
    else takeIfGiven(leaf, name, path, q);
    for (const input of list.splice(before)) list.push({ ...input, apart: 'one way' });
  };

  take(leaves.magnification, 'magnification', '/objective/magnification', objective.magnification);
  take(leaves.numericalAperture, 'na', '/objective/na', objective.na);
  take(leaves.referenceFocalLength, 'referenceFocalLengthMm', '/objective/referenceFocalLengthMm', objective.referenceFocalLengthMm);
  takeIfGiven(leaves.fieldNumber, 'fieldNumberMm', '/objective/fieldNumberMm', objective.fieldNumberMm);
  takeIfGiven(leaves.testedField, 'testedFieldMm', '/objective/testedFieldMm', objective.testedFieldMm);
  const pupilPath = '/objective/exitPupilFromShoulderMm';
  if (objective.exitPupilFromShoulderMm === undefined)
    assume(leaves.exitPupilFromShoulder, 'exitPupilFromShoulderMm', pupilPath, typical.exitPupil(objective));
  else take(leaves.exitPupilFromShoulder, 'exitPupilFromShoulderMm', pupilPath, objective.exitPupilFromShoulderMm);

  takeApart(leaves.workingDistance, 'workingDistanceMm', '/objective/workingDistanceMm', objective.workingDistanceMm);
  takeApart(leaves.parfocalDistance, 'parfocalDistanceMm', '/objective/parfocalDistanceMm', objective.parfocalDistanceMm);
  takeApart(leaves.noseDiameter, 'noseDiameterMm', '/objective/noseDiameterMm', objective.noseDiameterMm, () => typical.nose(objective));

  takeIfGiven(leaves.coverGlass, 'coverGlassMm', '/objective/coverGlassMm', objective.coverGlassMm);
  if (objective.coverGlassMm !== undefined) list.push({ ...(list.pop() as Input), apart: 'both ways' });

  values.set(leaves.relayKind, relay.kind);
  const byPower =
    relay.powerDioptre !== undefined &&
    (relay.focalLengthMm === undefined || isMeasured(relay.powerDioptre)) &&
    !isMeasured(relay.focalLengthMm);
  values.set(leaves.givenFocalLength, Gap.unknown('/relay/focalLengthMm'));
  values.set(leaves.power, Gap.unknown('/relay/powerDioptre'));
  const ofItsGlass =
    glass !== undefined && !(relay.glass && 'class' in relay.glass) && !isMeasured(relay.focalLengthMm) && !isMeasured(relay.powerDioptre);
  if (ofItsGlass) {
    take(leaves.givenFocalLength, 'focalLengthMm', GLASS, glass.focalLengthMm);
  } else if (byPower) {
    const loose = relay.kind === 'supplementary' ? typical.loosePower : undefined;
    take(leaves.power, 'powerDioptre', '/relay/powerDioptre', relay.powerDioptre as QuantityInput, loose);
  } else if (relay.focalLengthMm !== undefined) {
    const loose = relay.kind === 'camera-lens' ? typical.looseFocalLength : undefined;
    take(leaves.givenFocalLength, 'focalLengthMm', '/relay/focalLengthMm', relay.focalLengthMm, loose);
  }
  const focalLength = ofItsGlass
    ? glass.focalLengthMm
    : byPower
      ? 1000 / amount(relay.powerDioptre as QuantityInput)
      : amount(relay.focalLengthMm ?? Number.NaN);
  values.set(leaves.glassRelay, glass ?? Gap.unknown(GLASS));

  takeIfGiven(leaves.givenEntrancePupil, 'entrancePupilDiameterMm', '/relay/entrancePupilDiameterMm', relay.entrancePupilDiameterMm);
  takeIfGiven(leaves.fNumber, 'fNumber', '/relay/fNumber', relay.fNumber);
  if (relay.entrancePupilDiameterMm !== undefined && relay.fNumber !== undefined) {
    const beaten = isMeasured(relay.fNumber) && !isMeasured(relay.entrancePupilDiameterMm) ? leaves.givenEntrancePupil : leaves.fNumber;
    values.set(beaten, Gap.unknown(''));
    list.splice(
      list.findIndex((input) => input.leaf === beaten),
      1,
    );
  }
  const given = values.get(leaves.givenEntrancePupil);
  const pupil = typeof given === 'number' ? given : relay.fNumber === undefined ? undefined : focalLength / amount(relay.fNumber);
  const depthGuess = relay.entrancePupilDepthMm === undefined ? typical.entrancePupilDepth(focalLength) : undefined;
  if (relay.kind !== 'camera-lens') values.set(leaves.entrancePupilDepth, Gap.unknown('/relay/entrancePupilDepthMm'));
  else if (depthGuess) assume(leaves.entrancePupilDepth, 'entrancePupilDepthMm', '/relay/entrancePupilDepthMm', depthGuess);
  else takeIfGiven(leaves.entrancePupilDepth, 'entrancePupilDepthMm', '/relay/entrancePupilDepthMm', relay.entrancePupilDepthMm);

  const rimPath = '/relay/clearApertureMm';
  const rimGuess =
    relay.clearApertureMm !== undefined
      ? undefined
      : relay.kind === 'camera-lens' && pupil !== undefined
        ? typical.rimOfCameraLens(pupil, values.get(leaves.entrancePupilDepth) as number, focalLength)
        : typical.rimFromThread(relay);
  if (relay.clearApertureMm === undefined && glass && glass.clearDiameterMm < (rimGuess?.value ?? Number.POSITIVE_INFINITY))
    take(leaves.clearAperture, 'clearApertureMm', GLASS, glass.clearDiameterMm);
  else if (rimGuess) assume(leaves.clearAperture, 'clearApertureMm', rimPath, rimGuess);
  else takeIfGiven(leaves.clearAperture, 'clearApertureMm', rimPath, relay.clearApertureMm);

  takeIfGiven(leaves.ratedCircle, 'imageCircleMm', '/relay/imageCircleMm', relay.imageCircleMm);
  const planePath = '/relay/frontPrincipalPlaneFromRimMm';
  if (relay.frontPrincipalPlaneFromRimMm === undefined && glass)
    take(leaves.principalPlane, 'frontPrincipalPlaneFromRimMm', GLASS, glass.frontPrincipalPlaneMm);
  else if (relay.frontPrincipalPlaneFromRimMm === undefined)
    assume(leaves.principalPlane, 'frontPrincipalPlaneFromRimMm', planePath, typical.principalPlane(relay, focalLength));
  else take(leaves.principalPlane, 'frontPrincipalPlaneFromRimMm', planePath, relay.frontPrincipalPlaneFromRimMm);

  const lengthPath = '/relay/rimToSensorMm';
  if (relay.rimToSensorMm === undefined && glass)
    takeApart(leaves.givenRimToSensor, 'rimToSensorMm', GLASS, glass.thicknessMm + glass.backFocalLengthMm);
  else
    takeApart(
      leaves.givenRimToSensor,
      'rimToSensorMm',
      lengthPath,
      relay.rimToSensorMm,
      relay.kind === 'camera-lens' ? () => typical.rimToSensor(focalLength) : undefined,
    );

  const back = relay.backFocalLengthMm;
  takeApart(
    leaves.backFocalLength,
    'backFocalLengthMm',
    back === undefined && glass ? GLASS : '/relay/backFocalLengthMm',
    back ?? glass?.backFocalLengthMm,
  );

  takeApart(leaves.register, 'registerMm', '/sensor/registerMm', sensor.registerMm, typical.register);
  take(leaves.width, 'widthMm', '/sensor/widthMm', sensor.widthMm);
  take(leaves.height, 'heightMm', '/sensor/heightMm', sensor.heightMm);
  takeIfGiven(leaves.givenPitch, 'pixelPitchUm', '/sensor/pixelPitchUm', sensor.pixelPitchUm);
  values.set(leaves.columns, sensor.columns ?? Gap.unknown('/sensor/columns'));
  values.set(leaves.rows, sensor.rows ?? Gap.unknown('/sensor/rows'));

  take(leaves.infinitySpace, 'infinitySpaceMm', '/infinitySpaceMm', pairing.infinitySpaceMm);
  take(leaves.sensorOffset, 'sensorOffsetMm', '/sensorOffsetMm', pairing.sensorOffsetMm ?? DEFAULTS.sensorOffsetMm);
  enterRings(pairing, values, enter);

  values.set(leaves.wavelength, pairing.wavelengthNm ?? DEFAULTS.wavelengthNm);
  values.set(leaves.litThreshold, pairing.litThreshold ?? DEFAULTS.litThreshold);
  values.set(leaves.subjectWidth, pairing.subject?.widthMm ?? Gap.unknown('/subject/widthMm'));
  values.set(leaves.subjectHeight, pairing.subject?.heightMm ?? Gap.unknown('/subject/heightMm'));
  values.set(leaves.subjectDepth, pairing.subject?.depthMm ?? Gap.unknown('/subject/depthMm'));
  values.set(leaves.immersion, amount(objective.immersionIndex ?? DEFAULTS.immersionIndex));
  values.set(leaves.subjectIndex, pairing.subject?.index ?? amount(objective.immersionIndex ?? DEFAULTS.immersionIndex));
  values.set(leaves.depthConvention, pairing.depth?.convention ?? DEFAULTS.depthConvention);
  values.set(leaves.givenBlur, pairing.depth?.blurUm ?? Gap.unknown('/depth/blurUm'));
  const { relativeContrast, frequency, focus, spectrum } = pairing.sharp ?? {};
  values.set(leaves.sharpContrast, relativeContrast ?? DEFAULTS.relativeContrast);
  values.set(leaves.givenDetail, frequency ?? Gap.unknown('/sharp/frequency'));
  values.set(leaves.sharpFocus, focus ?? DEFAULTS.sharpFocus);
  values.set(leaves.sharpSpectrum, spectrum ?? DEFAULTS.sharpSpectrum);
  values.set(leaves.mapping, 0);
  const mapped = glass ? mappingOf(pairing, glass, values) : 1;
  list.push({
    path: GLASS,
    leaf: leaves.mapping,
    value: 0,
    plusMinus: Math.abs(mapped),
    least: Math.min(0, mapped),
    greatest: Math.max(0, mapped),
    origin: 'marked',
    guess: undefined,
    put: scalar,
  });

  return { values, list };
}

/** The path of what the glass decides; the unknown mapping of a relay without glass counts under it too. */
export const GLASS = '/relay/glass';

/** How far the relay's way of mapping angles takes the corner from 0, all as the shared area, to 1, cos⁴θ less. */
function mappingOf({ sensor }: Pairing, glass: GlassRelay, values: ReadonlyMap<Node, unknown>): number {
  const distance = (values.get(leaves.infinitySpace) as number) - (values.get(leaves.exitPupilFromShoulder) as number);
  const plane = distance + (values.get(leaves.principalPlane) as number);
  const slope = diagonalOf(sensor) / 2 / imageScale(glass.focalLengthMm, values.get(leaves.sensorOffset) as number, plane);
  return (1 - glass.mappingFactor(distance, slope)) / (1 - 1 / (1 + slope * slope) ** 2);
}

/** Rings and the mount's throat as one leaf, each of their numbers an input of its own. */
function enterRings(
  { stops = [], sensor }: Pairing,
  values: Map<Node, unknown>,
  enter: (leaf: Node, name: Bounded, path: string, q: Quantity, guess?: string, put?: Input['put']) => void,
): void {
  const rings: PlacedStop[] = [];
  const add = (
    label: string,
    place: 'shoulder' | 'sensor',
    opening: readonly [string, Bounded, QuantityInput],
    at: readonly [string, Bounded, QuantityInput],
  ): void => {
    const i = rings.length;
    const diameter = quantityOf(opening[2]);
    const position = quantityOf(at[2]);
    rings.push({ label, path: opening[0], diameterMm: diameter.value, place, atMm: position.value });
    const change = (key: 'diameterMm' | 'atMm') => (current: unknown, x: number) =>
      (current as PlacedStop[]).map((ring, j) => (j === i ? { ...ring, [key]: x } : ring));
    const why = (q: Quantity): string | undefined => (q.origin === 'assumed' ? 'given as typical of its class' : undefined);
    enter(leaves.rings, opening[1], opening[0], diameter, why(diameter), change('diameterMm'));
    enter(leaves.rings, at[1], at[0], position, why(position), change('atMm'));
  };
  stops.forEach((stop, i) => {
    const path = `/stops/${i}`;
    const front = stop.fromShoulderMm !== undefined;
    const at = front ? 'fromShoulderMm' : 'fromSensorMm';
    add(
      stop.label ?? `ring ${i + 1}`,
      front ? 'shoulder' : 'sensor',
      [`${path}/diameterMm`, 'diameterMm', stop.diameterMm],
      [`${path}/${at}`, at, (stop.fromShoulderMm ?? stop.fromSensorMm) as QuantityInput],
    );
  });
  if (sensor.throatDiameterMm !== undefined && sensor.registerMm !== undefined)
    add(
      "the mount's throat",
      'sensor',
      ['/sensor/throatDiameterMm', 'throatDiameterMm', sensor.throatDiameterMm],
      ['/sensor/registerMm', 'registerMm', sensor.registerMm],
    );
  values.set(leaves.rings, rings);
}
