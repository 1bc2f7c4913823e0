import { type HeadlineId, movedMost } from './assumptions.ts';
import type { Evaluation } from './evaluate.ts';
import { figureById, GRAPH, TOLD } from './registry.ts';
import { moved } from './spread.ts';

/** One end of what an input may be, and the figure there; undefined where there is none. */
export interface SwingEnd {
  readonly input: number;
  readonly figure: number | undefined;
}

/** What one input alone does to the headline figure that it moves most; in the figure's own unit. */
export interface Swing {
  readonly figure: HeadlineId;
  /** At the least and the greatest that the input may be. */
  readonly ends: readonly [SwingEnd, SwingEnd];
  /** The least and the greatest on the way, ends included; Infinity where the figure ceases to be. */
  readonly least: number;
  readonly greatest: number;
}

/** Below this, relative to the figure or as a share, a move is rounding. */
const MOVES = 1e-9;

/** How the answer hangs on the input at `path`; undefined where it moves no headline figure, or has no interval. */
export function swingOf(evaluation: Evaluation, path: string): Swing | undefined {
  const move = evaluation.spread.moves.find((m) => m.input.path === path);
  if (!move) return undefined;
  const most = movedMost(evaluation, move)[0];
  if (!most || most.by <= MOVES) return undefined;
  const j = TOLD.findIndex((f) => f.id === most.id);
  const place = GRAPH.place.get(figureById(most.id)) as number;
  const at = moved(GRAPH, evaluation.sheet, move.input);
  const end = (input: number): SwingEnd => {
    const figure = at(input)[place];
    return { input, figure: typeof figure === 'number' && Number.isFinite(figure) ? figure : undefined };
  };
  const here = evaluation.sheet[place] as number;
  return {
    figure: most.id,
    ends: [end(move.input.least), end(move.input.greatest)],
    least: here - (move.down[j] as number),
    greatest: here + (move.up[j] as number),
  };
}
