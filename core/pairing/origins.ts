import type { Figure } from '../figure.ts';
import type { Graph, Sheet } from '../graph.ts';
import type { Origin } from '../parts/quantity.ts';
import type { Input } from './input.ts';
import { mapping } from './leaves.ts';
import { moved, plain, type Spread } from './spread.ts';

/** Below this, relative to the figure, a move is rounding. */
const MOVES = 1e-9;
/** How far an input without an interval is moved to see whether a figure heeds it. */
const NUDGE = 1e-4;

/** The origin of each figure of a spread: that of the weakest input which really moves it. */
export function originsOf(graph: Graph, sheet: Sheet, inputs: readonly Input[], spread: Spread): (figure: number) => Origin {
  const real = inputs.filter((input) => input.leaf !== mapping && graph.place.has(input.leaf));
  const someMeasured = real.some((input) => input.origin === 'measured');
  return (j) => {
    const figure = spread.figures[j] as Figure;
    const place = graph.place.get(figure) as number;
    const value = plain(figure, sheet[place]);
    const heeded = (move: number): boolean => move > MOVES * Math.max(1e-12, Math.abs(value));
    const nudged = (input: Input): number => {
      const step = NUDGE * Math.max(Math.abs(input.value), 1e-3);
      const x = input.value + step <= input.greatest || input.plusMinus === 0 ? input.value + step : input.value - step;
      return plain(figure, moved(graph, sheet, input)(x)[place]);
    };
    const nudgedBy = (origin: Origin, bare: boolean): boolean =>
      real.some((input) => input.origin === origin && (!bare || input.plusMinus === 0) && heeded(Math.abs(nudged(input) - value)));
    if (spread.moves.some((m) => m.input.origin === 'assumed' && (heeded(m.up[j] as number) || heeded(m.down[j] as number))))
      return 'assumed';
    if (nudgedBy('assumed', true)) return 'assumed';
    return !someMeasured || nudgedBy('marked', false) ? 'marked' : 'measured';
  };
}
