import { USUAL_OVERLAP } from '../../pairing/frames.ts';
import { exposure } from '../exposure.ts';
import { setting } from '../setting.ts';

export const overlap = setting({
  key: 'overlap',
  symbol: 'o',
  unit: '',
  words: 'share of its depth that a frame has in common with the next one',
  bounds: [0, 0.95],
  usual: USUAL_OVERLAP,
});

export const railError = setting({
  key: 'railErrorUm',
  symbol: 'ε',
  unit: 'µm',
  words: 'how far the rail may stand from where it was sent',
  bounds: [0, 1000],
  usual: 0,
});

/** A rail that is turned by hand stands wherever it is put: without this, or with 0, it goes any step. */
export const railIncrement = setting({
  key: 'railIncrementUm',
  symbol: 'i_r',
  unit: 'µm',
  words: 'finest step of the rail: it goes whole ones of these',
  bounds: [0, 1000],
  usual: 0,
});

/** Unknown until it is seen: hardly any maker tells the objective's, and the relay's may add to it or take from it. */
export const fieldCurvature = setting({
  key: 'fieldCurvatureUm',
  symbol: 'c_g',
  unit: 'µm',
  words: 'how far the focus moves at the subject from the middle of the picture to its corner, seen through the whole rig',
  bounds: [0, 100_000],
});

/** A wait that many stacks are taken with (common practice, without source). */
export const settling = setting({
  key: 'settlingS',
  symbol: 't_s',
  unit: 's',
  words: 'wait after each step, until nothing swings any more',
  bounds: [0, 600],
  usual: 2,
});

export const flashRecycle = setting({
  key: 'flashRecycleS',
  symbol: 't_r',
  unit: 's',
  words: 'what the flash takes beyond that until it is ready again',
  bounds: [0, 600],
  usual: 0,
});

export const SETTINGS = [overlap, railError, railIncrement, fieldCurvature, exposure, settling, flashRecycle] as const;
