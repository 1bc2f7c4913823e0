import { figure } from '../../figure.ts';
import { systemNa, workingFNumber } from '../../pairing/aperture.ts';
import { systemMagnification } from '../../pairing/first-order.ts';
import { cornerFNumber } from '../../pairing/light.ts';
import { referenceFNumber, referencePupilRatio } from './settings.ts';

/** How much light arrives, beside a macro lens at the same magnification. */

const STOPS = 'light in proportion to 1/N²; a stop is a factor of 2';
const BELLOWS = 'working f-number of a lens of pupil ratio P: N (1 + m/P)';
const signed = { bounds: [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] } as const;

export const referenceWorkingFNumber = figure({
  id: 'referenceWorkingFNumber',
  unit: '1',
  symbol: 'N_rw',
  words: "the macro lens's working f-number at this magnification",
  source: BELLOWS,
  needs: [referenceFNumber.leaf, systemMagnification, referencePupilRatio.leaf],
  of: (N, m, P) => N * (1 + m / P),
  as: (N, m, P) => `${N} × (1 + ${m} / ${P})`,
});

export const equalFNumber = figure({
  id: 'equalFNumber',
  unit: '1',
  symbol: 'N_eq',
  words: 'f-number that the macro lens would have to be set to for the same light at the same magnification',
  source: BELLOWS,
  needs: [workingFNumber, systemMagnification, referencePupilRatio.leaf],
  of: (N, m, P) => N / (1 + m / P),
  as: (N, m, P) => `${N} / (1 + ${m} / ${P})`,
});

export const moreExposureEv = figure({
  ...signed,
  id: 'moreExposureEv',
  unit: 'EV',
  symbol: 'ΔEV_r',
  words: 'stops more exposure than the macro lens takes at the same magnification, in the middle; less than 0: fewer',
  source: STOPS,
  needs: [workingFNumber, referenceWorkingFNumber],
  of: (N, Nr) => 2 * Math.log2(N / Nr),
  as: (N, Nr) => `2 × log2(${N} / ${Nr})`,
});

export const cornerMoreExposureEv = figure({
  ...signed,
  id: 'cornerMoreExposureEv',
  unit: 'EV',
  symbol: 'ΔEV_c',
  words: "stops more exposure than the macro lens's middle takes at the same magnification, in the corner; less than 0: fewer",
  source: STOPS,
  needs: [cornerFNumber, referenceWorkingFNumber],
  of: (N, Nr) => 2 * Math.log2(N / Nr),
  as: (N, Nr) => `2 × log2(${N} / ${Nr})`,
});

export const throughLensBrightness = figure({
  id: 'throughLensBrightness',
  unit: '1',
  symbol: 'L_e',
  words: 'brightness of the picture, lit through the objective itself, in the figure that handbooks tabulate',
  source: 'handbooks of light microscopy: 10⁴ NA⁴ / m², the aperture counted for the lamp and once more for the picture',
  needs: [systemNa, systemMagnification],
  of: (NA, m) => (1e4 * NA ** 4) / m ** 2,
  as: (NA, m) => `10^4 × ${NA}^4 / ${m}²`,
});
