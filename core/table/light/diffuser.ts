import { figure, Gap, openStep, step } from '../../figure.ts';
import { objectFieldDiagonalMm } from '../../pairing/first-order.ts';
import { besideNose } from './beside.ts';
import { noseOverBack } from './nose.ts';
import { middleSlope, noseEnd, noseWhole, sineOfCone } from './room.ts';
import { diffuserDiameter, diffuserHeight, diffuserThickness, diffuserTop, noseTaper } from './settings.ts';

/** A tube or cone of paper or opal round the subject: whether it fits, and how much of the light it spreads. */

const TOO_THICK = Gap.none("the diffuser's wall is thicker than the diffuser is wide");
const half = (D: number, b: number): number | Gap => (D > 2 * b ? D / 2 - b : TOO_THICK);

export const foot = step({
  id: 'diffuserFoot',
  symbol: 'r_b',
  unit: 'mm',
  words: 'inner half-width of the diffuser where it stands',
  needs: [diffuserDiameter.leaf, diffuserThickness.leaf],
  of: half,
  as: (D, b) => `${D} / 2 − ${b}`,
});

export const top = openStep({
  id: 'diffuserTop',
  symbol: 'r_t',
  unit: 'mm',
  words: 'inner half-width of the diffuser at its top; of a tube as at its foot',
  needs: [diffuserTop.leaf, diffuserThickness.leaf, foot],
  of: (D, b, r) => (typeof D === 'number' ? half(D, b as number) : r),
  as: (D, b, r) => (D ? `${D} / 2 − ${b}` : r),
});

const height = diffuserHeight.leaf;

/** The beam that makes the picture is as wide as the field where it begins and grows with the aperture, up to the nose. */
const besideBeam = step({
  id: 'diffuserBesideBeam',
  symbol: 'a_u',
  unit: 'mm',
  words: "what is left, all round, between the diffuser and the light that makes the picture: field and objective's cone",
  needs: [foot, top, height, noseOverBack, objectFieldDiagonalMm, sineOfCone],
  of: (b, t, H, a, d, s) => {
    const up = Math.min(H, a);
    return Math.min(b - d / 2, b + ((t - b) * up) / H - d / 2 - (up * s) / Math.sqrt(1 - s * s));
  },
  as: (b, t, H, a, d, s) =>
    `min(${b} − ${d} / 2, ${b} + (${t} − ${b}) × min(${H}, ${a}) / ${H} − ${d} / 2 − min(${H}, ${a}) × ${s} / √(1 − ${s}²))`,
});

const besideTheNose = step({
  id: 'diffuserBesideNose',
  symbol: 'a_w',
  unit: 'mm',
  words: 'what is left, all round, between the diffuser and a nose let down into it',
  needs: [foot, top, height, noseOverBack, noseEnd, noseWhole, noseTaper.leaf],
  of: (b, t, H, a, end, whole, taper) => besideNose({ end: end / 2, whole: whole / 2, taper }, a, { foot: b, top: t, height: H }),
});

export const diffuserSpareMm = figure({
  id: 'diffuserSpareMm',
  unit: 'mm',
  symbol: 'a_d',
  words:
    'what the diffuser has to spare: it has to end below the nose or let it in, whichever is easier, and to keep out of the picture; below 0 it does not fit by so much',
  source: 'straight edges in the plane of the axis',
  needs: [besideBeam, noseOverBack, height, besideTheNose],
  of: (beam, a, H, side) => Math.min(beam, Math.max(a - H, side)),
  as: (beam, a, H, side) => `min(${beam}, max(${a} − ${H}, ${side}))`,
  bounds: [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
});

const litSlope = step({
  id: 'diffuserSlope',
  symbol: 't_d',
  words: "slope of the diffuser's upper edge as the middle of the subject sees it, as far as light gets there",
  needs: [middleSlope, height, top],
  of: (t, H, r) => Math.min(t, H / r),
  as: (t, H, r) => `min(${t}, ${H} / ${r})`,
});

export const diffuserShare = figure({
  id: 'diffuserShare',
  unit: '1',
  symbol: 'q_d',
  words: 'share of the half-space above the subject that the diffuser fills with light: the more, the softer',
  source: 'solid angle of a zone of the sphere: the sine of its height',
  needs: [litSlope],
  of: (t) => t / Math.sqrt(1 + t * t),
  as: (t) => `${t} / √(1 + ${t}²)`,
  bounds: [0, 1],
});
