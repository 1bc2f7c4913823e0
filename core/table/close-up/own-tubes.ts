import { figure, Gap } from '../../figure.ts';
import { nearestAlone } from './band.ts';
import { cameraFocalLength, cameraMagnification, cameraPrincipalPlane, extension, nearFocalLength } from './settings.ts';

/**
 * The tubes that one has, from the camera lens at infinity to its nearest focus. At nearest focus a lens that
 * focuses inside works with another focal length f': with the tubes m = m₀ + e / f', and the subject comes from
 * f' / m₀ before the front focus to f' / m before it.
 */

const NO_TUBES = 'no tubes: their length is 0';
const INSIDE = 'the subject would have to stand inside the camera lens';

export const ownTubesFarMagnification = figure({
  id: 'ownTubesFarMagnification',
  unit: '1',
  symbol: 'm_of',
  words: 'magnification with the tubes that you have, the camera lens at infinity',
  source: "Newton's form of the lens equation: m = e / f",
  needs: [extension.leaf, cameraFocalLength.leaf],
  of: (e, f) => (e > 0 ? e / f : Gap.none(NO_TUBES)),
  as: (e, f) => `${e} / ${f}`,
});

export const ownTubesFarDistanceMm = figure({
  id: 'ownTubesFarDistanceMm',
  unit: 'mm',
  symbol: 'A_of',
  words: "free distance with them, from the camera lens's rim",
  source: "Newton's form of the lens equation: f / m before the front focus",
  needs: [cameraFocalLength.leaf, ownTubesFarMagnification, cameraPrincipalPlane.leaf],
  of: (f, m, h) => (f / m + f - h > 0 ? f / m + f - h : Gap.none(INSIDE)),
  as: (f, m, h) => `${f} / ${m} + ${f} − ${h}`,
});

export const ownTubesNearMagnification = figure({
  id: 'ownTubesNearMagnification',
  unit: '1',
  symbol: 'm_on',
  words: 'magnification with the tubes that you have, the camera lens at its nearest focus',
  source: "m₀ + e / f', f' the focal length with which the lens works there",
  needs: [cameraMagnification.leaf, extension.leaf, nearFocalLength.leaf],
  of: (m0, e, f) => (e > 0 ? m0 + e / f : Gap.none(NO_TUBES)),
  as: (m0, e, f) => `${m0} + ${e} / ${f}`,
});

export const ownTubesNearDistanceMm = figure({
  id: 'ownTubesNearDistanceMm',
  unit: 'mm',
  symbol: 'A_on',
  words: "free distance with them, from the camera lens's rim, the camera lens at its nearest focus",
  source: "from f' / m₀ to f' / m before the front focus",
  needs: [nearestAlone, nearFocalLength.leaf, cameraMagnification.leaf, ownTubesNearMagnification],
  of: (X, f, m0, m) => {
    const room = X - f / m0 + f / m;
    return room > 0 ? room : Gap.none(INSIDE);
  },
  as: (X, f, m0, m) => `${X} − ${f} / ${m0} + ${f} / ${m}`,
});
