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
const GOOD = 0.9;

export const contrastOf = (point: SpacingPoint, focus: SharpFocus): number => (focus === 'stack' ? point.stack : point.oneFrame);
export const blurAt = (point: SpacingPoint, focus: SharpFocus): number | undefined =>
  focus === 'stack' ? point.stackBlurUm : point.oneFrameBlurUm;

/** @param points by growing infinity space, at least one */
export function bestPlace(points: readonly SpacingPoint[], focus: SharpFocus): BestPlace {
  const contrasts = points.map((p) => contrastOf(p, focus));
  const best = contrasts.indexOf(Math.max(...contrasts));
  const good = (i: number): boolean => (contrasts[i] ?? -1) >= GOOD * (contrasts[best] as number);
  let [from, to] = [best, best];
  while (good(from - 1)) from--;
  while (good(to + 1)) to++;
  const space = (i: number): number => (points[i] as SpacingPoint).infinitySpaceMm;
  return { point: points[best] as SpacingPoint, contrast: contrasts[best] as number, withinMm: [space(from), space(to)] };
}
