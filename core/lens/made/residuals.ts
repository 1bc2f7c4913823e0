import { AIR } from '../../glass/medium.ts';
import { valueAt } from '../../trace/focus.ts';
import { UM_PER_MM } from '../../units.ts';
import type { Task } from './design.ts';
import { meritFor } from './merit.ts';
import { axialColour, backFocus, type Workpiece } from './workpiece.ts';
import { atRim } from './workshop.ts';

/** What is left of a made lens's faults at its job, and how thick its glass is. Blurs are rms radii about the centroid, for d. */
export interface Residuals {
  /** Back focus in blue (F) less that in red (C), mm: negative where blue comes to a focus first, 0 for an achromat. */
  readonly axialColourMm: number;
  /** Back focus in yellow (d) less the mean of blue's and red's, mm. */
  readonly secondaryColourMm: number;
  /** On the axis at its best focus, with the job's stop. */
  readonly sphericalRmsUm: number;
  /** Over the area of the pictures, each on one flat plane: what the lens was bent to make least. */
  readonly pictureRmsUm: number;
  /** The largest on those planes, in the middle, at the corner and between. */
  readonly worstRmsUm: number;
  /** Of each piece of glass, in the middle and at the rim of its blank, mm. */
  readonly centreThicknessesMm: readonly number[];
  readonly edgeThicknessesMm: readonly number[];
}

/** Parts of the way to the corner. */
const PLACES = [0, 0.25, 0.5, 0.75, 1];

/** Undefined where a beam of the job does not come through whole. */
export function residualsOf(work: Workpiece, { job, limits }: Task): Residuals | undefined {
  const merit = meritFor(job);
  const near = backFocus(work.d);
  const middle = merit.spotOf(work.d, job.stopsMm[0] as number, 0, near);
  const squares: number[] = [];
  for (const stopMm of job.stopsMm) {
    const picture = merit.pictureOf(work.d, stopMm, near);
    for (const part of PLACES) {
      const found = merit.spotOf(work.d, stopMm, part * job.cornerSlope, near);
      if (!picture || !found) return undefined;
      squares.push(valueAt(found, picture.at));
    }
  }
  if (!middle) return undefined;
  const glass = [...work.media.keys()].filter((i) => work.media[i] !== AIR);
  const { curvature, gap } = work.d;
  const thickness = (i: number): number => gap[i + 1] as number;
  return {
    axialColourMm: axialColour(work),
    secondaryColourMm: near - (backFocus(work.F) + backFocus(work.C)) / 2,
    sphericalRmsUm: UM_PER_MM * Math.sqrt(middle.least),
    pictureRmsUm: UM_PER_MM * Math.sqrt(merit.meanSquare(work.d, near)),
    worstRmsUm: UM_PER_MM * Math.sqrt(Math.max(...squares)),
    centreThicknessesMm: glass.map(thickness),
    edgeThicknessesMm: glass.map((i) => atRim(thickness(i), curvature[i] as number, curvature[i + 1] as number, limits)),
  };
}
