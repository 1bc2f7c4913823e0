import { figure, Gap, openFigure, openStep } from '../../figure.ts';
import { relayFocalLengthMm } from '../../pairing/first-order.ts';
import { relayKind } from '../../pairing/leaves.ts';
import { MM_PER_M } from '../../units.ts';
import { ownFocalLength, secondPower, separation } from './settings.ts';

/** What is screwed on: one close-up lens, or two with the second before the first. */

const NO_CLOSE_UP = 'the relay is no close-up lens: give the focal length of one';

/** The one told on the table, else the pairing's relay where it is a close-up lens. */
export const firstFocalLength = openStep({
  id: 'firstFocalLength',
  symbol: 'f_1',
  unit: 'mm',
  words: 'focal length of the close-up lens on the camera lens',
  needs: [ownFocalLength.leaf, relayKind, relayFocalLengthMm],
  of: (own, kind, relay) => (typeof own === 'number' ? own : kind === 'supplementary' ? relay : Gap.none(NO_CLOSE_UP)),
  as: (own, _, relay) => own || relay,
});

export const closeUpPowerDioptre = openFigure({
  id: 'closeUpPowerDioptre',
  unit: 'D',
  symbol: 'P_cu',
  words: 'power of all close-up lenses together: powers add, a little less the farther apart they stand',
  source: 'definition of the dioptre; two thin lenses d apart: P = P₁ + P₂ − d P₁ P₂',
  needs: [firstFocalLength, secondPower.leaf, separation.leaf],
  of: (f, P2, d) => {
    if (typeof f !== 'number') return f;
    if (typeof P2 !== 'number') return MM_PER_M / f;
    if (typeof d !== 'number') return d;
    return d < f ? MM_PER_M / f + P2 - (d * P2) / f : Gap.none('the two close-up lenses stand farther apart than the first one can see');
  },
  as: (f, P2, d) => (P2 && d ? `1000 / ${f} + ${P2} − ${d} × ${P2} / ${f}` : `1000 / ${f}`),
});

export const closeUpPlaneMm = openFigure({
  id: 'closeUpPlaneMm',
  unit: 'mm',
  symbol: 'h_cu',
  words: 'how far behind the front lens the principal plane of the two lies, from which their focal length counts',
  source: 'two thin lenses d apart: d f / f₁, with f of both and f₁ of the one that is farther from the subject',
  needs: [firstFocalLength, closeUpPowerDioptre, secondPower.leaf, separation.leaf],
  of: (f, P, P2, d) => {
    if (typeof f !== 'number') return f;
    if (typeof P2 !== 'number') return Gap.none('one close-up lens alone: its own principal plane counts');
    if (typeof P !== 'number') return P;
    return typeof d === 'number' ? (MM_PER_M * d) / (P * f) : d;
  },
  as: (f, P, _, d) => `1000 × ${d} / (${P} × ${f})`,
});

/** Lens powers as a check of what a maker engraves: the focal length of all together. */
export const closeUpFocalMm = figure({
  id: 'closeUpFocalMm',
  unit: 'mm',
  symbol: 'f_cu',
  words: 'focal length of all close-up lenses together',
  source: 'definition of the dioptre',
  needs: [closeUpPowerDioptre],
  of: (P) => MM_PER_M / P,
  as: (P) => `1000 / ${P}`,
});
