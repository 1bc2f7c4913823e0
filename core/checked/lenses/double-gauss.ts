import { glassNamed } from '../../glass/glasses.ts';
import type { Medium } from '../../glass/medium.ts';
import { cardinal } from '../../trace/cardinal.ts';
import { colourBySurface, colourFringes, colourSums } from '../../trace/colour.ts';
import type { Lens } from '../../trace/lens.ts';
import { type RayPair, rayPair } from '../../trace/paraxial-rays.ts';
import { type Prescription, prescription } from '../../trace/prescription.ts';
import { seidelBySurface, type Transverse, transverse } from '../../trace/seidel.ts';
import type { Check, Value } from '../check.ts';
import { ofLens, type PrintedLens } from './printed-lens.ts';
import { entrancePupilMm } from './pupil-of-stop.ts';

const media = (...names: string[]): Medium[] => names.map((name) => glassNamed(name) as Medium);

const LENS: PrintedLens = {
  radii: ['56.20238', '152.28580', '37.68262', 'plane', '24.23130', 'plane', '-28.37731', 'plane', '-37.92546', '177.41176', '-79.41143'],
  thicknessesMm: [8.75, 0.5, 12.5, 3.8, 16.369445, 13.747957, 3.8, 11, 0.5, 7],
  media: media('N-SSK2', 'air', 'N-SK2', 'F5', 'air', 'air', 'F5', 'N-SK16', 'air', 'N-SK16'),
};
const STOP = 5;
const LAST = 10;
const PUPIL_MM = 50;
const FIELD = Math.tan((14 * Math.PI) / 180);
const [BLUE, MIDDLE, RED] = [486.1, 587.6, 656.3];

/** Height, slope behind, and index times incidence of the marginal ray at each surface. */
const MARGINAL = [
  ['25.000000', '-0.170628', '0.444821'],
  ['23.507005', '-0.180751', '-0.026390'],
  ['23.416630', '-0.347265', '0.440667'],
  ['19.075817', '-0.348123', '-0.558186'],
  ['17.752950', '-0.116096', '0.616549'],
  ['15.852527', '-0.116096', '-0.116096'],
  ['14.256448', '0.116660', '-0.618485'],
  ['14.699756', '0.115437', '0.187054'],
  ['15.969559', '-0.074185', '-0.495263'],
  ['15.932466', '-0.080166', '0.015620'],
  ['15.371307', '-0.249991', '-0.443556'],
] as const;

/** At each surface: spherical aberration, tangential coma, tangential and sagittal field, Petzval, distortion. */
const THIRD_ORDER = [
  ['-1.040587', '0.053227', '-0.531277', '-0.530672', '-0.530370', '0.009048'],
  ['-0.002474', '0.078453', '-0.633384', '-0.080636', '0.195737', '0.852194'],
  ['-0.320986', '-0.086051', '-0.786925', '-0.781799', '-0.779236', '-0.069862'],
  ['-0.012707', '0.037799', '-0.037480', '-0.012493', '0.000000', '0.012388'],
  ['1.363481', '0.846376', '1.382005', '1.265253', '1.206876', '0.261800'],
  ['0.000000', '0.000000', '0.000000', '0.000000', '0.000000', '0.000000'],
  ['2.059866', '-2.025339', '1.694345', '1.251814', '1.030548', '-0.410277'],
  ['-0.001561', '-0.012725', '-0.034567', '-0.011522', '0.000000', '-0.031301'],
  ['-1.139327', '0.540680', '-0.870024', '-0.813005', '-0.784496', '0.128607'],
  ['0.000192', '0.014807', '0.212677', '-0.040909', '-0.167702', '-1.050920'],
  ['-1.212851', '0.589843', '-0.470280', '-0.406534', '-0.374661', '0.065903'],
] as const;

/** Along the axis and across the field at each surface, and their sums. */
const AXIAL = [
  '-0.320428',
  '-0.017875',
  '-0.275440',
  '0.137441',
  '0.433452',
  '0.000000',
  '0.349174',
  '0.039049',
  '-0.200884',
  '-0.006321',
  '-0.173172',
  '-0.035003',
];
const LATERAL = [
  '0.005463',
  '0.188905',
  '-0.024614',
  '-0.136283',
  '0.089688',
  '0.000000',
  '-0.114441',
  '0.106081',
  '0.031777',
  '-0.162376',
  '0.028073',
  '0.012274',
];

interface Seen {
  readonly lens: Lens;
  readonly middle: Prescription;
  readonly pair: RayPair;
  readonly imageSlope: number;
}

function seen(lens: Lens): Seen {
  const middle = prescription(lens, MIDDLE);
  const pair = rayPair(middle, { pupilRadiusMm: PUPIL_MM / 2, pupilDistanceMm: entrancePupilMm(middle, STOP), slope: FIELD });
  return { lens, middle, pair, imageSlope: pair.marginal.slope[LAST + 1] as number };
}

