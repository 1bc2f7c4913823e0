import { clearWorkingDistanceMm } from '../../pairing/bench.ts';
import type { Worked } from '../../pairing/evaluate.ts';
import { objectFieldDiagonalMm } from '../../pairing/first-order.ts';
import { subjectDepth } from '../../pairing/leaves.ts';
import { numberAt } from '../at.ts';
import { foot, top } from './diffuser.ts';
import { noseOverBack } from './nose.ts';
import { middleSlope, noseEnd, noseWhole, sineOfCone } from './room.ts';
import { diffuserHeight, diffuserThickness, noseTaper } from './settings.ts';

/** What stands over the subject, as seen from the side with the subject's back in focus; all mm, widths whole. */
export interface SideView {
  /** Free to the plane in focus, and the nose's height over the plane of the subject's back. */
  readonly freeMm: number;
  readonly noseOverBackMm: number;
  readonly noseMm: number;
  readonly noseEndMm: number;
  readonly taperMm: number;
  readonly fieldMm: number;
  /** 0 where it is not known. */
  readonly depthMm: number;
  /** Slopes of the steepest light to the middle, and of the edge of the objective's own cone from the axis. */
  readonly lightSlope: number;
  readonly coneSlope: number;
  /** Whether the relay's rim, not the nose, is in the way. */
  readonly byRelay: boolean;
  /** Inner half-widths. */
  readonly diffuser?: { readonly foot: number; readonly top: number; readonly height: number; readonly wall: number };
}

/** Undefined where the free distance or the field is not known. */
export function sideViewOf(light: Pick<Worked<string>, 'graph' | 'sheet'>): SideView | undefined {
  const at = (node: Parameters<typeof numberAt>[1]): number | undefined => numberAt(light, node);
  const [free, over, slope, field, sine] = [clearWorkingDistanceMm, noseOverBack, middleSlope, objectFieldDiagonalMm, sineOfCone].map(at);
  const [nose, end, taper] = [noseWhole, noseEnd, noseTaper.leaf].map(at);
  if (free === undefined || over === undefined || slope === undefined || field === undefined || sine === undefined) return undefined;
  if (nose === undefined || end === undefined || taper === undefined) return undefined;
  const [b, t, height, wall] = [foot, top, diffuserHeight.leaf, diffuserThickness.leaf].map(at);
  const known = b !== undefined && t !== undefined && height !== undefined && wall !== undefined;
  return {
    freeMm: free,
    noseOverBackMm: over,
    noseMm: nose,
    noseEndMm: end,
    taperMm: taper,
    fieldMm: field,
    depthMm: at(subjectDepth) ?? 0,
    lightSlope: slope,
    coneSlope: sine / Math.sqrt(1 - sine * sine),
    byRelay: slope < Math.min(free / (end / 2), (free + taper) / (nose / 2)) * (1 - 1e-12),
    ...(known ? { diffuser: { foot: b, top: t, height, wall } } : {}),
  };
}
