import { farthestOffset, offsetAtStrehl } from '../../aberration/off-infinity.ts';
import { figure, Gap, step } from '../../figure.ts';
import { objectiveFocalLengthMm, principalPlaneDistance, relayFocalLengthMm, scale } from '../../pairing/first-order.ts';
import { immersion, sensorOffset } from '../../pairing/leaves.ts';
import { chain, conjugates, SINE_CONDITION, shiftAt } from './offset.ts';
import { magnificationTolerance, shiftLimit, strehlLimit, tubeError } from './settings.ts';

/** A tube that is longer or shorter than right: what it does, and how wrong it may be. */

const wrongOffset = step({
  id: 'wrongOffset',
  symbol: 's_t',
  unit: 'mm',
  words: "sensor beyond the relay's focus, with the error of the tube",
  needs: [sensorOffset, tubeError.leaf],
  of: (s, t) => s + t,
  as: (s, t) => `${s} + ${t}`,
});

const ownShift = shiftAt({ id: 'own', mark: '0', when: 'without the error' }, sensorOffset, scale);
export const tube = chain({ id: 'tube', mark: 't', when: 'with the tube as wrong as that' }, wrongOffset, { scale, shift: ownShift });

const NEVER = "spherical aberration does not take the sharpness within the relay's own focal length";

/** How far from the relay's focus the sensor stands when the Strehl ratio has fallen to the limit. */
const sharpEnd = (sense: 1 | -1, id: string, symbol: string, way: string) =>
  step({
    id,
    symbol,
    unit: 'mm',
    words: `how far ${way} the relay's focus spherical aberration has taken the Strehl ratio to its limit`,
    needs: [conjugates, strehlLimit.leaf],
    of: (rig, limit) => Math.abs(offsetAtStrehl(rig, limit, sense)),
  });
/** As far as the relay is followed: what happens beyond is not known. */
const reach = (sense: 1 | -1, id: string, symbol: string, way: string) =>
  step({
    id,
    symbol,
    unit: 'mm',
    words: `how far ${way} the relay's focus it is still a tube lens, and is followed`,
    needs: [conjugates],
    of: (rig) => Math.abs(farthestOffset(rig, sense)),
  });
const farReach = reach(1, 'farReach', 's_r', 'beyond');
const nearReach = reach(-1, 'nearReach', 's_v', 'before');

const farEnd = sharpEnd(1, 'farSharpEnd', 's_l', 'beyond');
const nearEnd = sharpEnd(-1, 'nearSharpEnd', 's_k', 'before');

export const sharpLongerMm = figure({
  id: 'sharpLongerMm',
  unit: 'mm',
  symbol: 'τ_Ql',
  words: 'how much longer than right the tube may be before spherical aberration shows',
  source: SINE_CONDITION,
  needs: [farEnd, farReach, sensorOffset],
  of: (end, reach, s) => Math.max(0, Math.min(end, reach) - s),
  as: (end, reach, s) => `max(0, min(${end}, ${reach}) − ${s})`,
});

export const sharpShorterMm = figure({
  id: 'sharpShorterMm',
  unit: 'mm',
  symbol: 'τ_Qs',
  words: 'how much shorter than right the tube may be before spherical aberration shows',
  source: SINE_CONDITION,
  needs: [nearEnd, nearReach, sensorOffset],
  of: (end, reach, s) => Math.max(0, Math.min(end, reach) + s),
  as: (end, reach, s) => `max(0, min(${end}, ${reach}) + ${s})`,
});

export const magnificationToleranceMm = figure({
  id: 'magnificationToleranceMm',
  unit: 'mm',
  symbol: 'τ_m',
  words: 'how wrong the tube may be, longer or shorter, before the magnification is off by more than its share',
  source: 'm (1 − (z_H − f_R) s / f_R²), backward',
  needs: [magnificationTolerance.leaf, relayFocalLengthMm, scale, principalPlaneDistance],
  of: (q, f, F, z) => (q * f * F) / Math.max(z - f, f - z),
  as: (q, f, F, z) => `${q} × ${f} × ${F} / max(${z} − ${f}, ${f} − ${z})`,
});

