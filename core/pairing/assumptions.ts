import type { Evaluation } from './evaluate.ts';
import { TOLD } from './registry.ts';
import type { Spread } from './spread.ts';

/** A guess that the answer rests on: `matters` is the most it moves a headline figure, 0 to 1. */
export interface Assumption {
  path: string;
  value: number;
  plusMinus: number;
  why: string;
  matters: number;
}

/** Shares count as they are, lengths and ratios relative to their value. */
const HEADLINE = {
  coveredShare: 'share',
  cornerIllumination: 'share',
  systemMagnification: 'ratio',
  systemNa: 'ratio',
  shortestCoveringFocalLengthMm: 'ratio',
} as const;
export type HeadlineId = keyof typeof HEADLINE;
const PLACES = (Object.keys(HEADLINE) as HeadlineId[]).map((id) => [id, TOLD.findIndex((f) => f.id === id)] as const);

const SIGNIFICANT = 1e-9;

/** How much one input alone moves each headline figure; the first is moved most. */
export const movedMost = ({ answers }: Pick<Evaluation, 'answers'>, move: Spread['moves'][number]): { id: HeadlineId; by: number }[] =>
  PLACES.map(([id, j]) => {
    const swing = Math.max(move.up[j] as number, move.down[j] as number);
    const a = answers[id];
    if (a.state !== 'known') return { id, by: 0 };
    return { id, by: HEADLINE[id] === 'share' ? swing : a.value === 0 ? 0 : swing / Math.abs(a.value) };
  }).sort((a, b) => b.by - a.by);

const matters = (evaluation: Pick<Evaluation, 'answers'>, move: Spread['moves'][number]): number =>
  Math.min(1, movedMost(evaluation, move)[0]?.by ?? 0);

const movesAny = ({ up, down }: Spread['moves'][number]): boolean =>
  up.some((by) => by > SIGNIFICANT) || down.some((by) => by > SIGNIFICANT);

/** The guesses that move any figure at all, the one that matters most first; one without an interval comes last. */
export function assumptionsOf(evaluation: Evaluation): Assumption[] {
  return evaluation.inputs
    .flatMap((input): Assumption[] => {
      if (input.guess === undefined) return [];
      const { path, value, plusMinus, guess: why } = input;
      if (plusMinus === 0) return [{ path, value, plusMinus, why, matters: 0 }];
      const move = evaluation.spread.moves.find((m) => m.input === input);
      if (!move || !movesAny(move)) return [];
      return [{ path, value, plusMinus, why, matters: matters(evaluation, move) }];
    })
    .sort((a, b) => b.matters - a.matters || (a.path < b.path ? -1 : 1));
}
