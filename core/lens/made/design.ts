import type { Medium } from '../../glass/medium.ts';
import type { Job } from './job.ts';
import { BUILDS, type MadeKind } from './kinds.ts';
import { meritFor } from './merit.ts';
import { type Interval, least } from './minimise.ts';
import { type ThinSurface, thinSurfaces } from './thin.ts';
import { achromatised, backFocus, closed, type Workpiece, workpiece } from './workpiece.ts';
import { type Limits, steepestCurvature } from './workshop.ts';

/** What a lens has to be and do. */
export interface Task {
  readonly focalLengthMm: number;
  readonly limits: Limits;
  readonly job: Job;
}

/**
 * A lens to be bent: `shape` forms the workpiece for bendings in parts of the lens's power, keeping focal
 * length and colour, and says whether it can be made; `blur` is what that does to the job's pictures, mm²,
 * Infinity where it cannot.
 */
export interface Bending {
  readonly work: Workpiece;
  /** Where bendings can be that can be made. */
  readonly box: readonly Interval[];
  shape(bendings: readonly number[]): boolean;
  blur(bendings: readonly number[]): number;
}

/** @param glasses in the order in which the light of the job's collimated side meets them */
export function bending(kind: MadeKind, glasses: readonly Medium[], task: Task): Bending {
  const { focalLengthMm, limits, job } = task;
  const { between } = BUILDS[kind];
  const work = workpiece(glasses.flatMap((glass, i) => (i === 0 ? [glass] : [...between, glass])));
  const thin = thinSurfaces(glasses, between.length === 0);
  const merit = meritFor(job);
  const shape = (bendings: readonly number[]): boolean => {
    for (const [k, { bending, offset }] of thin.entries()) {
      work.d.curvature[k] = ((bendings[bending] as number) + offset) / focalLengthMm;
    }
    return glasses.length > 1 ? achromatised(work, focalLengthMm, limits) : closed(work, focalLengthMm, limits);
  };
  return {
    work,
    box: boxOf(thin, task),
    shape,
    blur: (bendings) => (shape(bendings) ? merit.meanSquare(work.d, backFocus(work.d)) : Number.POSITIVE_INFINITY),
  };
}

/** By how much thick surfaces can be flatter than thin ones. */
const THICK = 1.15;

/**
 * The bendings that are worth a look: what is not too steep; and not far beyond what a lens of this power
 * asks for or, where it is weak, what makes it hollow toward the stop, whose distance is then what counts.
 */
function boxOf(thin: readonly ThinSurface[], { focalLengthMm, limits, job }: Task): Interval[] {
  const far = Math.max(5, (0.4 * focalLengthMm) / Math.min(...job.stopsMm));
  const box: [number, number][] = [];
  for (const [k, { bending, offset }] of thin.entries()) {
    const steep = THICK * focalLengthMm * steepestCurvature(k === 0 || k === thin.length - 1, limits);
    const [low, high] = box[bending] ?? [-far, far];
    box[bending] = [Math.max(low, -steep - offset), Math.min(high, steep - offset)];
  }
  return box;
}

/** Looks along each bending, by how many there are. */
const LOOKS = [0, 25, 13];

/** The bendings that do the job best; undefined where none can be made, or the job would be done better by steeper surfaces yet. */
export function bestBending(kind: MadeKind, glasses: readonly Medium[], task: Task): (Bending & { at: readonly number[] }) | undefined {
  const bent = bending(kind, glasses, task);
  if (bent.box.some(([low, high]) => !(low < high))) return undefined;
  const best = least(bent.blur, bent.box, LOOKS[bent.box.length] as number);
  if (!best) return undefined;
  bent.shape(best.at);
  return { ...bent, at: best.at };
}
