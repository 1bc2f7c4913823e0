import type { Pairing } from '../../index.ts';
import { toldBy } from '../../table/saw/saw.ts';
import { chiSquare95, STANDARD } from '../../table/saw/weigh.ts';
import type { Check } from '../check.ts';

/** A thing so far away that its sharp picture lies in the focus: the reading is the focal length itself. */
const FAR = 1e8;

/** Any rig: what a lens does alone hangs on nothing else. */
const RIG: Pairing = {
  objective: { magnification: 10, na: 0.25, referenceFocalLengthMm: 200 },
  relay: { kind: 'tube-lens', focalLengthMm: 200 },
  sensor: { widthMm: 36, heightMm: 24, pixelPitchUm: 4 },
  infinitySpaceMm: 50,
};

/** The printed numbers are of order 1; as focal lengths they are so many mm. */
const TIMES = 150;

/** Readings of one focal length with the printed variances, a half-width being √3 standard uncertainties. */
const meanOf = (values: readonly number[], variances: readonly number[]): number => {
  const sightings = values.map((value, i) => ({
    kind: 'far' as const,
    imageMm: { value: TIMES * value, plusMinus: TIMES * Math.sqrt(3 * (variances[i] as number)) },
    thingMm: FAR,
  }));
  const { results } = toldBy(RIG, { sightings });
  return (results[0]?.value as number) / TIMES;
};

export const SIGHTINGS: readonly Check[] = [
  {
    id: 'SAW-001',
    claim: 'readings of unequal variance are weighted by its inverse',
    source: 'weighted-mean',
    known: 'read',
    how: 'six sightings of a far thing, solved backward, over the scale in which they are put in as mm',
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