const value = (what: string, printed: string, of: (seen: Seen) => number): Value => ofLens(LENS, what, printed, (lens) => of(seen(lens)));

/** From the last vertex to where the chief ray crosses the axis behind the lens. */
const exitPupilMm = ({ pair: { chief } }: Seen): number => -(chief.height[LAST] as number) / (chief.slope[LAST + 1] as number);

const COLUMNS = [
  ['sphericalMm', 'spherical'],
  ['tangentialComaMm', 'tangential coma'],
  ['tangentialFieldMm', 'tangential field'],
  ['sagittalFieldMm', 'sagittal field'],
  ['petzvalFieldMm', 'Petzval field'],
  ['distortionMm', 'distortion'],
] as const;

const thirdOrder =
  (surface: number, column: keyof Transverse) =>
  ({ middle, pair, imageSlope }: Seen): number =>
    transverse(seidelBySurface(middle, pair)[surface] as ReturnType<typeof seidelBySurface>[number], imageSlope)[column];

/** Of a surface; of the whole lens for the one behind the last. */
const fringe =
  (surface: number, column: 'axialMm' | 'lateralMm') =>
  ({ lens, middle, pair, imageSlope }: Seen): number => {
    const surfaces = colourBySurface(middle, prescription(lens, BLUE), prescription(lens, RED), pair);
    return colourFringes(surfaces[surface] ?? colourSums(surfaces), imageSlope)[column];
  };

const name = (surface: number): string => (surface > LAST ? 'sum' : `surface ${surface + 1}`);

export const DOUBLE_GAUSS: readonly Check[] = [
  {
    id: 'RAY-101',
    claim: 'focal length, back and front focal length and f-number of a double Gauss',
    source: 'lens-listing',
    known: 'read',
    how: 'the cardinal points',
    values: [
      value('focal length', '100.0038', ({ middle }) => cardinal(middle).effectiveFocalLengthMm),
      value('back focal length', '61.4875', ({ middle }) => cardinal(middle).backFocalLengthMm),
      value('front focal length', '-29.3208', ({ middle }) => cardinal(middle).frontFocalLengthMm),
      value('f-number', '2.0001', ({ middle }) => cardinal(middle).effectiveFocalLengthMm / PUPIL_MM),
    ],
  },
  {
    id: 'RAY-102',
    claim: 'its entrance and exit pupil, and the paraxial image height at 14°',
    source: 'lens-listing',
    known: 'read',
    how: 'a paraxial ray through the middle of the stop; the exit pupil as wide as the marginal ray is there',
    values: [
      value('entrance pupil', '57.9120', ({ middle }) => -entrancePupilMm(middle, STOP)),
      value('exit pupil', '-53.1569', exitPupilMm),
      value('its diameter', '57.3201', (of) => 2 * ((of.pair.marginal.height[LAST] as number) + exitPupilMm(of) * of.imageSlope)),
      value('image height', '24.9337', ({ middle, pair: { chief } }) => {
        const back = cardinal(middle).backFocalLengthMm;
        return (chief.height[LAST] as number) + back * (chief.slope[LAST + 1] as number);
      }),
    ],
  },
  {
    id: 'RAY-103',
    claim: 'its marginal ray: height, slope, and index times incidence at each surface',
    source: 'lens-listing',
    known: 'read',
    how: 'the marginal ray, surface by surface',
    values: MARGINAL.flatMap(([height, slope, incidence], k) => [
      value(`${name(k)}, height`, height, ({ pair: { marginal } }) => marginal.height[k] as number),
      value(`${name(k)}, slope`, slope, ({ pair: { marginal } }) => marginal.slope[k + 1] as number),
      value(`${name(k)}, incidence`, incidence, ({ pair: { marginal } }) => marginal.incidence[k] as number),
    ]),
  },
  {
    id: 'RAY-105',
    claim: 'its transverse third-order aberrations at each surface',
    source: 'lens-listing',
    known: 'read',
    how: 'what each surface adds to the Seidel sums, as lengths at the image',
    values: THIRD_ORDER.flatMap((row, k) =>
      row.map((text, i) => {
        const [column, words] = COLUMNS[i] as (typeof COLUMNS)[number];
        return value(`${name(k)}, ${words}`, text, thirdOrder(k, column));
      }),
    ),
  },
  {
    id: 'RAY-107',
    claim: 'its axial and lateral colour between 486.1 and 656.3 nm at each surface, and the sums',
    source: 'lens-listing',
    known: 'read',
    how: 'what each surface adds to the colour sums, as lengths at the image',
    values: [
      ...AXIAL.map((text, k) => value(`${name(k)}, axial`, text, fringe(k, 'axialMm'))),
      ...LATERAL.map((text, k) => value(`${name(k)}, lateral`, text, fringe(k, 'lateralMm'))),
    ],
  },
];
