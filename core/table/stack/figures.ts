import { figure, Gap } from '../../figure.ts';
import { depthOfFieldUm } from '../../pairing/depth-of-field.ts';
import { overlap, railError } from './settings.ts';

export const frameStepUm = figure({
  id: 'frameStepUm',
  unit: 'µm',
  symbol: 'Δ',
  words: 'from one frame to the next at the subject: no gap is left however the rail errs',
  source: 'depth × (1 − overlap), and with both neighbours off by the rail’s error no more than the depth',
  needs: [depthOfFieldUm, overlap.leaf, railError.leaf],
  of: (T, o, e) => {
    const step = Math.min(T * (1 - o), T - 2 * e);
    return step > 0 ? step : Gap.none('the rail errs by half the depth of field or more: no step is sure to leave no gap');
  },
  as: (T, o, e) => `min(${T} × (1 − ${o}), ${T} − 2 × ${e})`,
});

export const FIGURES = [frameStepUm] as const;
