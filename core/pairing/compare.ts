import type { Answer } from './answer.ts';
import { differing } from './difference.ts';
import { type Evaluation, evaluate } from './evaluate.ts';
import type { Glassworks } from './glassworks.ts';
import { FIGURE_IDS, type FigureId } from './registry.ts';
import { type Report, reportOf } from './report.ts';
import type { Pairing } from './schema.ts';

export const MOST_ABREAST = 12;

/** `figures` hold pairing `of` less pairing `from`, by their places in the list that was sent. */
export interface Difference {
  from: number;
  of: number;
  figures: Record<FigureId, Answer>;
}

export interface Comparison {
  reports: Report[];
  differences: Difference[];
}

/**
 * Pairings side by side, and each less the first (`difference.ts`).
 * @throws PairingError
 */
export function compare(pairings: readonly Pairing[], works?: Glassworks): Comparison {
  const evaluations = pairings.map((pairing) => evaluate(pairing, works));
  const first = evaluations[0] as Evaluation;
  const differ = differing(FIGURE_IDS);
  return {
    reports: evaluations.map(reportOf),
    differences: evaluations.slice(1).map((other, i) => ({ from: 0, of: i + 1, figures: differ(first, other) })),
  };
}
