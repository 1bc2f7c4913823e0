import { gaussLegendre } from '../../gauss.ts';
import { launch } from '../../trace/beam.ts';
import type { Parabola } from '../../trace/focus.ts';
import { ringsAndSpokes } from '../../trace/points.ts';
import type { Prescription } from '../../trace/prescription.ts';
import { rays, THROUGH, trace } from '../../trace/rays.ts';
import { spot } from '../../trace/spot.ts';
import type { Job } from './job.ts';

/** Rings and spokes of a beam, fields of a picture: a mean square blur of the third order is exact. */
const RINGS = 2;
const SPOKES = 6;
const FIELDS = 3;

/** How a lens does its job, in one colour. Planes are from the last vertex, mm; blurs about their centroids. */
export interface Merit {
  /** The mean square blur of a beam that comes through whole, mm². */
  spotOf(lens: Prescription, stopMm: number, slope: number, nearMm: number): Parabola | undefined;
  /** Its mean over the area of a round picture that reaches the corner. */
  pictureOf(lens: Prescription, stopMm: number, nearMm: number): Parabola | undefined;
  /** The mean over the pictures, each at its best focus on one flat plane; Infinity where a beam does not come through whole. */
  meanSquare(lens: Prescription, nearMm: number): number;
}

export function meritFor({ stopsMm, stopRadiusMm, cornerSlope }: Job): Merit {
  const points = ringsAndSpokes(RINGS, SPOKES);
  const bundle = rays(points.count);
  // Gauss's rule over the square of the field is a rule over the picture's area.
  const field = gaussLegendre(FIELDS, 0, 1);
  const merit: Merit = {
    spotOf(lens, stopMm, slope, nearMm) {
      trace(lens, launch(bundle, points, { pupilRadiusMm: stopRadiusMm, pupilDistanceMm: stopMm, slope }));
      return bundle.status.every((status) => status === THROUGH) ? spot(bundle, points.share, nearMm).square : undefined;
    },
    pictureOf(lens, stopMm, nearMm) {
      const spots: Parabola[] = [];
      for (const square of field.nodes) {
        const found = merit.spotOf(lens, stopMm, cornerSlope * Math.sqrt(square), nearMm);
        if (!found) return undefined;
        spots.push(found);
      }
      return meanOf(spots, field.weights);
    },
    meanSquare(lens, nearMm) {
      let sum = 0;
      for (const stopMm of stopsMm) sum += merit.pictureOf(lens, stopMm, nearMm)?.least ?? Number.POSITIVE_INFINITY;
      return sum / stopsMm.length;
    },
  };
  return merit;
}

/** Parabolas that open upward have a mean that does, too. */
function meanOf(parts: readonly Parabola[], weights: Float64Array): Parabola {
  let rate = 0;
  let moment = 0;
  for (const [i, part] of parts.entries()) {
    rate += (weights[i] as number) * part.rate;
    moment += (weights[i] as number) * part.rate * part.at;
  }
  const at = moment / rate;
  const least = parts.reduce((sum, part, i) => sum + (weights[i] as number) * (part.least + part.rate * (part.at - at) ** 2), 0);
  return { at, least, rate };
}
