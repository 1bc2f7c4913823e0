import { curvatureFrames, framesInAll, stackFrames, stackFramesUnwatched } from './counts.ts';
import { focusTravelMm, railTravelMm, scaleChange, scaleChangePixels, stackTimeS } from './course.ts';
import { focusPerRail, frameStepUm, railErrorForgivenUm, railStepUm } from './steps.ts';

/** In the order in which they are read. */
export const FIGURES = [
  stackFrames,
  curvatureFrames,
  framesInAll,
  stackFramesUnwatched,
  frameStepUm,
  railStepUm,
  focusPerRail,
  railErrorForgivenUm,
  railTravelMm,
  focusTravelMm,
  stackTimeS,
  scaleChange,
  scaleChangePixels,
] as const;
