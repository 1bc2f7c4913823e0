import { setting } from '../setting.ts';
import * as typical from './typical.ts';

/** What the close-up lens is screwed to, what else is, and what stands in its place. */

export const ownFocalLength = setting({
  key: 'closeUpFocalLengthMm',
  symbol: 'f_own',
  unit: 'mm',
  words: "focal length of the close-up lens; left out, it is the pairing's relay",
  bounds: [5, 5000],
});

export const ownClearAperture = setting({
  key: 'closeUpClearApertureMm',
  symbol: 'D_own',
  unit: 'mm',
  words: 'clear diameter of that close-up lens',
  bounds: [0.1, 500],
});

export const secondPower = setting({
  key: 'secondPowerDioptre',
  symbol: 'P_2',
  unit: 'D',
  words: 'power of a second close-up lens, screwed in before the first',
  bounds: [0.2, 200],
});

export const separation = setting({
  key: 'secondSeparationMm',
  symbol: 'd_12',
  unit: 'mm',
  words: 'from the second close-up lens to the first, between their principal planes',
  bounds: [0, 500],
  standing: typical.separation,
});

export const cameraFocalLength = setting({
  key: 'cameraFocalLengthMm',
  symbol: 'f_cam',
  unit: 'mm',
  words: 'focal length of the camera lens, set to infinity',
  bounds: [5, 5000],
});

export const cameraMagnification = setting({
  key: 'cameraMagnification',
  symbol: 'm_0',
  unit: '',
  words: 'magnification of the camera lens alone at its nearest focus',
  bounds: [0.0001, 20],
  standing: typical.magnification,
});

export const cameraSubjectDistance = setting({
  key: 'cameraSubjectDistanceMm',
  symbol: 'X_0',
  unit: 'mm',
  words: 'from where the close-up lens will sit to the subject, the camera lens alone at its nearest focus',
  bounds: [1, 100_000],
});

export const closestFocus = setting({
  key: 'closestFocusMm',
  symbol: 'L_0',
  unit: 'mm',
  words: 'closest focus as makers tell it: from the sensor to the subject',
  bounds: [10, 100_000],
});

export const cameraLength = setting({
  key: 'cameraLengthMm',
  symbol: 'l_cam',
  unit: 'mm',
  words: "from the camera lens's rim to the sensor at its nearest focus",
  bounds: [1, 6000],
  standing: typical.length,
});

/** The middle of the range in which diffraction still leaves detail (common practice, without source). */
export const cameraFNumber = setting({
  key: 'cameraFNumber',
  symbol: 'N_cam',
  unit: '',
  words: 'f-number set on the camera lens',
  bounds: [0.5, 256],
  usual: 11,
});

export const pupilRatio = setting({
  key: 'pupilRatio',
  symbol: 'P_p',
  unit: '',
  words: "diameter of the camera lens's exit pupil over that of its entrance pupil",
  bounds: [0.1, 10],
  standing: typical.pupilRatio,
});

export const cameraPrincipalPlane = setting({
  key: 'cameraPrincipalPlaneMm',
  symbol: 'h_cam',
  unit: 'mm',
  words: "the camera lens's front principal plane, behind its rim",
  bounds: [-6000, 2000],
  standing: typical.principalPlane,
});

export const cameraPupilDepth = setting({
  key: 'cameraPupilDepthMm',
  symbol: 'd_cam',
  unit: 'mm',
  words: "the camera lens's entrance pupil, behind its rim",
  bounds: [-500, 2000],
  standing: typical.pupilDepth,
});

export const nearFocalLength = setting({
  key: 'nearFocalLengthMm',
  symbol: 'f_near',
  unit: 'mm',
  words: 'focal length with which the camera lens works at its nearest focus',
  bounds: [1, 6000],
  standing: typical.nearFocalLength,
});

export const extension = setting({
  key: 'extensionMm',
  symbol: 'e_own',
  unit: 'mm',
  words: 'length of the extension tubes that you have',
  bounds: [0, 2000],
});

export const SETTINGS = [
  ownFocalLength,
  ownClearAperture,
  cameraFocalLength,
  closestFocus,
  cameraMagnification,
  cameraSubjectDistance,
  cameraLength,
  cameraFNumber,
  pupilRatio,
  cameraPrincipalPlane,
  cameraPupilDepth,
  nearFocalLength,
  secondPower,
  separation,
  extension,
] as const;
