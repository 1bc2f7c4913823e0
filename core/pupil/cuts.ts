import { clearingDiameter } from './clear.ts';
import { onsetOf, onsetSlope, relativeIllumination } from './illumination.ts';
import { clearingSpans } from './spaces.ts';
import { type Rig, type SeenStops, scaleOf, seenStops } from './stops.ts';

/** What one stop does to the corner, and the single change that would clear it. */
export interface Cut {
  readonly stop: string;
  readonly path: string;
  /** Radius on the sensor from which this stop dims: alone against the axial beam, or, where it limits that itself, against the first other. */
  readonly onsetRadiusMm: number;
  /** Share of the corner's loss that comes back if this stop alone were removed, 0 to 1. */
  readonly shareOfCornerLoss: number;
  /** Either change alone clears the corner wholly. Both absent: no single change of this stop does. */
  readonly clearsAt: { readonly diameterMm?: number; readonly infinitySpaceMm?: number };
}

/**
 * The stops that touch the beam between the axis and the corner at `cornerMm`, the one that costs the
 * most first. A ring that limits the axis dims the corner together with what it parts from, most often
 * the objective's own pupil: both are told, and the pupil, which nobody can change, comes after a stop
 * that gives back half as much.
 */
export function cuts(rig: Rig, seen: SeenStops, cornerMm: number): Cut[] {
  const F = scaleOf(rig);
  const t = cornerMm / F;
  const light = relativeIllumination(seen, t);
  if (light >= 1) return [];
  const space = nearestClearSpace(rig, cornerMm);
  const found = rig.stops.flatMap((stop, i): (Cut & { weight: number })[] => {
    const onset = partIn(seen, i, stop.place === 'pupil');
    if (onset >= t) return [];
    const without = seenStops({ ...rig, stops: rig.stops.filter((_, j) => j !== i) });
    // Without a stop that limits the axis more may be lost in proportion than with it: nothing comes back then.
    const share = Math.max(0, (relativeIllumination(without, t) - light) / (1 - light));
    const diameterMm = stop.place === 'pupil' ? undefined : clearingDiameter(rig, i, cornerMm);
    return [
      {
        stop: stop.label,
        path: stop.path,
        onsetRadiusMm: onset * F,
        shareOfCornerLoss: share,
        clearsAt: { ...(diameterMm === undefined ? {} : { diameterMm }), ...(space === undefined ? {} : { infinitySpaceMm: space }) },
        weight: stop.place === 'pupil' ? share / 2 : share,
      },
    ];
  });
  return found.sort((a, b) => b.weight - a.weight || a.onsetRadiusMm - b.onsetRadiusMm).map(({ weight: _, ...cut }) => cut);
}

/** The slope from which stop `i` has a part in the loss; Infinity for a pupil that limits, the beam itself. */
function partIn(seen: SeenStops, i: number, pupil: boolean): number {
  const disc = seen.stopOf.indexOf(i);
  if (disc < 0) return seen.fieldStop === i ? seen.fieldSlope : Number.POSITIVE_INFINITY;
  if (disc !== seen.limiting) return onsetOf(seen, disc);
  return pupil ? Number.POSITIVE_INFINITY : onsetSlope(seen);
}

/** The nearest infinity space that clears the corner with every ring still between shoulder and relay. */
function nearestClearSpace(rig: Rig, cornerMm: number): number | undefined {
  const here = rig.infinitySpaceMm;
  const nearest = clearingSpans(rig, cornerMm).map(([least, greatest]) => Math.min(greatest, Math.max(least, here)));
  return nearest.toSorted((a, b) => Math.abs(a - here) - Math.abs(b - here))[0];
}
