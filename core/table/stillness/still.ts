import { figure, Gap, type Node } from '../../figure.ts';
import { pixelAtSubjectUm } from '../../pairing/resolution.ts';
import { exposure } from '../exposure.ts';
import { blurPixels, drift, flash, swing, swingRate } from './settings.ts';

/** How still it must stand: movement at the subject against what one pixel sees of it. */

const WAY = 'way = speed × time';
const PENDULUM = 'the longest way of a swing a sin(2π ν t) within t: 2 a sin(π ν t), all of 2 a from half a turn on';
const MS_PER_S = 1000;

export const stillUm = figure({
  id: 'stillUm',
  unit: 'µm',
  symbol: 'x_b',
  words: 'the largest movement at the subject, or of anything against it, that the picture does not show',
  source: 'definition of magnification: what a pixel sees, times the pixels that a point may be drawn out over',
  needs: [blurPixels.leaf, pixelAtSubjectUm],
  of: (b, p) => b * p,
  as: (b, p) => `${b} × ${p}`,
});

export const stillSpeedUmPerS = figure({
  id: 'stillSpeedUmPerS',
  unit: 'µm/s',
  symbol: 'v_b',
  words: 'the greatest speed of a steady movement that the exposure time stops',
  source: WAY,
  needs: [stillUm, exposure.leaf],
  of: (x, t) => x / t,
  as: (x, t) => `${x} / ${t}`,
});

export const flashSpeedUmPerS = figure({
  id: 'flashSpeedUmPerS',
  unit: 'µm/s',
  symbol: 'v_f',
  words: 'the greatest speed of a steady movement that the flash stops, with no other light',
  source: WAY,
  needs: [stillUm, flash.leaf],
  of: (x, t) => (MS_PER_S * x) / t,
  as: (x, t) => `1000 × ${x} / ${t}`,
});

export const longestExposureS = figure({
  id: 'longestExposureS',
  unit: 's',
  symbol: 't_max',
  words: 'the longest exposure that stops the drift',
  source: WAY,
  needs: [stillUm, drift.leaf],
  of: (x, v) => x / v,
  as: (x, v) => `${x} / ${v}`,
});

export const driftPixels = figure({
  id: 'driftPixels',
  unit: '1',
  symbol: 'b_d',
  words: 'pixels over which the drift draws a point out in the exposure time',
  source: WAY,
  needs: [drift.leaf, exposure.leaf, pixelAtSubjectUm],
  of: (v, t, p) => (v * t) / p,
  as: (v, t, p) => `${v} × ${t} / ${p}`,
});

const swung = <const Id extends string>(id: Id, symbol: string, light: string, time: Node<number>, perS: 1 | 1000) =>
  figure({
    id,
    unit: '1',
    symbol,
    words: `pixels over which the swinging draws a point out at most in the light of ${light}`,
    source: PENDULUM,
    needs: [swing.leaf, swingRate.leaf, time, pixelAtSubjectUm],
    of: (a, nu, t, p) => (2 * a * Math.sin(Math.PI * Math.min(0.5, (nu * t) / perS))) / p,
    as: (a, nu, t, p) => `2 × ${a} × sin(π × min(0.5, ${nu} × ${t}${perS === 1 ? '' : ` / ${perS}`})) / ${p}`,
  });

export const swingPixels = swung('swingPixels', 'b_s', 'the whole exposure', exposure.leaf, 1);
export const flashSwingPixels = swung('flashSwingPixels', 'b_f', 'the flash alone', flash.leaf, MS_PER_S);

export const swingExposureS = figure({
  id: 'swingExposureS',
  unit: 's',
  symbol: 't_s',
  words: 'the longest exposure that stops the swinging wherever in its swing it begins',
  source: PENDULUM,
  needs: [stillUm, swing.leaf, swingRate.leaf],
  of: (x, a, nu) =>
    x < 2 * a
      ? (0.5 - Math.acos(x / (2 * a)) / Math.PI) / nu
      : Gap.none('all of the swing is less than the blur allowed: no exposure is too long'),
  as: (x, a, nu) => `(0.5 − acos(${x} / (2 × ${a})) / π) / ${nu}`,
  noneCountsAs: Number.POSITIVE_INFINITY,
});
