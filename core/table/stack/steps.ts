import { figure, Gap } from '../../figure.ts';
import { depthOfFieldUm } from '../../pairing/depth-of-field.ts';
import { stepOf } from '../../pairing/frames.ts';
import { immersion, subjectIndex } from '../../pairing/leaves.ts';
import { overlap, railError } from './settings.ts';

/** How far the focus, and the rail that carries the rig or the subject, goes from one frame to the next. */

/**
 * A flat surface between `n_i`, what the nose dips in, and `n`, what the subject lies in: close rays keep their
 * height there and `n_i u_i = n u`, so that from it to where they meet is `n / n_i` times as far. The rail
 * changes the way before the surface, part for part. A nose that dips into what the subject lies in meets no
 * surface on the way: `n = n_i`, and the focus moves as the rail does.
 */
export const focusPerRail = figure({
  id: 'focusPerRail',
  unit: '1',
  symbol: 'q_n',
  words:
    'how far the focus moves in what surrounds the subject while the rail moves by one: more than one where a nose in air looks through the flat surface of a liquid or resin, one where it dips in',
  source: 'refraction of close rays at a flat surface, n / n_i; rays at the edge of the aperture by √((n² − NA²) / (n_i² − NA²))',
  needs: [subjectIndex, immersion],
  of: (n, ni) => n / ni,
  as: (n, ni) => `${n} / ${ni}`,
});

export const frameStepUm = figure({
  id: 'frameStepUm',
  unit: 'µm',
  symbol: 'Δ',
  words: 'from one frame to the next at the subject: no gap is left however the rail errs',
  source: 'depth × (1 − overlap), and with both neighbours off by the rail’s error no more than the depth',
  needs: [depthOfFieldUm, overlap.leaf, railError.leaf, focusPerRail],
  of: (T, o, e, q) => {
    const step = stepOf(T, o, q * e);
    return step > 0 ? step : Gap.none('the rail errs by half the depth of a frame or more, so that no step is sure to leave no gap');
  },
  as: (T, o, e, q) => `min(${T} × (1 − ${o}), ${T} − 2 × ${q} × ${e})`,
});

export const railStepUm = figure({
  id: 'railStepUm',
  unit: 'µm',
  symbol: 'Δ_r',
  words: 'the same step as the rail goes it: what is set on the rail',
  source: 'the focus moves q_n times as far as the rail',
  needs: [frameStepUm, focusPerRail],
  of: (s, q) => s / q,
  as: (s, q) => `${s} / ${q}`,
});

export const railErrorForgivenUm = figure({
  id: 'railErrorForgivenUm',
  unit: 'µm',
  symbol: 'ε_0',
  words: 'as much as the rail may err, to either side, before it costs frames: the overlap takes that up',
  source: 'two neighbours off by this much, away from each other, use up all that they share',
  needs: [overlap.leaf, depthOfFieldUm, focusPerRail],
  of: (o, T, q) => (o * T) / (2 * q),
  as: (o, T, q) => `${o} × ${T} / (2 × ${q})`,
});
