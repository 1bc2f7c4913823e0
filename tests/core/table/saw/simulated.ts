import { numberIn, type Pairing, type QuantityInput } from '../../../../core/index.ts';
import { evaluatePart } from '../../../../core/pairing/evaluate.ts';
import { type FigureId, planFor, type RadiusId } from '../../../../core/pairing/registry.ts';
import type { SawInput } from '../../../../core/table/saw/saw.ts';
import type { Random } from '../../../support/random.ts';

/**
 * Made-up tables: a pairing whose inputs are known to a ±, the truth drawn evenly inside it, and readings of that truth
 * with errors drawn evenly inside theirs. What is foretold of the truth comes from whole evaluations, not from the bench.
 */
export const q = (value: number, plusMinus: number): { value: number; plusMinus: number } => ({ value, plusMinus });

const plans = new Map<string, ReturnType<typeof planFor>>();
const planOf = (id: FigureId | RadiusId): ReturnType<typeof planFor> => {
  const plan = plans.get(id) ?? planFor([id]);
  plans.set(id, plan);
  return plan;
};

export const figureOf = (pairing: Pairing, id: FigureId | RadiusId): number =>
  numberIn(evaluatePart(pairing, planOf(id)).answers[id] as never) ?? Number.NaN;

/** Every quantity of a pairing somewhere inside its ±, bare. */
export function trueOf<T>(given: T, draw: Random): T {
  if (Array.isArray(given)) return given.map((one) => trueOf(one, draw)) as T;
  if (typeof given !== 'object' || given === null) return given;
  const { value, plusMinus = 0 } = given as { value?: number; plusMinus?: number };
  if (typeof value === 'number') return draw.between(value - plusMinus, value + plusMinus) as T;
  return Object.fromEntries(Object.entries(given).map(([key, inner]) => [key, trueOf(inner, draw)])) as T;
}

export const readWith = (draw: Random, truth: number, plusMinus: number): { value: number; plusMinus: number } =>
  q(truth + draw.between(-plusMinus, plusMinus), plusMinus);

/** A pairing with the usual doubts, its relay's rim near the beam so that corners darken. */
export function table(over: { f: QuantityInput; e: QuantityInput; rim: QuantityInput; M?: QuantityInput }): Pairing {
  return {
    objective: {
      magnification: over.M ?? 10,
      na: q(0.25, 0.005),
      referenceFocalLengthMm: 200,
      exitPupilFromShoulderMm: over.e,
    },
    relay: { kind: 'tube-lens', focalLengthMm: over.f, clearApertureMm: over.rim, frontPrincipalPlaneFromRimMm: q(2, 2) },
    sensor: { widthMm: q(23.5, 0.05), heightMm: 15.6, pixelPitchUm: 3.9 },
    infinitySpaceMm: q(60, 0.5),
  };
}

export interface Simulated {
  readonly given: Pairing;
  readonly asked: SawInput;
  /** The true value at each path that is sought. */
  readonly truth: Readonly<Record<string, number>>;
}
