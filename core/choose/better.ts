import type { FigureId } from '../pairing/registry.ts';

/** Which way a figure is better, and what a photographer has of it. */
interface Direction {
  readonly way: 'more' | 'less';
  readonly why: string;
}

const more = (why: string): Direction => ({ way: 'more', why });
const less = (why: string): Direction => ({ way: 'less', why });

/**
 * The figures of which one way is better, all else being equal. Those left out have none: a magnification,
 * a focal length or an aperture's place is chosen, not maximised; of oversampling both too little and too
 * much cost something, and so of how the subject fills the frame; contrast at the pixels' finest is sharpness and false pattern in one.
 */
export const DIRECTIONS: Readonly<Partial<Record<FigureId, Direction>>> = {
  objectFieldWidthMm: more('more of the subject is in the picture'),
  objectFieldHeightMm: more('more of the subject is in the picture'),
  objectFieldDiagonalMm: more('more of the subject is in the picture'),
  correctedCircleMm: more('the objective is good farther out'),
  litCircleMm: more('the light reaches farther out'),
  sharpCircleMm: more('the relay is sharp farther out'),
  correctedShare: more('more of the picture can be used'),
  litShare: more('more of the picture can be used'),
  sharpShare: more('more of the picture can be used'),
  coveredShare: more('more of the picture can be used'),
  cornerIllumination: more('less has to be brightened in the corners, and less noise comes up with it'),
  cornerLossEv: less('less has to be brightened in the corners, and less noise comes up with it'),
  cornerFNumber: less('more light in the corners'),
  longestUnvignettedSpaceMm: more('more room between objective and relay before the corners darken'),
  rayleighUm: less('finer detail is told apart'),
  cutoffObjectLpPerMm: more('finer patterns pass'),
  pixelAtSubjectUm: less('the subject is recorded in finer steps'),
  opticalDetailMegapixels: more('there is more to record'),
  recordedDetailMegapixels: more('more is recorded of what can be used'),
  systemNa: more('finer detail, and more light'),
  workingFNumber: less('more light on the sensor: shorter exposures'),
  resolvedDetailUm: less('finer detail is in the file'),
  depthOfFieldUm: more('fewer frames for the same depth'),
  framesForSubject: less('the stack is taken sooner, and shakes and moves less'),
  goodFieldMm: more('more of the subject is in the part of the picture that can be used'),
  clearWorkingDistanceMm: more('more room between lens and subject'),
  lightConeDeg: more('more room for lamp and diffuser'),
  totalLengthMm: less('a shorter rig is lighter, and bends and shakes less'),
};

const entries = Object.entries(DIRECTIONS) as [FigureId, Direction][];

/** The same without the reasons. */
export const BETTER: Readonly<Partial<Record<FigureId, 'more' | 'less'>>> = Object.fromEntries(entries.map(([id, { way }]) => [id, way]));
