import { PairingError } from '../errors.ts';
import type { Figure, Node } from '../figure.ts';
import type { Graph, Sheet } from '../graph.ts';
import type { Rig, SeenStops } from '../pupil/stops.ts';
import { type Answer, answer } from './answer.ts';
import { rig, rigOf, seen } from './aperture.ts';
import { contradictions } from './contradictions.ts';
import { pupilDiameterMm, relayFocalLengthMm } from './first-order.ts';
import { type Glassworks, glassOf } from './glassworks.ts';
import { sharpDetail } from './image-circles.ts';
import type { Input, Inputs } from './input.ts';
import { inputsOf } from './inputs.ts';
import { exitPupilFromShoulder, infinitySpace, principalPlane, rings, sensorOffset } from './leaves.ts';
import { originsOf } from './origins.ts';
import { type FigureId, GRAPH, type Plan, type RadiusId, WHOLE } from './registry.ts';
import type { Pairing } from './schema.ts';
import { type Spread, spreadOf } from './spread.ts';

/** Figures worked out, each with its low and high, and the graph's values that they came from. */
export interface Worked<Id extends string> {
  readonly graph: Graph;
  readonly inputs: readonly Input[];
  readonly sheet: Sheet;
  readonly spread: Spread;
  readonly answers: Readonly<Record<Id, Answer>>;
}

/** A pairing worked out in part: the figures of a plan, each with its low and high. */
export interface PartEvaluation extends Omit<Worked<FigureId | RadiusId>, 'answers'> {
  readonly pairing: Pairing;
  readonly answers: Readonly<Partial<Record<FigureId | RadiusId, Answer>>>;
}

/** A pairing worked out: every node's value, every figure with its low and high. */
export interface Evaluation extends PartEvaluation {
  readonly answers: Readonly<Record<FigureId | RadiusId, Answer>>;
}

/** A node's raw value on a whole evaluation's sheet; a Gap where there is none. */
export const raw = (sheet: Sheet, node: Node): unknown => sheet[GRAPH.place.get(node) as number];

/**
 * Works a pairing out. The pairing has passed `pairingSchema`; one that contradicts itself is refused.
 *
 * @param works what works with glass: a pairing whose relay has glass needs it
 * @throws PairingError with the contradictions
 */
export const evaluate = (pairing: Pairing, works?: Glassworks): Evaluation => evaluatePart(pairing, WHOLE, works) as Evaluation;

/**
 * Works out no more of a pairing than a plan asks for; each figure is the same as in the whole.
 * @throws PairingError with the contradictions
 */
export function evaluatePart(pairing: Pairing, plan: Plan, works?: Glassworks): PartEvaluation {
  return { pairing, ...workedOut(plan, soundInputs(pairing, works)) };
}

/**
 * The inputs of a pairing that does not contradict itself.
 * @throws PairingError with the contradictions
 */
export function soundInputs(pairing: Pairing, works?: Glassworks): Inputs {
  const problems = contradictions(pairing, works);
  if (problems.length > 0) throw new PairingError(problems);
  return inputsOf(pairing, glassOf(pairing, works));
}

/** Works the figures of a plan out from their inputs. */
export function workedOut<Id extends string>({ graph, told, keys }: Plan<Id>, { values, list }: Inputs): Worked<Id> {
  const sheet = graph.fill(values);
  const spread = spreadOf(graph, sheet, list, told);
  const originOf = originsOf(graph, sheet, list, spread);
  const answers = { ...keys } as Record<Id, unknown> as Record<Id, Answer>;
  for (let j = 0; j < told.length; j++) {
    const figure = told[j] as Figure<Id>;
    const value = sheet[graph.place.get(figure) as number];
    answers[figure.id] = answer(value, figure.unit, spread.low[j] as number, spread.high[j] as number, originOf, j);
  }
  return { graph, inputs: list, sheet, spread, answers };
}

/** Where everything stands but the relay's own openings, known or not. */
export function bareRigOf(sheet: Sheet): Rig {
  const of = <T>(node: Node<T>): T => raw(sheet, node) as T;
  const where = [of(infinitySpace), of(exitPupilFromShoulder), of(principalPlane), of(relayFocalLengthMm), of(sensorOffset)] as const;
  return rigOf(of(pupilDiameterMm), of(rings), [], ...where);
}

/** The stops as they stand and as they are seen, or undefined where an opening is not known. */
export function stopsOf(sheet: Sheet): { rig: Rig; seen: SeenStops } | undefined {
  const stops = raw(sheet, seen);
  return stops && 'walk' in (stops as object) ? { rig: raw(sheet, rig) as Rig, seen: stops as SeenStops } : undefined;
}

/** The detail in which sharpness is judged, lp/mm on the sensor; undefined where it is not known. */
export function detailOf(sheet: Sheet): number | undefined {
  const detail = raw(sheet, sharpDetail);
  return typeof detail === 'number' ? detail : undefined;
}
