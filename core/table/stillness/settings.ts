import { exposure } from '../exposure.ts';
import { setting } from '../setting.ts';

export const referenceFNumber = setting({
  key: 'referenceFNumber',
  symbol: 'N_r',
  unit: '',
  words: 'f-number set on the macro lens that the light is compared with',
  bounds: [0.5, 64],
  usual: 8,
});

export const referencePupilRatio = setting({
  key: 'referencePupilRatio',
  symbol: 'P_r',
  unit: '',
  words: "exit pupil of that macro lens over its entrance pupil, both seen from the lens's ends",
  bounds: [0.1, 10],
  standing: { value: 1, plusMinus: 0.3, why: 'a macro lens is taken as alike from both ends; common practice, without source' },
});

export const blurPixels = setting({
  key: 'blurPixels',
  symbol: 'b',
  unit: '',
  words: 'pixels over which a point may be drawn out',
  bounds: [0.05, 50],
  usual: 1,
});

export const flash = setting({
  key: 'flashMs',
  symbol: 't_f',
  unit: 'ms',
  words: 'flash duration: from a tenth of its height up to a tenth down (t0.1)',
  bounds: [0.0001, 100],
  usual: 1,
});

export const drift = setting({
  key: 'driftUmPerS',
  symbol: 'v',
  unit: 'µm/s',
  words: 'how fast the subject drifts: a rail that settles, a specimen that dries',
  bounds: [0, 100_000],
  usual: 1,
});

export const swing = setting({
  key: 'swingUm',
  symbol: 'a_v',
  unit: 'µm',
  words: 'how far the subject swings to either side of its middle against the objective',
  bounds: [0, 1000],
});

export const swingRate = setting({
  key: 'swingHz',
  symbol: 'ν_v',
  unit: 'Hz',
  words: 'how often a second it swings to and fro',
  bounds: [0.01, 10_000],
});

export const SETTINGS = [referenceFNumber, referencePupilRatio, exposure, flash, blurPixels, drift, swing, swingRate] as const;
