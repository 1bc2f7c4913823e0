import { figure, Gap, step } from '../figure.ts';
import { axisArea, beamArea, cutoffSlope, onsetSlope, slopeAtShare } from '../pupil/illumination.ts';
import { clearingSpans } from '../pupil/spaces.ts';
import { rig, seen, workingFNumber } from './aperture.ts';
import { scale, sensorDiagonal } from './first-order.ts';
import { litThreshold, mapping } from './leaves.ts';

const SHARED_AREA = 'shared area of the stops as discs in the pupil, closed form';

/** Slope of the corner's beam in the infinity space. */
const cornerSlope = step({
  id: 'cornerSlope',
  symbol: 't_c',
  words: "slope of the corner's beam in the infinity space",
  needs: [sensorDiagonal, scale],
  of: (d, F) => d / 2 / F,
  as: (d, F) => `${d} / 2 / ${F}`,
});

const wholeArea = step({
  id: 'wholeArea',
  symbol: 'A_0',
  unit: 'mm²',
  words: 'area of the axial beam in the pupil',
  needs: [seen],
  of: axisArea,
});

const onset = step({
  id: 'onsetSlope',
  symbol: 't_onset',
  words: 'slope at which the light begins to fall',
  needs: [seen],
  of: onsetSlope,
});

const cornerArea = step({
  id: 'cornerArea',
  symbol: 'A_c',
  unit: 'mm²',
  words: "area that all stops leave of the corner's beam",
  needs: [seen, cornerSlope, onset],
  of: beamArea,
});

export const cornerIllumination = figure({
  id: 'cornerIllumination',
  unit: '1',
  symbol: 'E_c',
  words: 'light in the corner over light in the middle: the shared area alone; the relay may cost cos⁴ more, which low allows for',
  source: SHARED_AREA,
  needs: [cornerArea, wholeArea, cornerSlope, mapping],
  of: (corner, whole, t, q) => Math.min(1, corner / whole) * (1 - q * (1 - 1 / (1 + t * t) ** 2)),
  as: (corner, whole, t, q) => `min(1, ${corner} / ${whole}) × (1 − ${q} × (1 − 1 / (1 + ${t}²)²))`,
  bounds: [0, 1],
});

export const cornerLossEv = figure({
  id: 'cornerLossEv',
  unit: 'EV',
  symbol: 'ΔEV',
  words: 'light lost in the corner, in stops',
  source: 'definition of the exposure value',
  needs: [cornerIllumination],
  of: (E) => -Math.log2(E) + 0,
  as: (E) => `−log2(${E})`,
});

export const cornerFNumber = figure({
  id: 'cornerFNumber',
  unit: '1',
  symbol: 'N_c',
  words: 'f-number of a whole pupil of the area that is left for the corner',
  source: 'light in proportion to 1/N²',
  needs: [workingFNumber, cornerArea, wholeArea],
  of: (N, corner, whole) => N / Math.sqrt(Math.min(1, corner / whole)),
  as: (N, corner, whole) => `${N} / √(min(1, ${corner} / ${whole}))`,
});

const half = step({
  id: 'halfSlope',
  symbol: 't_half',
  words: 'slope at half light',
  needs: [seen, onset],
  of: (s, from) => slopeAtShare(s, 0.5, from),
});
const cutoff = step({ id: 'cutoffSlope', symbol: 't_dark', words: 'slope at which no light is left', needs: [seen], of: cutoffSlope });
export const litSlope = step({
  id: 'litSlope',
  symbol: 't_lit',
  words: 'slope at which the light has fallen to the threshold',
  needs: [seen, litThreshold, half, onset],
  of: (s, share, atHalf, from) => (share === 0.5 ? atHalf : slopeAtShare(s, share, from)),
});

export const onsetRadiusMm = figure({
  id: 'onsetRadiusMm',
  unit: 'mm',
  symbol: 'r_onset',
  words: 'distance from the middle of the picture at which the light begins to fall',
  source: SHARED_AREA,
  needs: [scale, onset],
  of: (F, t) => F * t,
  as: (F, t) => `${F} × ${t}`,
});

export const halfRadiusMm = figure({
  id: 'halfRadiusMm',
  unit: 'mm',
  symbol: 'r_half',
  words: 'distance from the middle at which half of the light is left, one stop down',
  source: SHARED_AREA,
  needs: [scale, half],
  of: (F, t) => F * t,
  as: (F, t) => `${F} × ${t}`,
});

export const cutoffRadiusMm = figure({
  id: 'cutoffRadiusMm',
  unit: 'mm',
  symbol: 'r_dark',
  words: 'distance from the middle at which no light is left',
  source: SHARED_AREA,
  needs: [scale, cutoff],
  of: (F, t) => F * t,
  as: (F, t) => `${F} × ${t}`,
});

export const litCircleMm = figure({
  id: 'litCircleMm',
  unit: 'mm',
  symbol: 'd_lit',
  words: 'diameter of the circle in which at least the threshold of the light arrives',
  source: SHARED_AREA,
  needs: [scale, litSlope],
  of: (F, t) => 2 * F * t,
  as: (F, t) => `2 × ${F} × ${t}`,
});

const NO_SPACE = Gap.none('a stop cuts the corner at any infinity space');

const greatestSpace = step({
  id: 'greatestSpace',
  symbol: 'S_max',
  unit: 'mm',
  words: "the smallest over the stops of (r_i − r_0)/t_c − z_i + S: the axial beam just passes each at the corner's slope",
  needs: [rig, sensorDiagonal],
  of: (r, d) => {
    const spans = clearingSpans(r, d / 2);
    return spans.length > 0 ? Math.max(...spans.map((span) => span[1])) : NO_SPACE;
  },
});

export const longestUnvignettedSpaceMm = figure({
  id: 'longestUnvignettedSpaceMm',
  unit: 'mm',
  symbol: 'S_clear',
  words: 'longest infinity space at which the corner still gets all of the axial beam, openings and rings held',
  source: "maker's relation L = (D_relay − D_p) f_R / image diameter, over all stops",
  needs: [greatestSpace],
  of: (S) => S,
  as: (S) => S,
});
