import type { SharpFocus } from '../pairing/schema.ts';
import type { SpacingPoint } from './spacing.ts';

/** The best of a lens one way round over the infinity spaces looked at. */
export interface BestPlace {
  readonly point: SpacingPoint;
  /** The worst contrast over the picture there, in one frame or in a stack. */
  readonly contrast: number;
  /** The infinity spaces about it whose contrast is no more than a tenth less, mm. */
  readonly withinMm: readonly [least: number, greatest: number];
}

/** Contrast this much lower than the best still counts as good. */
export const GOOD = 0.9;

export const contrastOf = (point: SpacingPoint, focus: SharpFocus): number => (focus === 'stack' ? point.stack : point.oneFrame);
export const blurAt = (point: SpacingPoint, focus: SharpFocus): number | undefined =>
  focus === 'stack' ? point.stackBlurUm : point.oneFrameBlurUm;

/**
 * Under this much contrast everywhere nothing of the detail is left, and what little there is comes and
 * goes with the ripples of a blurred pattern: then the least blur is the best.
 */
const NOTHING_LEFT = 0.2;

/** What places are ranked by: more is better. */
export function worthOf(points: readonly SpacingPoint[], focus: SharpFocus): (point: SpacingPoint) => number {
  if (points.some((p) => contrastOf(p, focus) >= NOTHING_LEFT)) return (p) => contrastOf(p, focus);
  return (p) => 1 / (blurAt(p, focus) ?? Number.POSITIVE_INFINITY);
}

/**
 * @param points by growing infinity space, at least one
 * @param worth what they are ranked by, never negative
 */
export function bestPlace(points: readonly SpacingPoint[], focus: SharpFocus, worth = worthOf(points, focus)): BestPlace {
  const worths = points.map(worth);
  const best = worths.indexOf(Math.max(...worths));
  const margin = (i: number): number => (worths[i] as number) - GOOD * (worths[best] as number);
  const space = (i: number): number => (points[i] as SpacingPoint).infinitySpaceMm;
  /** Where it has fallen by a tenth, between two points by a straight line, or the last place looked at. */
  const end = (towards: 1 | -1): number => {
    let i = best;
    while (i + towards in worths && margin(i + towards) >= 0) i += towards;
    const beyond = i + towards;
    return beyond in worths ? space(i) + (margin(i) / (margin(i) - margin(beyond))) * (space(beyond) - space(i)) : space(i);
  };
  const point = points[best] as SpacingPoint;
  return { point, contrast: contrastOf(point, focus), withinMm: [end(-1), end(1)] };
}
