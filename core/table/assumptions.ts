import type { Assumption } from '../pairing/assumptions.ts';
import type { Worked } from '../pairing/evaluate.ts';

/** Moves below this share of a figure are rounding. */
const SIGNIFICANT = 1e-9;

/**
 * The guesses that move any of the figures worked out, the one that matters most first; `matters` is the most
 * that it moves one of them, as a share of it, 0 to 1.
 */
export function tableAssumptions({ inputs, spread, answers }: Worked<string>): Assumption[] {
  return inputs
    .flatMap((input): Assumption[] => {
      const move = spread.moves.find((m) => m.input === input);
      if (input.guess === undefined || !move) return [];
      const shares = spread.figures.map((figure, j) => {
        const a = answers[figure.id];
        const swing = Math.max(move.up[j] as number, move.down[j] as number);
        return a?.state === 'known' && a.value !== 0 ? swing / Math.abs(a.value) : swing > 0 ? 1 : 0;
      });
      const matters = Math.min(1, Math.max(0, ...shares));
      if (matters <= SIGNIFICANT) return [];
      return [{ path: input.path, value: input.value, plusMinus: input.plusMinus, why: input.guess, matters }];
    })
    .sort((a, b) => b.matters - a.matters || a.path.localeCompare(b.path));
}
