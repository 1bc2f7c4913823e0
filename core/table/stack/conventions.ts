import { DEPTH_CONVENTIONS, type DepthConvention, waveTerm } from '../../diffraction/depth.ts';
import { systemNa } from '../../pairing/aperture.ts';
import { depthOfFieldUm } from '../../pairing/depth-of-field.ts';
import type { Worked } from '../../pairing/evaluate.ts';
import { framesOf, incrementsIn, stepOf } from '../../pairing/frames.ts';
import { depthConvention, subjectDepth, subjectIndex, wavelength } from '../../pairing/leaves.ts';
import { MM_PER_NM, UM_PER_MM } from '../../units.ts';
import { numberAt } from '../at.ts';
import { MOST_FRAMES } from './counts.ts';
import { overlap, railError } from './settings.ts';
import { focusPerRail, incrementThere } from './steps.ts';

/** What is added up to the depth of one frame, by each convention. */
export const CONVENTION_WORDS: Readonly<Record<DepthConvention, string>> = {
  'wave-and-pixel': 'the wave term and the blur of a pixel',
  'half-wave-term': 'half the wave term and the blur of a pixel',
  'double-wave-term': 'twice the wave term and the blur of a pixel',
  'high-aperture': 'the exact wave term of high apertures and the blur of a pixel',
};

export interface ByConvention {
  convention: DepthConvention;
  chosen: boolean;
  depthUm: number;
  /** Left out where the subject's depth is not known, or no step leaves no gap, or they are beyond counting. */
  frames?: number;
}

/** The depth of one frame and the frames, by every convention; empty where the depth is not known. */
export function byConvention(evaluation: Pick<Worked<string>, 'graph' | 'sheet'>): ByConvention[] {
  const at = (node: Parameters<typeof numberAt>[1]): number | undefined => numberAt(evaluation, node);
  const depth = at(depthOfFieldUm);
  if (depth === undefined) return [];
  // The depth of a frame rests on these.
  const [NA, n, nm] = [systemNa, subjectIndex, wavelength].map(at) as [number, number, number];
  const wave = (convention: DepthConvention): number => waveTerm(convention, nm * MM_PER_NM * UM_PER_MM, NA, n);
  const now = evaluation.sheet[evaluation.graph.place.get(depthConvention) as number] as DepthConvention;
  const [subject, finest] = [subjectDepth, incrementThere].map(at);
  const [o, error, q] = [overlap.leaf, railError.leaf, focusPerRail].map(at) as [number, number, number];
  return DEPTH_CONVENTIONS.map((convention) => {
    const chosen = convention === now;
    const depthUm = chosen ? depth : depth - wave(now) + wave(convention);
    if (subject === undefined) return { convention, chosen, depthUm };
    const longest = stepOf(depthUm, o, q * error);
    const step = finest === undefined ? longest : q * finest * incrementsIn(longest, q * finest);
    const frames = UM_PER_MM * subject <= depthUm ? 1 : step > 0 ? framesOf(UM_PER_MM * subject, depthUm, step) : Number.POSITIVE_INFINITY;
    return { convention, chosen, depthUm, ...(frames <= MOST_FRAMES ? { frames } : {}) };
  });
}
