import { clearingDiameter } from './clear.ts';
import { onsetOf, relativeIllumination } from './illumination.ts';
import { clearingSpans } from './spaces.ts';
import { type Rig, type SeenStops, scaleOf, seenStops } from './stops.ts';

/** What one stop does to the corner, and the single change that would clear it. */
export interface Cut {
  readonly stop: string;
  readonly path: string;
  /** Radius on the sensor from which this stop alone dims; Infinity for the one that limits the axis. */
  readonly onsetRadiusMm: number;
  /** Share of the corner's loss that comes back if this stop alone were removed, 0 to 1. */
  readonly shareOfCornerLoss: number;
  /** Either change alone clears the corner wholly. Both absent: no single change of this stop does. */
  readonly clearsAt: { readonly diameterMm?: number; readonly infinitySpaceMm?: number };
}

/**
 * The stops that touch the beam between the axis and the corner at `cornerMm`, the one that costs the
 * most first. The objective's own pupil stands among them when a narrower ring limits the axis.
 */
export function cuts(rig: Rig, seen: SeenStops, cornerMm: number): Cut[] {
  const F = scaleOf(rig);
  const t = cornerMm / F;
  const light = relativeIllumination(seen, t);
  if (light >= 1) return [];
  const space = nearestClearSpace(rig, cornerMm);
  const found = rig.stops.flatMap((stop, i): Cut[] => {
    const disc = seen.stopOf.indexOf(i);
    const onset = disc < 0 ? (seen.fieldStop === i ? seen.fieldSlope : Number.POSITIVE_INFINITY) : onsetOf(seen, disc);
    if (onset >= t) return [];
    const without = seenStops({ ...rig, stops: rig.stops.filter((_, j) => j !== i) });
    const back = without.radius.length === 0 ? 1 : relativeIllumination(without, t);
    const diameterMm = stop.place === 'pupil' ? undefined : clearingDiameter(rig, i, cornerMm);
    return [
      {
        stop: stop.label,
        path: stop.path,
        onsetRadiusMm: onset * F,
        shareOfCornerLoss: Math.min(1, Math.max(0, (back - light) / (1 - light))),
        clearsAt: { ...(diameterMm === undefined ? {} : { diameterMm }), ...(space === undefined ? {} : { infinitySpaceMm: space }) },
      },
    ];
  });
  return found.sort((a, b) => b.shareOfCornerLoss - a.shareOfCornerLoss || a.onsetRadiusMm - b.onsetRadiusMm);
}

/** The nearest infinity space that clears the corner with every ring still between shoulder and relay. */
function nearestClearSpace(rig: Rig, cornerMm: number): number | undefined {
  const here = rig.infinitySpaceMm;
  const nearest = clearingSpans(rig, cornerMm).map(([least, greatest]) => Math.min(greatest, Math.max(least, here)));
  return nearest.toSorted((a, b) => Math.abs(a - here) - Math.abs(b - here))[0];
}
