/**
 * The optics, as a contents page. Pure functions: no input or output, no clock, no document; lengths
 * in mm, slopes as tangents, light from the objective to the sensor.
 */

// What goes in: parts, their spacing, and where each number comes from.
export { type Objective, objectiveSchema } from './parts/objective.ts';
export { RELAY_KINDS, type Relay, type RelayKind, relaySchema } from './parts/relay.ts';
export { diagonalOf, type Sensor, sensorSchema } from './parts/sensor.ts';
export { type Stop, stopSchema } from './parts/stop.ts';
export { amount, BOUNDS, isMeasured, ORIGINS, type Origin, type QuantityInput, quantity } from './parts/quantity.ts';
export { type PartKind, resolveParts, type Shelf } from './parts/resolve.ts';
export { MOST_OWN, type OwnPart, ownId, ownPartSchema } from './parts/own.ts';
export {
  DEFAULTS,
  type Pairing,
  pairingSchema,
  SHARP_FOCUS,
  SHARP_SPECTRA,
  type SharpFocus,
  type SharpSpectrum,
  settingShape,
} from './pairing/schema.ts';
export type { GlassRelay, Glassworks } from './pairing/glassworks.ts';
export { contradictions } from './pairing/contradictions.ts';
export { contradictionsAlone } from './pairing/alone.ts';
export { laidOn, subjectSize } from './pairing/subject.ts';

// What comes out: one report, its figures, their working.
export { type Report, report, reportOf } from './pairing/report.ts';
export { bareRigOf, detailOf, type Evaluation, evaluate, stopsOf } from './pairing/evaluate.ts';
export { type Answer, interval, numberIn } from './pairing/answer.ts';
export { FIGURE_IDS, FIGURES, type FigureId, figureById, GROUPS, type GroupName, RADIUS_IDS } from './pairing/registry.ts';
export { type Working, type WorkingTerm, workingOf } from './pairing/working.ts';
export { CIRCLE_FIGURE, type Coverage, VERDICTS, type Verdict } from './pairing/verdict.ts';
export { CIRCLES, type Circle } from './pairing/image-circles.ts';
export type { Assumption } from './pairing/assumptions.ts';
export { type Swing, swingOf } from './pairing/swing.ts';
export { briefOf } from './pairing/brief.ts';
export { MOST_STEPS, type Sweep, type SweepAnswer, sweep, sweepReports, sweepValues, varied, withValue } from './pairing/sweep.ts';
export { type Comparison, compare, MOST_ABREAST } from './pairing/compare.ts';
export { type Differing, differenceOf, differing } from './pairing/difference.ts';

// Choosing.
export { BETTER, DIRECTIONS } from './choose/better.ts';
export { COMPARED, type ComparedId } from './choose/compared.ts';
export { type Abreast, type Row, rowsOf, type Standing, standingOf } from './choose/standing.ts';
export { rankable } from './choose/covering.ts';
export { letter, letters, praiseOf } from './choose/praise.ts';
export { forOneSubject, judgedUnlike } from './choose/one-subject.ts';

// The optics underneath.
export { gap, thinLens, train } from './paraxial/matrix.ts';
export { divergence, focalLengthForScale, imageScale } from './paraxial/conjugates.ts';
export { arcs, type Discs, sharedArea } from './pupil/discs.ts';
export { fromPupil, type PlacedStop, type Rig, type SeenStops, scaleOf, seenStops, toPrincipalPlane } from './pupil/stops.ts';
export { beamArea, cutoffSlope, onsetSlope, relativeIllumination, slopeAtShare } from './pupil/illumination.ts';
export { type Cut, cuts } from './pupil/cuts.ts';
export { AIRY_ZERO, airyDiameter, rayleigh } from './diffraction/airy.ts';
export { diffractionMtf, pixelMtf, systemMtf } from './diffraction/mtf.ts';
export { cutMtf } from './diffraction/cut.ts';
export { DEPTH_CONVENTIONS, type DepthConvention, detectorTerm, waveTerm } from './diffraction/depth.ts';
export { circleInRectangle } from './pairing/circle.ts';

// Words, units and errors.
export { minutesFor, nameOf, resolving } from './pairing/phrases.ts';
export { atLeast, atMost, capital, duration, earned, listed, percent, short } from './words.ts';
export { sameJson } from './same.ts';
export type { Figure } from './figure.ts';
export { DIMENSION, type Unit } from './units.ts';
export { PairingError, type Problem, pointer, problemsOf, shown, steps, valueAt } from './errors.ts';
