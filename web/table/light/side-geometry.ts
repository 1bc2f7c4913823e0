import type { SideView } from '../../../core/table.ts';

/** The side view in px: the axis upright in the middle, the plane of the subject's back below. */
export interface Side {
  readonly width: number;
  readonly height: number;
  readonly axis: number;
  readonly stage: number;
  readonly k: number;
  /** The nose from its end up, cut off where the drawing ends; one side of it. */
  readonly nose: readonly (readonly [number, number])[];
  /** How far the rays of the room for light go, mm. */
  readonly reach: number;
  /** Angle above the stage up to which light comes in, degrees. */
  readonly up: number;
}

const PAD = { top: 14, foot: 74, side: 14 };
const MOST = 430;

/** @param width of the page at this place, px */
export function sideOf(view: SideView, width: number): Side {
  const { noseOverBackMm: over, noseMm, noseEndMm, taperMm, diffuser, lightSlope } = view;
  const half = Math.max(0.75 * Math.max(noseMm, noseEndMm), 1.2 * Math.max(diffuser?.foot ?? 0, diffuser?.top ?? 0), 0.55 * over);
  // As much of the nose as shows its taper and that it goes on.
  const above = over + taperMm + 0.22 * noseMm;
  const tall = Math.max(above, (diffuser?.height ?? 0) * 1.05);
  const k = Math.min((width - 2 * PAD.side) / (2 * half), (MOST - PAD.top - PAD.foot) / tall);
  const axis = Math.min(width, 2 * half * k + 2 * PAD.side) / 2;
  const stage = PAD.top + tall * k;
  const at = (x: number, z: number): readonly [number, number] => [x * k, stage - z * k];
  const end = taperMm > 0 ? noseEndMm : Math.max(noseEndMm, noseMm);
  const nose = [at(end / 2, over), ...(taperMm > 0 ? [at(noseMm / 2, over + taperMm)] : []), at(noseMm / 2, tall)];
  return {
    width: 2 * axis,
    height: stage + PAD.foot,
    axis,
    stage,
    k,
    nose,
    reach: Math.min(half, 1.15 * Math.hypot(over, noseEndMm / 2)),
    up: (Math.atan(lightSlope) * 180) / Math.PI,
  };
}
