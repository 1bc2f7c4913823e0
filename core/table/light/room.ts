import { figure, Gap, openStep, step } from '../../figure.ts';
import { clearWorkingDistanceMm, subjectNearer } from '../../pairing/bench.ts';
import { objectFieldDiagonalMm } from '../../pairing/first-order.ts';
import { clearAperture, immersion, infinitySpace, noseDiameter, numericalAperture, parfocalDistance } from '../../pairing/leaves.ts';
import { DEG_PER_RAD } from '../../units.ts';
import { noseFront, noseTaper } from './settings.ts';

/**
 * From which directions light can reach the plane in focus: straight lines past the edges of the nose and of the
 * relay behind it. Heights are counted from that plane, which is as far from the nose in every frame of a stack.
 */

/** Where a nose tapers, its end; what is told of the end is nearer to the light than a width of the whole. */
export const noseEnd = openStep({
  id: 'noseEnd',
  symbol: 'D_w',
  unit: 'mm',
  words: "width of the nose's end, of the whole nose where no other is told",
  needs: [noseFront.leaf, noseDiameter],
  of: (front, nose) => (typeof front === 'number' ? front : nose),
  as: (front, nose) => front || nose,
});

/** No length is no taper: the end is then all that light meets. */
const taperThere = openStep({
  id: 'noseTaperThere',
  symbol: 'l_w',
  unit: 'mm',
  words: 'length of the taper, if there is one',
  needs: [noseTaper.leaf],
  of: (taper) => (typeof taper === 'number' && taper > 0 ? taper : Gap.unknown('/noseTaperLengthMm')),
  as: (taper) => taper,
});

export const noseWhole = openStep({
  id: 'noseWhole',
  symbol: 'D_h',
  unit: 'mm',
  words: "width of the whole nose above its taper; as wide as its end where an end is told and no taper's length",
  needs: [noseFront.leaf, taperThere, noseDiameter],
  of: (front, taper, nose) => (typeof front === 'number' && typeof taper !== 'number' ? front : nose),
  as: (front, taper, nose) => (front && !taper ? front : nose),
});

const relayHeight = step({
  id: 'relayHeight',
  symbol: 'h_r',
  unit: 'mm',
  words: "height of the relay's rim above the plane in focus",
  needs: [parfocalDistance, subjectNearer, infinitySpace],
  of: (parfocal, nearer, S) => Math.max(0, parfocal - nearer + S),
  as: (parfocal, nearer, S) => `max(0, ${parfocal} − ${nearer} + ${S})`,
});

/** Slope at which light passes the lowest edge, for a point `aside` beyond the axis as seen from the lamp. */
const past = (a: number, end: number, taper: number, nose: number, rim: unknown, high: unknown, aside: number): number =>
  Math.min(
    a / (end / 2 + aside),
    (a + taper) / (nose / 2 + aside),
    typeof rim === 'number' && typeof high === 'number' ? high / (rim / 2 + aside) : Number.POSITIVE_INFINITY,
  );

const NEEDS = [clearWorkingDistanceMm, noseEnd, noseTaper.leaf, noseWhole, clearAperture, relayHeight] as const;
const slopes = (a: string, end: string, taper: string, nose: string, rim: string, high: string, aside: string): string =>
  `min(${[
    `${a} / (${end} / 2${aside})`,
    `(${a} + ${taper}) / (${nose} / 2${aside})`,
    ...(rim && high ? [`${high} / (${rim} / 2${aside})`] : []),
  ].join(', ')})`;

const allNumbers = (values: readonly unknown[]): values is readonly number[] => values.every((v) => typeof v === 'number');
const gapOf = (values: readonly unknown[]): Gap => Gap.join(values.filter((v) => v instanceof Gap));

export const middleSlope = openStep({
  id: 'middleSlope',
  symbol: 't_m',
  words: 'slope of the steepest light that reaches the middle of the field',
  needs: NEEDS,
  of: (a, end, taper, nose, rim, high) => {
    const own = [a, end, taper, nose];
    return allNumbers(own) ? past(...(own as [number, number, number, number]), rim, high, 0) : gapOf(own);
  },
  as: (a, end, taper, nose, rim, high) => slopes(a, end, taper, nose, rim, high, ''),
});

const farSlope = openStep({
  id: 'farSlope',
  symbol: 't_far',
  words: 'slope of the steepest light that reaches the corner of the field farthest from the lamp',
  needs: [...NEEDS, objectFieldDiagonalMm],
  of: (a, end, taper, nose, rim, high, d) => {
    const own = [a, end, taper, nose, d];
    return allNumbers(own) ? past(a as number, end as number, taper as number, nose as number, rim, high, (d as number) / 2) : gapOf(own);
  },
  as: (a, end, taper, nose, rim, high, d) => slopes(a, end, taper, nose, rim, high, ` + ${d} / 2`),
});

const STRAIGHT = 'straight lines past the edges of the nose and of the relay';

export const lightMiddleDeg = figure({
  id: 'lightMiddleDeg',
  unit: '°',
  symbol: 'α_m',
  words: 'how high light may stand above the plane in focus and still reach the middle of the field',
  source: STRAIGHT,
  needs: [middleSlope],
  of: (t) => Math.atan(t) * DEG_PER_RAD,
  as: (t) => `atan(${t}) × 180 / π`,
  bounds: [0, 90],
});

export const lightFarCornerDeg = figure({
  id: 'lightFarCornerDeg',
  unit: '°',
  symbol: 'α_c',
  words: 'the same for the corner of the field farthest from the lamp: below this all of the field is lit',
  source: STRAIGHT,
  needs: [farSlope],
  of: (t) => Math.atan(t) * DEG_PER_RAD,
  as: (t) => `atan(${t}) × 180 / π`,
  bounds: [0, 90],
});

/** `∫cos ε dε` from 0 to α, all round, over 2π: the sine of α. */
export const lightShare = figure({
  id: 'lightShare',
  unit: '1',
  symbol: 'q_h',
  words: 'share of the half-space above the plane in focus from which light can reach the middle of the field',
  source: 'solid angle of a zone of the sphere: the sine of its height, sin(atan t) = t / √(1 + t²)',
  needs: [middleSlope],
  of: (t) => t / Math.sqrt(1 + t * t),
  as: (t) => `${t} / √(1 + ${t}²)`,
  bounds: [0, 1],
});

export const sineOfCone = step({
  id: 'sineOfCone',
  symbol: 's_u',
  words: "sine of the objective's own cone",
  needs: [numericalAperture, immersion],
  of: (NA, n) => NA / n,
  as: (NA, n) => `${NA} / ${n}`,
});

export const objectiveConeDeg = figure({
  id: 'objectiveConeDeg',
  unit: '°',
  symbol: 'u',
  words:
    'half-angle of the cone about the axis that the objective itself takes up: light from within it comes only through the objective, or from below',
  source: 'definition of the numerical aperture, n sin u',
  needs: [sineOfCone],
  of: (s) => Math.asin(Math.min(1, s)) * DEG_PER_RAD,
  as: (s) => `atan(${s} / √(1 − ${s}²)) × 180 / π`,
  bounds: [0, 90],
});
