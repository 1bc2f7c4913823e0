import { SLIP_INDEX } from '../../aberration/plate.ts';
import { setting } from '../setting.ts';

export const tubeError = setting({
  key: 'tubeErrorMm',
  symbol: 'τ',
  unit: 'mm',
  words: 'how much longer than right the tube between relay and camera is; less than 0: shorter',
  bounds: [-200, 200],
  usual: 1,
});

/** Maréchal's limit (1947): a picture that nobody can tell from a perfect one. */
export const strehlLimit = setting({
  key: 'strehlLimit',
  symbol: 'Q',
  unit: '',
  words: 'Strehl ratio that still counts as sharp',
  bounds: [0.5, 0.99],
  usual: 0.8,
});

export const magnificationTolerance = setting({
  key: 'magnificationTolerance',
  symbol: 'q_m',
  unit: '',
  words: 'share by which the magnification may be off',
  bounds: [0.0001, 0.5],
  usual: 0.01,
});

export const shiftLimit = setting({
  key: 'shiftLimitMm',
  symbol: 'δ_max',
  unit: 'mm',
  words: 'how far the subject may stand from where the objective is made for it',
  bounds: [0.001, 100],
  usual: 1,
});

export const farThing = setting({
  key: 'farThingM',
  symbol: 'X',
  unit: 'm',
  words: "from the relay's front rim to the far thing that it is focused on",
  bounds: [1, 1_000_000],
  usual: 100,
});

export const slip = setting({
  key: 'slipMm',
  symbol: 'd_c',
  unit: 'mm',
  words: 'thickness of the cover slip that is there; 0 for none',
  bounds: [0, 20],
  usual: 0,
});

export const slipIndex = setting({
  key: 'slipIndex',
  symbol: 'n_c',
  unit: '',
  words: "refractive index of the cover slip's glass",
  bounds: [1.3, 2.5],
  usual: SLIP_INDEX,
});

export const resin = setting({
  key: 'resinMm',
  symbol: 'd_r',
  unit: 'mm',
  words: 'depth at which the subject lies in resin, or another clear medium, under its flat surface',
  bounds: [0, 20],
  usual: 0,
});

export const resinIndex = setting({
  key: 'resinIndex',
  symbol: 'n_r',
  unit: '',
  words: 'refractive index of the resin',
  bounds: [1.3, 2.5],
  usual: 1.5,
});

export const SETTINGS = [tubeError, magnificationTolerance, strehlLimit, shiftLimit, farThing, slip, slipIndex, resin, resinIndex] as const;
