import { AIR, type Medium } from '../../glass/medium.ts';
import { sag } from '../../trace/surface.ts';

/** What a shop asks of a lens, mm. */
export interface Limits {
  /** Half the diameter to which the glass is ground: a little beyond what has to be clear. */
  readonly blankRadiusMm: number;
  /** No piece of glass is thinner than this in the middle, */
  readonly centreMm: number;
  /** nor than this at its rim. */
  readonly edgeMm: number;
  /** Two pieces of glass come no nearer to each other than this, in the middle or at their rims. */
  readonly airMm: number;
  /** To how much of its radius a surface reaches at the rim: one of the lens's two outer ones, and one inside. */
  readonly steepestOutside: number;
  readonly steepestInside: number;
}

/**
 * For glass 2 mm wider than its clear diameter: edges of 3 % of the diameter and 1.5 mm at the least,
 * middles of an eighteenth and 2 mm at the least, half a millimetre of air; outer surfaces that
 * reach to half of their radius, so that the lens stays in its ring, inner ones to 0.8 of it. Common
 * practice of optical shops, from memory.
 */
export const workshopLimits = (clearDiameterMm: number): Limits => ({
  blankRadiusMm: clearDiameterMm / 2 + 1,
  centreMm: Math.max(2, clearDiameterMm / 18),
  edgeMm: Math.max(1.5, 0.03 * clearDiameterMm),
  airMm: 0.5,
  steepestOutside: 0.5,
  steepestInside: 0.8,
});

/** From one surface to the next at the height of the blank's rim, mm; curvatures in 1/mm. */
export const atRim = (thicknessMm: number, before: number, after: number, { blankRadiusMm }: Limits): number =>
  thicknessMm + sag(1 / after, blankRadiusMm) - sag(1 / before, blankRadiusMm);

/**
 * The least thickness that a shop makes between two surfaces, mm. The difference of two spheres' sags
 * rises or falls all the way out, so that middle and rim are the places to look at.
 */
export function leastThickness(medium: Medium, before: number, after: number, limits: Limits): number {
  const [centre, rim] = medium === AIR ? [limits.airMm, limits.airMm] : [limits.centreMm, limits.edgeMm];
  return Math.max(centre, rim - atRim(0, before, after, limits));
}

/** The greatest curvature of a surface, 1/mm. */
export const steepestCurvature = (outside: boolean, { blankRadiusMm, steepestOutside, steepestInside }: Limits): number =>
  (outside ? steepestOutside : steepestInside) / blankRadiusMm;
