import { toldBy } from '../../table/saw/saw.ts';
import { chiSquare95, STANDARD } from '../../table/saw/weigh.ts';
import type { Check } from '../check.ts';
import { pairingOf } from '../rig.ts';

/** A thing so far away that its sharp picture lies in the focus: the reading is the focal length itself. */
const FAR = Number.MAX_SAFE_INTEGER;

/** Any rig: what a lens does alone hangs on nothing else. */
const RIG = pairingOf();

/** The printed numbers are of order 1: they are put in as focal lengths, this one being 1. */
const ONE_MM = RIG.relay.focalLengthMm as number;

/** Readings of one focal length, their half-widths as the roots of the printed variances: what all share weighs nothing. */
const meanOf = (values: readonly number[], variances: readonly number[]): number => {
  const sightings = values.map((value, i) => ({
    kind: 'far' as const,
    imageMm: { value: ONE_MM * value, plusMinus: ONE_MM * Math.sqrt(variances[i] as number) },
    thingMm: FAR,
  }));
  const { results } = toldBy(RIG, { sightings });
  return (results[0]?.value as number) / ONE_MM;
};

export const SIGHTINGS: readonly Check[] = [
  {
    id: 'SAW-001',
    claim: 'readings of unequal variance are weighted by its inverse',
    source: 'weighted-mean',
    known: 'read',
    how: 'six sightings of a far thing, solved backward, over the length that is put in for 1',
    values: [
      {
        printed: '1.3606',
        of: () => meanOf([1.2, 1.3, 1.4, 1.2, 1.3, 1.4], [0.0025, 0.0225, 0.01, 0.0625, 0.5625, 0.0006]),
      },
    ],
  },
  {
    id: 'SAW-002',
    claim: 'a coefficient of expansion that is surely within 0.40e-6 has the standard uncertainty 0.23e-6',
    source: 'uncertainty-guide',
    known: 'from memory',
    how: 'the half-width times the factor by which all half-widths are made standard uncertainties',
    values: [{ printed: '0.23', of: () => 0.4 * STANDARD }],
  },
  {
    id: 'SAW-003',
    claim: 'χ² that is passed five times in a hundred: beyond it readings do not agree',
    source: 'statistics',
    known: 'from memory',
    how: 'the table by which readings are told to disagree',
    values: [
      ['1', '3.841'],
      ['2', '5.991'],
      ['3', '7.815'],
      ['5', '11.070'],
      ['10', '18.307'],
    ].map(([freedom, printed]) => ({
      what: `${freedom} ${freedom === '1' ? 'degree' : 'degrees'} of freedom`,
      printed: printed as string,
      of: () => chiSquare95(Number(freedom)),
    })),
  },
];
