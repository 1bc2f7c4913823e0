import { AIRY_ZERO } from '../../diffraction/airy.ts';
import { figure } from '../../figure.ts';
import { wavelength } from '../../pairing/leaves.ts';
import { pixelPitchUm } from '../../pairing/resolution.ts';
import { MM_PER_NM, UM_PER_MM } from '../../units.ts';
import { cameraFNumber, cameraMagnification, pupilRatio } from './settings.ts';

/**
 * Light with the close-up lens on. Behind the camera lens nothing has changed: at each focus setting the cone of
 * light on the sensor is the one that it was without the close-up lens. At infinity the f-number set is the working
 * one, whatever the magnification; near by it is what the camera lens itself has there.
 */

/** Micrometres in a nanometre. */
const UM_PER_NM = UM_PER_MM * MM_PER_NM;

export const closeUpNearFNumber = figure({
  id: 'closeUpNearFNumber',
  unit: '1',
  symbol: 'N_near',
  words:
    'working f-number at nearest focus, of a camera lens that moves as a whole; one that focuses inside is often brighter. At infinity it is the f-number set',
  source: 'cone of light behind a lens at magnification m₀: N (1 + m₀ / P), P the ratio of its pupils; the close-up lens takes nothing',
  needs: [cameraFNumber.leaf, cameraMagnification.leaf, pupilRatio.leaf],
  of: (N, m0, P) => N * (1 + m0 / P),
  as: (N, m0, P) => `${N} × (1 + ${m0} / ${P})`,
});

export const closeUpAiryUm = figure({
  id: 'closeUpAiryUm',
  unit: 'µm',
  symbol: 'd_cu',
  words: 'diameter of the Airy disc on the sensor with the camera lens at infinity',
  source: 'first dark ring of the Airy pattern, 2 k λ N, with the f-number set',
  needs: [wavelength, cameraFNumber.leaf],
  of: (nm, N) => 2 * AIRY_ZERO * nm * UM_PER_NM * N,
  as: (nm, N) => `2 × ${AIRY_ZERO} × ${nm} / 1000 × ${N}`,
});

export const closeUpDiffractionFNumber = figure({
  id: 'closeUpDiffractionFNumber',
  unit: '1',
  symbol: 'N_dif',
  words:
    'f-number from which diffraction, not the pixels, ends the detail: the close-up lens on and the camera lens at infinity, it is the one to set; colour-filter sensors take somewhat more',
  source: 'cut-off 1 / (λ N) at the finest pattern that pixels can record, 1 / (2 p): N = 2 p / λ',
  needs: [pixelPitchUm, wavelength],
  of: (p, nm) => (2 * p) / (nm * UM_PER_NM),
  as: (p, nm) => `2000 × ${p} / ${nm}`,
});

export const closeUpNearDiffractionFNumber = figure({
  id: 'closeUpNearDiffractionFNumber',
  unit: '1',
  symbol: 'N_dn',
  words:
    'f-number to set at nearest focus from which diffraction, not the pixels, ends the detail; as of a camera lens that moves as a whole',
  source: 'working f-number N (1 + m₀ / P) at the one where the cut-off meets the pixels',
  needs: [closeUpDiffractionFNumber, cameraMagnification.leaf, pupilRatio.leaf],
  of: (N, m0, P) => N / (1 + m0 / P),
  as: (N, m0, P) => `${N} / (1 + ${m0} / ${P})`,
});
