import { figure, Gap } from '../../figure.ts';
import { closeUpDiffractionFNumber } from './aperture.ts';
import { closeUpFarMagnification, closeUpNearMagnification } from './band.ts';
import { cameraFNumber, cameraFocalLength, cameraMagnification, cameraPrincipalPlane, pupilRatio } from './settings.ts';

/**
 * Extension tubes behind the same camera lens, left at infinity, for the same magnification. A sensor e beyond the
 * focus of any lens at infinity sees e / f times (Newton's x x' = f²), a subject f / m before the front focus, and a
 * cone of light of N (1 + m / P). All of this holds for every camera lens, for nothing in it is moved.
 */

const INSIDE = 'the subject would have to stand inside the camera lens';
const NEWTON = "Newton's form of the lens equation: m = e / f behind the focus, f / m before the front focus";
const CONE = 'the exit pupil is P f / N wide and f (m + P) before the sensor: N (1 + m / P)';

/** From the rim, where the front focus is f − h before it. */
const before = (f: number, m: number, h: number): number | Gap => {
  const room = f / m + f - h;
  return room > 0 ? room : Gap.none(INSIDE);
};
const toldBefore = (f: string, m: string, h: string): string => `${f} / ${m} + ${f} − ${h}`;

export const tubesFarExtensionMm = figure({
  id: 'tubesFarExtensionMm',
  unit: 'mm',
  symbol: 'e_far',
  words: 'tubes that give the least magnification of the close-up lens, with the camera lens at infinity',
  source: NEWTON,
  needs: [closeUpFarMagnification, cameraFocalLength.leaf],
  of: (m, f) => m * f,
  as: (m, f) => `${m} × ${f}`,
});

export const tubesFarDistanceMm = figure({
  id: 'tubesFarDistanceMm',
  unit: 'mm',
  symbol: 'A_tf',
  words: "free distance with them, from the camera lens's rim",
  source: NEWTON,
  needs: [cameraFocalLength.leaf, closeUpFarMagnification, cameraPrincipalPlane.leaf],
  of: before,
  as: toldBefore,
});

export const tubesFarFNumber = figure({
  id: 'tubesFarFNumber',
  unit: '1',
  symbol: 'N_tf',
  words: 'working f-number with them; with the close-up lens it stays as set',
  source: CONE,
  needs: [cameraFNumber.leaf, closeUpFarMagnification, pupilRatio.leaf],
  of: (N, m, P) => N * (1 + m / P),
  as: (N, m, P) => `${N} × (1 + ${m} / ${P})`,
});

export const tubesFarCostEv = figure({
  id: 'tubesFarCostEv',
  unit: 'EV',
  symbol: 'b_tf',
  words: 'light that they cost against the close-up lens at the same magnification',
  source: 'light as the square of the working f-number: (1 + m / P)²',
  needs: [closeUpFarMagnification, pupilRatio.leaf],
  of: (m, P) => 2 * Math.log2(1 + m / P),
  as: (m, P) => `2 × log2(1 + ${m} / ${P})`,
});

export const tubesDiffractionFNumber = figure({
  id: 'tubesDiffractionFNumber',
  unit: '1',
  symbol: 'N_td',
  words: 'f-number to set with them from which diffraction, not the pixels, ends the detail',
  source: 'working f-number N (1 + m / P) at the one where the cut-off meets the pixels',
  needs: [closeUpDiffractionFNumber, closeUpFarMagnification, pupilRatio.leaf],
  of: (N, m, P) => N / (1 + m / P),
  as: (N, m, P) => `${N} / (1 + ${m} / ${P})`,
});

export const tubesNearExtensionMm = figure({
  id: 'tubesNearExtensionMm',
  unit: 'mm',
  symbol: 'e_near',
  words: 'tubes that give the greatest magnification of the close-up lens, with the camera lens at infinity',
  source: NEWTON,
  needs: [closeUpNearMagnification, cameraFocalLength.leaf],
  of: (m, f) => m * f,
  as: (m, f) => `${m} × ${f}`,
});

export const tubesNearDistanceMm = figure({
  id: 'tubesNearDistanceMm',
  unit: 'mm',
  symbol: 'A_tn',
  words: "free distance with those, from the camera lens's rim",
  source: NEWTON,
  needs: [cameraFocalLength.leaf, closeUpNearMagnification, cameraPrincipalPlane.leaf],
  of: before,
  as: toldBefore,
});

export const tubesNearFNumber = figure({
  id: 'tubesNearFNumber',
  unit: '1',
  symbol: 'N_tn',
  words: 'working f-number with those',
  source: CONE,
  needs: [cameraFNumber.leaf, closeUpNearMagnification, pupilRatio.leaf],
  of: (N, m, P) => N * (1 + m / P),
  as: (N, m, P) => `${N} × (1 + ${m} / ${P})`,
});

export const tubesNearCostEv = figure({
  id: 'tubesNearCostEv',
  unit: 'EV',
  symbol: 'b_tn',
  words: 'light that those cost against the close-up lens on the camera lens at its nearest focus',
  source: 'light as the square of the working f-number, for both',
  needs: [closeUpNearMagnification, cameraMagnification.leaf, pupilRatio.leaf],
  of: (m, m0, P) => 2 * Math.log2((1 + m / P) / (1 + m0 / P)),
  as: (m, m0, P) => `2 × log2((1 + ${m} / ${P}) / (1 + ${m0} / ${P}))`,
});

export const tubesNearDiffractionFNumber = figure({
  id: 'tubesNearDiffractionFNumber',
  unit: '1',
  symbol: 'N_tdn',
  words: 'f-number to set with those from which diffraction, not the pixels, ends the detail',
  source: 'working f-number N (1 + m / P) at the one where the cut-off meets the pixels',
  needs: [closeUpDiffractionFNumber, closeUpNearMagnification, pupilRatio.leaf],
  of: (N, m, P) => N / (1 + m / P),
  as: (N, m, P) => `${N} / (1 + ${m} / ${P})`,
});
