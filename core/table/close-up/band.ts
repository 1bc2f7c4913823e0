import { figure, Gap, openFigure, openStep } from '../../figure.ts';
import { width } from '../../pairing/leaves.ts';
import { MM_PER_M } from '../../units.ts';
import { closeUpFocalMm, closeUpPlaneMm, closeUpPowerDioptre, firstFocalLength } from './lens.ts';
import {
  cameraFocalLength,
  cameraLength,
  cameraMagnification,
  cameraSubjectDistance,
  closestFocus,
  secondPower,
  separation,
} from './settings.ts';

/**
 * Between which distances a camera lens with a close-up lens before it is sharp, and how large it shows things.
 * At any one focus setting the camera lens alone is sharp at X from the close-up lens's place and magnifies m₀
 * times. The close-up lens, of focal length f, makes of a subject at X' a virtual image at X, where
 * 1/X' = 1/X + 1/f, and 1 + X/f times as large; of that the camera lens makes what it makes of anything at X. So
 * m = m₀ (1 + X/f) for every camera lens, however it focuses. As X grows without limit m₀ X becomes the camera
 * lens's focal length, X' becomes f, m becomes f_cam / f.
 */

export const closeUpFarthestMm = openFigure({
  id: 'closeUpFarthestMm',
  unit: 'mm',
  symbol: 'A_far',
  words:
    "the farthest subject: from the front close-up lens's principal plane, some millimetres from its rim, with the camera lens at infinity",
  source: 'what stands in the focus of the close-up lens leaves it collimated',
  needs: [closeUpFocalMm, closeUpPlaneMm],
  of: (f, h) => (typeof f !== 'number' ? f : typeof h === 'number' ? f - h : f),
  as: (f, h) => (h ? `${f} − ${h}` : f),
});

export const closeUpFarMagnification = figure({
  id: 'closeUpFarMagnification',
  unit: '1',
  symbol: 'm_far',
  words: 'magnification with the camera lens at infinity, for the farthest subject: the least',
  source: 'two lenses with collimated light between them: ratio of their focal lengths',
  needs: [cameraFocalLength.leaf, closeUpPowerDioptre],
  of: (f, P) => (f * P) / MM_PER_M,
  as: (f, P) => `${f} × ${P} / 1000`,
});

/** As told, else what closest focus leaves before the rim. */
export const nearestAlone = openStep({
  id: 'nearestAlone',
  symbol: 'X',
  unit: 'mm',
  words: "from the close-up lens's place to the nearest subject of the camera lens alone; as told, or closest focus less the lens's length",
  needs: [cameraSubjectDistance.leaf, closestFocus.leaf, cameraLength.leaf],
  of: (X, L, l) => {
    if (typeof X === 'number') return X;
    if (typeof L !== 'number') return Gap.unknown('/cameraSubjectDistanceMm');
    if (typeof l !== 'number') return l;
    return L > l
      ? L - l
      : Gap.none('closest focus counts from the sensor: by these numbers the subject would stand inside the camera lens');
  },
  as: (X, L, l) => X || `${L} − ${l}`,
});

/** Where the first lens must have its subject. */
const throughFirst = openStep({
  id: 'throughFirst',
  symbol: 'X_1',
  unit: 'mm',
  words: 'from the first close-up lens to what it must see',
  needs: [nearestAlone, firstFocalLength],
  of: (X, f) => (typeof f !== 'number' ? f : typeof X !== 'number' ? X : (X * f) / (X + f)),
  as: (X, f) => `${X} × ${f} / (${X} + ${f})`,
});

/** The same from the front lens. */
const beforeFront = openStep({
  id: 'beforeFront',
  symbol: 'X_2',
  unit: 'mm',
  words: 'from the front close-up lens to what the first one must see',
  needs: [throughFirst, secondPower.leaf, separation.leaf],
  of: (X, P2, d) => {
    if (typeof X !== 'number' || typeof P2 !== 'number') return X;
    if (typeof d !== 'number') return d;
    return X > d ? X - d : Gap.none('at nearest focus the first close-up lens would see what stands behind the second');
  },
  as: (X, P2, d) => (P2 && d ? `${X} − ${d}` : X),
});

export const closeUpNearestMm = openFigure({
  id: 'closeUpNearestMm',
  unit: 'mm',
  symbol: 'A_near',
  words: "the nearest subject: from the front close-up lens's principal plane, with the camera lens at its nearest focus",
  source: "thin lens with a virtual image at X: X' = X f / (X + f), for the second lens once more",
  needs: [beforeFront, secondPower.leaf],
  of: (X, P2) => (typeof X === 'number' && typeof P2 === 'number' ? X / (1 + (X * P2) / MM_PER_M) : X),
  as: (X, P2) => (P2 ? `${X} / (1 + ${X} × ${P2} / 1000)` : X),
});

export const closeUpGain = openFigure({
  id: 'closeUpGain',
  unit: '1',
  symbol: 'q_near',
  words:
    'how many times larger than with the camera lens alone at its nearest focus; only X and the close-up lens count, no matter how it focuses',
  source: 'lateral magnification of the virtual image: 1 + X / f, and for a second lens that factor once more',
  needs: [nearestAlone, firstFocalLength, beforeFront, secondPower.leaf],
  of: (X, f, X2, P2) => {
    if (typeof f !== 'number') return f;
    if (typeof X !== 'number') return X;
    if (typeof X2 !== 'number') return X2;
    return (1 + X / f) * (typeof P2 === 'number' ? 1 + (X2 * P2) / MM_PER_M : 1);
  },
  as: (X, f, X2, P2) => (P2 ? `(1 + ${X} / ${f}) × (1 + ${X2} × ${P2} / 1000)` : `1 + ${X} / ${f}`),
});

export const closeUpNearMagnification = figure({
  id: 'closeUpNearMagnification',
  unit: '1',
  symbol: 'm_near',
  words: 'magnification with the camera lens at its nearest focus: the greatest',
  source: 'the camera lens shows the virtual image as it showed the subject that stood there: m₀ (1 + X / f)',
  needs: [cameraMagnification.leaf, closeUpGain],
  of: (m0, gain) => m0 * gain,
  as: (m0, gain) => `${m0} × ${gain}`,
});

export const closeUpFarFieldMm = figure({
  id: 'closeUpFarFieldMm',
  unit: 'mm',
  symbol: 'w_far',
  words: "width of the subject that fills the sensor's width, farthest away",
  source: 'definition of magnification',
  needs: [width, closeUpFarMagnification],
  of: (W, m) => W / m,
  as: (W, m) => `${W} / ${m}`,
});

export const closeUpNearFieldMm = figure({
  id: 'closeUpNearFieldMm',
  unit: 'mm',
  symbol: 'w_near',
  words: "width of the subject that fills the sensor's width, nearest",
  source: 'definition of magnification',
  needs: [width, closeUpNearMagnification],
  of: (W, m) => W / m,
  as: (W, m) => `${W} / ${m}`,
});