/** The offset at which the subject is `limit` from where it belongs; the subject moves against the sensor. */
const shiftEnd = (sense: 1 | -1, id: string, symbol: string, way: string) => {
  const optical = step({
    id: `${id}Optical`,
    symbol: `B_${symbol}`,
    unit: 'mm',
    words: `optical length by which the subject is nearer than the objective's focal plane, at its limit, ${way}`,
    needs: [ownShift, immersion, shiftLimit.leaf],
    of: (B, n, limit) => B + sense * n * limit,
    as: (B, n, limit) => (sense === 1 ? `${B} + ${n} × ${limit}` : `${B} − ${n} × ${limit}`),
  });
  const room = step({
    id: `${id}Room`,
    symbol: `R_${symbol}`,
    unit: 'mm²',
    words: 'what the way of the light between the lenses leaves of n² f_o²',
    needs: [immersion, objectiveFocalLengthMm, optical, principalPlaneDistance, relayFocalLengthMm],
    of: (n, fo, B, z, f) => Math.max(0, n * n * fo * fo + B * (z - f)),
    as: (n, fo, B, z, f) => `max(0, ${n}² × ${fo}² + ${B} × (${z} − ${f}))`,
  });
  return step({
    id,
    symbol,
    unit: 'mm',
    words: `how wrong the tube may be before the subject stands too far from where it belongs, ${way}`,
    needs: [optical, relayFocalLengthMm, room, sensorOffset],
    of: (B, f, R, s) => (R > 0 ? Math.max(0, sense * ((B * f * f) / R - s)) : Number.POSITIVE_INFINITY),
    as: (B, f, R, s) => (sense === 1 ? `max(0, ${B} × ${f}² / ${R} − ${s})` : `max(0, ${s} − (${B}) × ${f}² / ${R})`),
  });
};
const shiftLonger = shiftEnd(1, 'shiftLonger', 'τ_δl', 'a longer tube');
const shiftShorter = shiftEnd(-1, 'shiftShorter', 'τ_δs', 'a shorter tube');

const SMALLEST = 'the smallest of what magnification, sharpness and the place of the subject allow';

export const tubeLongerMm = figure({
  id: 'tubeLongerMm',
  unit: 'mm',
  symbol: 'τ_l',
  words: 'how much longer than right the tube may be',
  source: SMALLEST,
  needs: [magnificationToleranceMm, sharpLongerMm, shiftLonger],
  of: (m, Q, d) => Math.min(m, Q, d),
  as: (m, Q, d) => `min(${m}, ${Q}, ${d})`,
});

export const tubeShorterMm = figure({
  id: 'tubeShorterMm',
  unit: 'mm',
  symbol: 'τ_s',
  words: 'how much shorter than right the tube may be',
  source: SMALLEST,
  needs: [magnificationToleranceMm, sharpShorterMm, shiftShorter],
  of: (m, Q, d) => Math.min(m, Q, d),
  as: (m, Q, d) => `min(${m}, ${Q}, ${d})`,
});

export const tubeToleranceMm = figure({
  id: 'tubeToleranceMm',
  unit: 'mm',
  symbol: 'τ_0',
  words: 'how wrong the tube may be, whichever way',
  source: SMALLEST,
  needs: [tubeShorterMm, tubeLongerMm],
  of: (shorter, longer) => Math.min(shorter, longer),
  as: (shorter, longer) => `min(${shorter}, ${longer})`,
});

export const longestOffsetMm = figure({
  id: 'longestOffsetMm',
  unit: 'mm',
  symbol: 's_long',
  words: "off infinity on purpose: how far beyond the relay's focus the sensor may stand before spherical aberration shows",
  source: SINE_CONDITION,
  needs: [farEnd],
  of: (s) => (s === Number.POSITIVE_INFINITY ? Gap.none(NEVER) : s),
  as: (s) => s,
  noneCountsAs: Number.POSITIVE_INFINITY,
});

export const shortestOffsetMm = figure({
  id: 'shortestOffsetMm',
  unit: 'mm',
  symbol: 's_short',
  words: "off infinity on purpose: how far before the relay's focus the sensor may stand before spherical aberration shows",
  source: SINE_CONDITION,
  needs: [nearEnd],
  of: (s) => (s === Number.POSITIVE_INFINITY ? Gap.none(NEVER) : s),
  as: (s) => s,
  noneCountsAs: Number.POSITIVE_INFINITY,
});

const magnificationThere = <const Id extends string>(
  id: Id,
  symbol: string,
  sense: 1 | -1,
  offset: typeof longestOffsetMm | typeof shortestOffsetMm,
) =>
  figure({
    id,
    unit: '1',
    symbol,
    words: `magnification at the ${sense === 1 ? 'longest' : 'shortest'} extension that is still sharp`,
    source: 'm (1 − (z_H − f_R) s / f_R²)',
    needs: [relayFocalLengthMm, offset, principalPlaneDistance, objectiveFocalLengthMm],
    of: (f, s, z, fo) => (f + sense * (s as number) - (sense * z * (s as number)) / f) / fo,
    as: (f, s, z, fo) => (sense === 1 ? `(${f} + ${s} − ${z} × ${s} / ${f}) / ${fo}` : `(${f} − ${s} + ${z} × ${s} / ${f}) / ${fo}`),
    // Where the extension has no end neither has this: its ± is of the rigs that have one.
    noneCountsAs: Number.NaN,
  });
export const longestMagnification = magnificationThere('longestMagnification', 'm_l', 1, longestOffsetMm);
export const shortestMagnification = magnificationThere('shortestMagnification', 'm_k', -1, shortestOffsetMm);
