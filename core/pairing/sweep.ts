import { PairingError, problemsOf, shown, steps as stepsOf, valueAt } from '../errors.ts';
import { RULES } from '../parts/alternatives.ts';
import type { Answer } from './answer.ts';
import { evaluatePart } from './evaluate.ts';
import type { Glassworks } from './glassworks.ts';
import { FIGURE_IDS, type FigureId, planFor } from './registry.ts';
import { type Pairing, pairingSchema } from './schema.ts';
import { type Coverage, coverageOf, JUDGED, type Judgeable } from './verdict.ts';

export const MOST_STEPS = 400;

export interface Sweep {
  pairing: Pairing;
  /** JSON Pointer of the quantity that is varied, into the pairing. */
  vary: string;
  from: number;
  to: number;
  /** How many values, both ends included. */
  steps: number;
  figures?: FigureId[] | undefined;
}

export interface SweepAnswer {
  vary: string;
  values: number[];
  reports: { figures: Partial<Record<FigureId, Answer>>; coverage: Coverage }[];
}

/** Evenly spaced from one end to the other, both met exactly. */
export const sweepValues = ({ from, to, steps }: Pick<Sweep, 'from' | 'to' | 'steps'>): number[] =>
  Array.from({ length: steps }, (_, i) => (i > 0 && i === steps - 1 ? to : from + ((to - from) * i) / Math.max(1, steps - 1)));

/**
 * The pairing at evenly spaced values of one of its quantities, all else held.
 * @throws PairingError where the pointer names no number, or a value contradicts the rest
 */
export const sweep = (asked: Sweep, works?: Glassworks): SweepAnswer => ({
  vary: asked.vary,
  values: sweepValues(asked),
  reports: [...sweepReports(asked, works)],
});

/** What a sweep tells at one value. */
type SweptReport = SweepAnswer['reports'][number];

/**
 * The reports of `sweep` one by one, for those who have other things to do between.
 * @throws PairingError as `sweep` does, when it comes to the value
 */
export function* sweepReports(asked: Sweep, works?: Glassworks): Generator<SweptReport, void, undefined> {
  const at = varied(asked, works);
  for (const [i, value] of sweepValues(asked).entries()) {
    try {
      yield at(value);
    } catch (error) {
      if (!(error instanceof PairingError)) throw error;
      // Problems of a varied pairing are problems of the end that was asked for.
      const [path, end] = i === 0 ? ['/from', asked.from] : ['/to', asked.to];
      throw new PairingError(
        error.problems.map((p) =>
          p.path === '/vary' ? p : { ...p, path, given: shown(end), message: `at ${value}: ${p.path} ${p.message}` },
        ),
      );
    }
  }
}

/**
 * The pairing as a function of one of its quantities: no more is worked out at a value than is asked for.
 * What it returns throws PairingError where the pointer names no number or a value contradicts the rest.
 */
export function varied(
  { pairing, vary, figures = FIGURE_IDS }: Pick<Sweep, 'pairing' | 'vary' | 'figures'>,
  works?: Glassworks,
): (value: number) => SweptReport {
  const plan = planFor([...figures, ...JUDGED]);
  return (value) => {
    const changed = pairingSchema.safeParse(withValue(pairing, vary, value));
    if (!changed.success) throw new PairingError(problemsOf(changed.error, undefined));
    const evaluation = evaluatePart(changed.data, plan, works) as Judgeable;
    return { figures: Object.fromEntries(figures.map((id) => [id, evaluation.answers[id]])), coverage: coverageOf(evaluation) };
  };
}

/**
 * The pairing with the number at `path` replaced: a quantity keeps its origin and its ±, and what says
 * the same thing otherwise (a power beside a focal length) is left out.
 * @throws PairingError where there is no number to vary
 */
export function withValue(pairing: Pairing, path: string, value: number): Pairing {
  const keys = stepsOf(path);
  const last = keys.at(-1) ?? '';
  const here = valueAt(pairing, keys);
  const parent = valueAt(pairing, keys.slice(0, -1));
  const rule = RULES.find((r) => r.of === keys[0] && r.names.includes(last));
  const standsIn = rule !== undefined && keys.length === 2;
  if (typeof parent !== 'object' || parent === null || Array.isArray(parent) || (!isQuantity(here) && !standsIn))
    throw new PairingError([
      {
        path: '/vary',
        code: 'notANumber',
        message: 'names no number of this pairing',
        given: shown(path),
        expected: 'a JSON Pointer such as /relay/focalLengthMm or /infinitySpaceMm',
      },
    ]);
  const changed = copiedAlong(pairing, keys.slice(0, -1));
  const target = valueAt(changed, keys.slice(0, -1)) as Record<string, unknown>;
  target[last] = typeof here === 'object' ? { ...here, value } : value;
  if (standsIn) for (const other of rule.names) if (other !== last) delete target[other];
  // A relay of another focal length is another lens, of other glass.
  if (keys[0] === 'relay' && (last === 'focalLengthMm' || last === 'powerDioptre') && changed.relay.glass) delete changed.relay.glass;
  return changed;
}

/** A copy of what holds the value at `keys`, and of what holds that; the rest is shared. */
function copiedAlong<T>(whole: T, keys: readonly string[]): T {
  const copy = (Array.isArray(whole) ? [...whole] : { ...whole }) as Record<string, unknown>;
  const [key, ...rest] = keys;
  if (key !== undefined) copy[key] = copiedAlong(copy[key], rest);
  return copy as T;
}

const isQuantity = (x: unknown): boolean =>
  typeof x === 'number' || (typeof x === 'object' && x !== null && typeof (x as { value?: unknown }).value === 'number');
