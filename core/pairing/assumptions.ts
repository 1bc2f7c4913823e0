import type { Answer } from './answer.ts';
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
const HEADLINES = (Object.keys(HEADLINE) as HeadlineId[]).map((id) => ({
  id,
  j: TOLD.findIndex((f) => f.id === id),
  counts: HEADLINE[id],
}));

const SIGNIFICANT = 1e-9;

/** How much one input alone moves each headline figure; the first is moved most. */
export const movedMost = ({ answers }: Pick<Evaluation, 'answers'>, move: Spread['moves'][number]): { id: HeadlineId; by: number }[] =>
  HEADLINES.map((headline) => ({ id: headline.id, by: movedBy(headline, answers[headline.id], move) })).sort((a, b) => b.by - a.by);

function movedBy({ j, counts }: (typeof HEADLINES)[number], a: Answer, { up, down }: Spread['moves'][number]): number {
  if (a.state !== 'known') return 0;
  const swing = Math.max(up[j] as number, down[j] as number);
  return counts === 'share' ? swing : a.value === 0 ? 0 : swing / Math.abs(a.value);
}

function matters({ answers }: Pick<Evaluation, 'answers'>, move: Spread['moves'][number]): number {
  let most = 0;
  for (const headline of HEADLINES) most = Math.max(most, movedBy(headline, answers[headline.id], move));
  return Math.min(1, most);
}

function movesAny({ up, down }: Spread['moves'][number]): boolean {
  const moves = (by: number): boolean => by > SIGNIFICANT;
  return up.some(moves) || down.some(moves);
}

/** The guesses that move any figure at all, the one that matters most first; one without an interval comes last. */
export function assumptionsOf(evaluation: Evaluation): Assumption[] {
  const found: Assumption[] = [];
  for (const input of evaluation.inputs) {
    const { path, value, plusMinus, guess } = input;
    if (guess === undefined) continue;
    const move = plusMinus === 0 ? undefined : evaluation.spread.moves.find((m) => m.input === input);
    if (plusMinus !== 0 && !(move && movesAny(move))) continue;
    found.push({ path, value, plusMinus, why: guess, matters: move ? matters(evaluation, move) : 0 });
  }
  return found.sort((a, b) => b.matters - a.matters || (a.path < b.path ? -1 : 1));
}
