import type { Answer } from '../pairing/answer.ts';
import { CIRCLES, type Circle } from '../pairing/image-circles.ts';
import type { FigureId } from '../pairing/registry.ts';
import { CIRCLE_FIGURE } from '../pairing/verdict.ts';

/**
 * The figures that take the smallest of the circles that are known: while one is not, they are no more than an
 * upper bound, and not knowing would win.
 */
export const COVERING: ReadonlySet<FigureId> = new Set(['goodFieldMm', 'coveredShare', 'recordedDetailMegapixels']);

/**
 * The circles without which such a figure neither ranks nor stands on a frontier. How sharp a relay is off the axis is
 * known of few: it is told where it is not, and nothing is sure then.
 */
export const NEEDED = [CIRCLE_FIGURE.corrected, CIRCLE_FIGURE.lit] as const;

/** The circles that are not known. */
export const unknownCircles = (answers: Readonly<Partial<Record<FigureId, Answer>>>): Circle[] =>
  CIRCLES.filter((circle) => !['known', 'unlimited'].includes(answers[CIRCLE_FIGURE[circle]]?.state ?? ''));

/** A figure as it may be held against another pairing's: a bound for want of the field or of the light is not known. */
export function rankable(answers: Readonly<Partial<Record<FigureId, Answer>>>, id: FigureId): Answer {
  const answer = answers[id] as Answer;
  if (!COVERING.has(id)) return answer;
  const missing = NEEDED.flatMap((circle) => {
    const needed = answers[circle];
    return needed?.state === 'unknown' ? needed.missing : [];
  });
  return missing.length > 0 ? { state: 'unknown', unit: answer.unit, missing: [...new Set(missing)] } : answer;
}
