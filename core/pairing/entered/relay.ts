import { Gap } from '../../figure.ts';
import { amount, isMeasured } from '../../parts/quantity.ts';
import type { Relay } from '../../parts/relay.ts';
import * as typical from '../../parts/typical.ts';
import type { GlassRelay } from '../glassworks.ts';
import { GLASS } from '../input.ts';
import * as leaves from '../leaves.ts';
import type { Entries } from './entries.ts';

/** @param glass the relay's glass worked out; it stands in for what is not given, or, of its focal length, not measured */
export function enterRelay(entries: Entries, relay: Relay, glass: GlassRelay | undefined): void {
  entries.values.set(leaves.relayKind, relay.kind);
  const focalLength = enterFocalLength(entries, relay, glass);
  entries.values.set(leaves.glassRelay, glass ?? Gap.unknown(GLASS));
  const pupil = enterEntrancePupil(entries, relay, focalLength);
  enterRim(entries, relay, glass, focalLength, pupil);
  entries.takeIfGiven(leaves.ratedCircle, 'imageCircleMm', '/relay/imageCircleMm', relay.imageCircleMm);
  enterLengths(entries, relay, glass, focalLength);
}

/** By its glass, its power or its focal length, whichever is the surest. @returns mm */
function enterFocalLength({ values, take }: Entries, relay: Relay, glass: GlassRelay | undefined): number {
  values.set(leaves.givenFocalLength, Gap.unknown('/relay/focalLengthMm'));
  values.set(leaves.power, Gap.unknown('/relay/powerDioptre'));
  const listed = relay.glass && !('class' in relay.glass);
  if (glass && listed && !isMeasured(relay.focalLengthMm) && !isMeasured(relay.powerDioptre)) {
    take(leaves.givenFocalLength, 'focalLengthMm', GLASS, glass.focalLengthMm);
    return glass.focalLengthMm;
  }
  const { powerDioptre: power, focalLengthMm: given } = relay;
  if (power !== undefined && (given === undefined || isMeasured(power)) && !isMeasured(given)) {
    take(leaves.power, 'powerDioptre', '/relay/powerDioptre', power, relay.kind === 'supplementary' ? typical.loosePower : undefined);
    return 1000 / amount(power);
  }
  // Of glass that nobody has worked out: what hangs on its focal length is not told.
  if (given === undefined) return Number.NaN;
  const loose = relay.kind === 'camera-lens' ? typical.looseFocalLength : undefined;
  take(leaves.givenFocalLength, 'focalLengthMm', '/relay/focalLengthMm', given, loose);
  return amount(given);
}

/** Its diameter or the f-number, whichever was measured, and its depth. @returns its diameter, mm, where it is known */
function enterEntrancePupil({ values, list, takeIfGiven, assume }: Entries, relay: Relay, focalLength: number): number | undefined {
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
  const depthPath = '/relay/entrancePupilDepthMm';
  if (relay.kind !== 'camera-lens') values.set(leaves.entrancePupilDepth, Gap.unknown(depthPath));
  else if (relay.entrancePupilDepthMm === undefined)
    assume(leaves.entrancePupilDepth, 'entrancePupilDepthMm', depthPath, typical.entrancePupilDepth(focalLength));
  else takeIfGiven(leaves.entrancePupilDepth, 'entrancePupilDepthMm', depthPath, relay.entrancePupilDepthMm);

  const diameter = values.get(leaves.givenEntrancePupil);
  if (typeof diameter === 'number') return diameter;
  return relay.fNumber === undefined ? undefined : focalLength / amount(relay.fNumber);
}

/** The front rim: as given, else the narrower of the glass and what its class leaves open. */
function enterRim(
  { values, take, takeIfGiven, assume }: Entries,
  relay: Relay,
  glass: GlassRelay | undefined,
  focalLength: number,
  pupil: number | undefined,
): void {
  const path = '/relay/clearApertureMm';
  if (relay.clearApertureMm !== undefined) {
    take(leaves.clearAperture, 'clearApertureMm', path, relay.clearApertureMm);
    return;
  }
  const guess =
    relay.kind === 'camera-lens' && pupil !== undefined
      ? typical.rimOfCameraLens(pupil, values.get(leaves.entrancePupilDepth) as number, focalLength)
      : typical.rimFromThread(relay);
  if (glass && glass.clearDiameterMm < (guess?.value ?? Number.POSITIVE_INFINITY))
    take(leaves.clearAperture, 'clearApertureMm', GLASS, glass.clearDiameterMm);
  else if (guess) assume(leaves.clearAperture, 'clearApertureMm', path, guess);
  else takeIfGiven(leaves.clearAperture, 'clearApertureMm', path, undefined);
}

/** Its front principal plane, and how long it is behind its rim. */
function enterLengths({ take, assume, takeApart }: Entries, relay: Relay, glass: GlassRelay | undefined, focalLength: number): void {
  const planePath = '/relay/frontPrincipalPlaneFromRimMm';
  if (relay.frontPrincipalPlaneFromRimMm !== undefined)
    take(leaves.principalPlane, 'frontPrincipalPlaneFromRimMm', planePath, relay.frontPrincipalPlaneFromRimMm);
  else if (glass) take(leaves.principalPlane, 'frontPrincipalPlaneFromRimMm', GLASS, glass.frontPrincipalPlaneMm);
  else assume(leaves.principalPlane, 'frontPrincipalPlaneFromRimMm', planePath, typical.principalPlane(relay, focalLength));

  const guess = relay.kind === 'camera-lens' ? (): typical.Guess => typical.rimToSensor(focalLength) : undefined;
  if (relay.rimToSensorMm === undefined && glass)
    takeApart(leaves.givenRimToSensor, 'rimToSensorMm', GLASS, glass.thicknessMm + glass.backFocalLengthMm);
  else takeApart(leaves.givenRimToSensor, 'rimToSensorMm', '/relay/rimToSensorMm', relay.rimToSensorMm, guess);

  const back = relay.backFocalLengthMm;
  const backPath = back === undefined && glass ? GLASS : '/relay/backFocalLengthMm';
  takeApart(leaves.backFocalLength, 'backFocalLengthMm', backPath, back ?? glass?.backFocalLengthMm);
}
