import { figure, Gap, openFigure } from '../../figure.ts';
import { depthOfFieldUm } from '../../pairing/depth-of-field.ts';
import { framesOf } from '../../pairing/frames.ts';
import { subjectDepth } from '../../pairing/leaves.ts';
import { UM_PER_MM } from '../../units.ts';
import { curvature } from './curvature.ts';
import { railError } from './settings.ts';
import { focusPerRail, frameStepUm } from './steps.ts';

/** More frames than this are told as too many, not counted. */
export const MOST_FRAMES = 100_000;

const TOO_MANY = Gap.none(`more than ${MOST_FRAMES.toLocaleString('en')} frames, which no rail goes in one stack`);
const counted = (frames: number): number | Gap => (frames > MOST_FRAMES ? TOO_MANY : frames);

const COUNT = { unit: '1', bounds: [1, Number.POSITIVE_INFINITY], noneCountsAs: Number.POSITIVE_INFINITY } as const;
const whole = (d: string, T: string, s: string): string => `1 + max(0, ceil((${d} − ${T}) / ${s}))`;

export const stackFrames = openFigure({
  ...COUNT,
  id: 'stackFrames',
  symbol: 'n_s',
  words: 'frames from the front of the subject to its back, both ends set by what you see there',
  source: 'the first frame stands for a whole depth, each one more for a step',
  needs: [subjectDepth, depthOfFieldUm, frameStepUm],
  of: (d, T, s) => {
    if (typeof d !== 'number' || typeof T !== 'number') return Gap.join([d, T].filter((v) => v instanceof Gap));
    // One frame needs no step.
    if (UM_PER_MM * d <= T) return 1;
    return typeof s === 'number' ? counted(framesOf(UM_PER_MM * d, T, s)) : s;
  },
  as: (d, T, s) => (s ? whole(`1000 × ${d}`, T, s) : '1'),
});

export const stackFramesUnwatched = figure({
  ...COUNT,
  id: 'stackFramesUnwatched',
  symbol: 'n_u',
  words:
    "frames where the ends are set without a look at the picture: begun the rail's error before the front and ended as much behind the back",
  source: 'as above, with the error at both ends besides',
  needs: [subjectDepth, railError.leaf, focusPerRail, depthOfFieldUm, frameStepUm],
  of: (d, e, q, T, s) => counted(framesOf(UM_PER_MM * d + 2 * q * e, T, s)),
  as: (d, e, q, T, s) => whole(`1000 × ${d} + 2 × ${q} × ${e}`, T, s),
});

export const curvatureFrames = openFigure({
  id: 'curvatureFrames',
  unit: '1',
  symbol: 'n_c',
  words: "frames more for a curved field: the corners' focus lies before or behind the middle's, and the stack has to reach both",
  source: 'the same count for a subject deeper by the curvature',
  needs: [subjectDepth, curvature, depthOfFieldUm, frameStepUm, stackFrames],
  noneCountsAs: Number.POSITIVE_INFINITY,
  of: (d, c, T, s, n) => {
    if (typeof d !== 'number' || typeof c !== 'number' || typeof T !== 'number' || typeof n !== 'number')
      return Gap.join([d, c, T, n].filter((v) => v instanceof Gap));
    // One frame needs no step.
    if (UM_PER_MM * d + c <= T) return 0;
    if (typeof s !== 'number') return s;
    const frames = counted(framesOf(UM_PER_MM * d + c, T, s));
    return typeof frames === 'number' ? frames - n : frames;
  },
  as: (d, c, T, s, n) => (s ? `${whole(`1000 × ${d} + ${c}`, T, s)} − ${n}` : '0'),
});

export const framesInAll = openFigure({
  ...COUNT,
  id: 'framesInAll',
  symbol: 'n_a',
  words: 'frames to take; those for a curved field are among them where it is known',
  source: 'the sum',
  needs: [stackFrames, curvatureFrames],
  of: (n, more) => (typeof n !== 'number' ? n : typeof more === 'number' ? n + more : more.state === 'none' ? more : n),
  as: (n, more) => (more ? `${n} + ${more}` : n),
});
