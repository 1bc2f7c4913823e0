import { PairingError } from '../errors.ts';
import type { Figure, Node, Sheet } from '../figure.ts';
import type { Origin } from '../parts/quantity.ts';
import type { Rig, SeenStops } from '../pupil/stops.ts';
import { type Answer, answer } from './answer.ts';
import { rig, seen } from './aperture.ts';
import { contradictions } from './contradictions.ts';
import { type Input, inputsOf, MAPPING } from './inputs.ts';
import { type FigureId, GRAPH, type RadiusId, TOLD } from './registry.ts';
import type { Pairing } from './schema.ts';
import { moved, plain, type Spread, spreadOf } from './spread.ts';

/** A pairing worked out: every node's value, every figure with its low and high. */
export interface Evaluation {
  readonly pairing: Pairing;
  readonly inputs: readonly Input[];
  readonly sheet: Sheet;
  readonly spread: Spread;
  readonly answers: Readonly<Record<FigureId | RadiusId, Answer>>;
}

/** A node's raw value on an evaluation's sheet; a Gap where there is none. */
export const raw = (sheet: Sheet, node: Node): unknown => sheet[GRAPH.place.get(node) as number];

/**
 * Works a pairing out. The pairing has passed `pairingSchema`; one that contradicts itself is refused.
 * @throws PairingError with the contradictions
 */
export function evaluate(pairing: Pairing): Evaluation {
  const problems = contradictions(pairing);
  if (problems.length > 0) throw new PairingError(problems);
  const { values, list } = inputsOf(pairing);
  const sheet = GRAPH.fill(values);
  const spread = spreadOf(GRAPH, sheet, list, TOLD);
  const originOf = origins(sheet, list, spread);
  const answers = {} as Record<FigureId | RadiusId, Answer>;
  TOLD.forEach((figure, j) => {
    answers[figure.id] = answer(raw(sheet, figure), figure.unit, spread.low[j] as number, spread.high[j] as number, () =>
      originOf(figure, j),
    );
  });
  return { pairing, inputs: list, sheet, spread, answers };
}

/** The stops as they stand and as they are seen, or undefined where an opening is not known. */
export function stopsOf(sheet: Sheet): { rig: Rig; seen: SeenStops } | undefined {
  const stops = raw(sheet, seen);
  return stops && 'walk' in (stops as object) ? { rig: raw(sheet, rig) as Rig, seen: stops as SeenStops } : undefined;
}

/** Below this, relative to the figure, a move is rounding. */
const MOVES = 1e-9;
/** How far an input without an interval is moved to see whether a figure heeds it. */
const NUDGE = 1e-4;

/** The origin of a figure: that of the weakest input which really moves it. */
function origins(sheet: Sheet, inputs: readonly Input[], spread: Spread): (figure: Figure, j: number) => Origin {
  const real = inputs.filter((input) => input.path !== MAPPING);
  const someBareGuess = real.some((input) => input.origin === 'assumed' && input.plusMinus === 0);
  const someMeasured = real.some((input) => input.origin === 'measured');
  return (figure, j) => {
    const value = plain(figure, raw(sheet, figure));
    const heeded = (move: number): boolean => move > MOVES * Math.max(1e-12, Math.abs(value));
    const nudgedBy = (origin: Origin, bare: boolean): boolean =>
      real.some(
        (input) => input.origin === origin && (!bare || input.plusMinus === 0) && heeded(Math.abs(nudged(sheet, input, figure) - value)),
      );
    if (spread.moves.some((m) => m.input.origin === 'assumed' && (heeded(m.up[j] as number) || heeded(m.down[j] as number))))
      return 'assumed';
    if (someBareGuess && nudgedBy('assumed', true)) return 'assumed';
    return !someMeasured || nudgedBy('marked', false) ? 'marked' : 'measured';
  };
}

function nudged(sheet: Sheet, input: Input, figure: Figure): number {
  const step = NUDGE * Math.max(Math.abs(input.value), 1e-3);
  const x = input.value + step <= input.greatest || input.plusMinus === 0 ? input.value + step : input.value - step;
  return plain(figure, raw(moved(GRAPH, sheet, input)(x), figure));
}
