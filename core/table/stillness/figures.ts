import { cornerMoreExposureEv, equalFNumber, moreExposureEv, referenceWorkingFNumber, throughLensBrightness } from './light.ts';
import {
  driftPixels,
  flashSpeedUmPerS,
  flashSwingPixels,
  longestExposureS,
  stillSpeedUmPerS,
  stillUm,
  swingExposureS,
  swingPixels,
} from './still.ts';

export const FIGURES = [
  moreExposureEv,
  cornerMoreExposureEv,
  referenceWorkingFNumber,
  equalFNumber,
  throughLensBrightness,
  stillUm,
  stillSpeedUmPerS,
  flashSpeedUmPerS,
  longestExposureS,
  driftPixels,
  swingPixels,
  flashSwingPixels,
  swingExposureS,
] as const;
