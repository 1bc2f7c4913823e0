import { figure } from '../../figure.ts';
import { magnificationChangePerMm } from '../../pairing/aperture.ts';
import { sensorDiagonal } from '../../pairing/first-order.ts';
import { subjectDepth } from '../../pairing/leaves.ts';
import { pixelPitchUm } from '../../pairing/resolution.ts';
import { exposure } from '../exposure.ts';
import { framesInAll } from './counts.ts';
import { flashRecycle, settling } from './settings.ts';
import { frameStepUm, railStepUm } from './steps.ts';

/** The stack from its first frame to its last: way, time, and how the picture grows or shrinks meanwhile. */

export const railTravelMm = figure({
  id: 'railTravelMm',
  unit: 'mm',
  symbol: 'l_t',
  words: "the rail's travel from the first frame to the last",
  source: 'one step less than there are frames',
  needs: [framesInAll, railStepUm],
  of: (n, s) => ((n - 1) * s) / 1000,
  as: (n, s) => `(${n} − 1) × ${s} / 1000`,
});

export const focusTravelMm = figure({
  id: 'focusTravelMm',
  unit: 'mm',
  symbol: 'l_f',
  words: "the focus's travel meanwhile, in what surrounds the subject",
  source: 'one step less than there are frames',
  needs: [framesInAll, frameStepUm],
  of: (n, s) => ((n - 1) * s) / 1000,
  as: (n, s) => `(${n} − 1) × ${s} / 1000`,
});

export const stackTimeS = figure({
  id: 'stackTimeS',
  unit: 's',
  symbol: 't',
  words: 'from the first step to the last frame',
  source: 'each frame takes its settling, its flash and its exposure',
  needs: [framesInAll, exposure.leaf, settling.leaf, flashRecycle.leaf],
  of: (n, exposed, settled, flash) => n * (exposed + settled + flash),
  as: (n, exposed, settled, flash) => `${n} × (${exposed} + ${settled} + ${flash})`,
});

export const scaleChange = figure({
  id: 'scaleChange',
  unit: '1',
  symbol: 'q_m',
  words:
    "how much larger the subject's back looks than its front in one and the same frame; frames grow or shrink by as much over the stack",
  source: 'change of magnification per mm of depth, over the depth',
  needs: [magnificationChangePerMm, subjectDepth],
  of: (k, d) => k * d,
  as: (k, d) => `${k} × ${d}`,
  bounds: [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
});

export const scaleChangePixels = figure({
  id: 'scaleChangePixels',
  unit: '1',
  symbol: 'n_p',
  words: 'the same in pixels at the corner: what the frames have to be scaled by before they are laid over each other',
  source: 'half the diagonal times the change',
  needs: [scaleChange, sensorDiagonal, pixelPitchUm],
  of: (k, d, p) => (Math.max(k, -k) * 1000 * d) / (2 * p),
  as: (k, d, p) => `max(${k}, −${k}) × 1000 × ${d} / (2 × ${p})`,
});
