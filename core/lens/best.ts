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

/** @param points by growing infinity space, at least one */
export function bestPlace(points: readonly SpacingPoint[], focus: SharpFocus): BestPlace {
  const contrasts = points.map((p) => contrastOf(p, focus));
  const best = contrasts.indexOf(Math.max(...contrasts));
  const margin = (i: number): number => (contrasts[i] as number) - GOOD * (contrasts[best] as number);
  const space = (i: number): number => (points[i] as SpacingPoint).infinitySpaceMm;
  /** Where the contrast has fallen by a tenth, between two points by a straight line, or the last place looked at. */
  const end = (towards: 1 | -1): number => {
    let i = best;
    while (i + towards in contrasts && margin(i + towards) >= 0) i += towards;
    const beyond = i + towards;
    return beyond in contrasts ? space(i) + (margin(i) / (margin(i) - margin(beyond))) * (space(beyond) - space(i)) : space(i);
  };
  return { point: points[best] as SpacingPoint, contrast: contrasts[best] as number, withinMm: [end(-1), end(1)] };
}
