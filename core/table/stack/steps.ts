import { figure, Gap, openFigure, openStep, step } from '../../figure.ts';
import { depthOfFieldUm } from '../../pairing/depth-of-field.ts';
import { incrementsIn, stepOf } from '../../pairing/frames.ts';
import { immersion, subjectIndex } from '../../pairing/leaves.ts';
import { overlap, railError, railIncrement } from './settings.ts';

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

/** How every reason of a rail that is too coarse begins. */
const ERRS = Gap.none('this rail is too coarse: it errs by half the depth of a frame or more, so that no step is sure to leave no gap');
const COARSE = Gap.none('this rail is too coarse: its finest step is longer than frames may stand apart');

/** What any rail may go, whatever its increments. */
export const longestStep = step({
  id: 'longestStep',
  symbol: 'Δ_m',
  unit: 'µm',
  words: 'as far as two frames may stand apart at the subject',
  needs: [depthOfFieldUm, overlap.leaf, railError.leaf, focusPerRail],
  of: (T, o, e, q) => {
    const longest = stepOf(T, o, q * e);
    return longest > 0 ? longest : ERRS;
  },
  as: (T, o, e, q) => `min(${T} × (1 − ${o}), ${T} − 2 × ${q} × ${e})`,
});

/** Finer than a picometre is no grid, and would be beyond counting, µm. */
const NO_GRID = 1e-6;

export const incrementThere = openStep({
  id: 'railIncrementThere',
  symbol: 'i_w',
  unit: 'µm',
  words: 'finest step of the rail, if it has one',
  needs: [railIncrement.leaf],
  of: (i) => (typeof i === 'number' && i > NO_GRID ? i : Gap.unknown('/railIncrementUm')),
  as: (i) => i,
});

export const incrementsAStep = step({
  id: 'incrementsAStep',
  symbol: 'k_r',
  words: "the rail's finest steps from one frame to the next: as many whole ones as two frames may stand apart",
  needs: [longestStep, focusPerRail, incrementThere],
  of: (longest, q, i) => {
    const whole = incrementsIn(longest, q * i);
    return whole >= 1 ? whole : COARSE;
  },
  as: (longest, q, i) => `floor(${longest} / (${q} × ${i}))`,
});

export const frameStepUm = openFigure({
  id: 'frameStepUm',
  unit: 'µm',
  symbol: 'Δ',
  words: 'from one frame to the next at the subject: no gap is left however the rail errs',
  source:
    "depth × (1 − overlap), and with both neighbours off by the rail's error no more than the depth; down to whole ones of the rail's finest step",
  needs: [longestStep, focusPerRail, incrementThere, incrementsAStep],
  of: (longest, q, i, whole) => {
    if (typeof longest !== 'number' || typeof i !== 'number') return longest;
    return typeof whole === 'number' ? whole * (q as number) * i : whole;
  },
  as: (longest, q, i, whole) => (i && whole ? `${whole} × ${q} × ${i}` : longest),
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

export const railErrorForgivenUm = openFigure({
  id: 'railErrorForgivenUm',
  unit: 'µm',
  symbol: 'ε_0',
  words: 'as much as the rail may err, to either side, before it costs frames: what neighbours share takes that up',
  source: 'two neighbours off by this much, away from each other, use up all that they share: the overlap, or what whole steps leave',
  needs: [overlap.leaf, depthOfFieldUm, focusPerRail, incrementThere],
  of: (o, T, q, i) => {
    if (typeof T !== 'number') return T;
    const [shared, moved] = [o as number, q as number];
    if (typeof i !== 'number') return (shared * T) / (2 * moved);
    const whole = incrementsIn(T * (1 - shared), moved * i);
    return whole >= 1 ? Math.max(0, (T - whole * moved * i) / (2 * moved)) : COARSE;
  },
  as: (o, T, q, i) => (i ? `(${T} − ${q} × ${i} × floor(${T} × (1 − ${o}) / (${q} × ${i}))) / (2 × ${q})` : `${o} × ${T} / (2 × ${q})`),
});
