import type { SideView } from '../../../core/table.ts';

type Point = readonly [number, number];

/**
 * The side view in px: the axis upright in the middle, the plane of the subject's back below. The front of the
 * subject is in focus: the light is counted to there, and below it the subject shades itself.
 */
export interface Side {
  readonly width: number;
  readonly height: number;
  readonly axis: number;
  readonly stage: number;
  /** The front of the subject. */
  readonly front: number;
  readonly k: number;
  /** The nose from its end up, cut off where the drawing ends; one side of it. */
  readonly nose: readonly Point[];
  /** Where the nose's end comes to with the back in focus. */
  readonly lowest: number;
  /** How far the room for light is hatched. */
  readonly reach: number;
  /** Where the steepest light is drawn from, beyond the edge that it passes. */
  readonly edge: Point;
  /** Angle above the stage up to which light comes in, degrees. */
  readonly up: number;
}

const PAD = { top: 14, foot: 88, side: 30 };
const MOST = 450;
/** Beyond the edge that ends it the steepest light is drawn a little on. */
const BEYOND = 1.12;

/** @param width of the page at this place, px */
export function sideOf(view: SideView, width: number): Side {
  const { freeMm, depthMm, noseOverBackMm, noseMm, noseEndMm, taperMm, diffuser, lightSlope } = view;
  const over = depthMm + freeMm;
  const half = Math.max(0.75 * Math.max(noseMm, noseEndMm), 1.2 * Math.max(diffuser?.foot ?? 0, diffuser?.top ?? 0), 0.55 * over);
  // As much of the nose as shows its taper and that it goes on.
  const above = over + taperMm + 0.22 * noseMm;
  const tall = Math.max(above, (diffuser?.height ?? 0) * 1.05);
  const k = Math.min((width - 2 * PAD.side) / (2 * half), (MOST - PAD.top - PAD.foot) / tall);
  const axis = Math.min(width, 2 * half * k + 2 * PAD.side) / 2;
  const stage = PAD.top + tall * k;
  const at = (x: number, z: number): Point => [x * k, stage - z * k];
  const end = taperMm > 0 ? noseEndMm : Math.max(noseEndMm, noseMm);
  const nose = [at(end / 2, over), ...(taperMm > 0 ? [at(noseMm / 2, over + taperMm)] : []), at(noseMm / 2, tall)];
  const far = Math.min(half, Math.min(tall - depthMm, BEYOND * (freeMm + taperMm)) / lightSlope);
  return {
    width: 2 * axis,
    height: stage + PAD.foot,
    axis,
    stage,
    front: stage - depthMm * k,
    k,
    nose,
    lowest: stage - noseOverBackMm * k,
    reach: k * Math.min(half, BEYOND * Math.hypot(freeMm, noseEndMm / 2)),
    edge: at(far, depthMm + far * lightSlope),
    up: (Math.atan(lightSlope) * 180) / Math.PI,
  };
}
