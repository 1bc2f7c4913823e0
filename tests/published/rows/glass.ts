import { LUMINOUS_EFFICIENCY } from '../../../core/diffraction/spectrum.ts';
import { achromatPowers, secondarySpectrum } from '../../../core/glass/achromat.ts';
import { glassNamed } from '../../../core/glass/glasses.ts';
import { abbeNumber, indexAtLine, LINES, type Line, partialDispersion } from '../../../core/glass/lines.ts';
import type { Medium } from '../../../core/glass/medium.ts';
import { normalPartialDispersion, offNormalLine } from '../../../core/glass/normal.ts';
import type { Row, Value } from '../row.ts';
import { GLASS_CATALOGUE } from '../sources.ts';

const named = (name: string): Medium => glassNamed(name) as Medium;

/** Glass, n_d and V_d as the catalogue prints them. */
const CATALOGUE = [
  ['GLS-101', 'N-BK7', '1.51680', '64.17'],
  ['GLS-102', 'N-BAK4', '1.56883', '55.98'],
  ['GLS-103', 'N-SK16', '1.62041', '60.32'],
  ['GLS-104', 'N-SSK5', '1.65844', '50.88'],
  ['GLS-105', 'N-LAK22', '1.65113', '55.89'],
  ['GLS-106', 'N-BAF10', '1.67003', '47.11'],
  ['GLS-107', 'N-F2', '1.62005', '36.43'],
  ['GLS-108', 'F2', '1.62004', '36.37'],
  ['GLS-109', 'SF2', '1.64769', '33.85'],
  ['GLS-111', 'SF5', '1.67270', '32.21'],
  ['GLS-112', 'N-SF6', '1.80518', '25.36'],
  ['GLS-114', 'SF10', '1.72825', '28.41'],
  ['GLS-116', 'N-FK51A', '1.48656', '84.47'],
] as const;

/** N-BK7 at the lines of its data sheet. */
const DATA_SHEET: readonly (readonly [Line, string])[] = [
  ['i', '1.53627'],
  ['h', '1.53024'],
  ['g', '1.52668'],
  ["F'", '1.52283'],
  ['F', '1.52238'],
  ['e', '1.51872'],
  ['d', '1.51680'],
  ["C'", '1.51472'],
  ['C', '1.51432'],
  ['r', '1.51289'],
  ['s', '1.50980'],
  ['t', '1.50731'],
];

/** Glass and index at 656.3, 587.6 and 486.1 nm. */
const LISTING = [
  ['N-SSK2', '1.618769', '1.622292', '1.630455'],
  ['N-SK2', '1.604134', '1.607379', '1.614860'],
  ['F5', '1.598744', '1.603417', '1.614617'],
  ['N-SK16', '1.617271', '1.620408', '1.627559'],
] as const;

/** K7's own share between two lines, and the normal line there, worked out for V_d = 60.406. */
const K7_LINES: readonly (readonly [Line, Line, string])[] = [
  ['C', 't', '0.8315'],
  ['F', 'e', '0.4566'],
  ['g', 'F', '0.5422'],
  ['i', 'g', '1.2178'],
];

/** How far P_gF lies off the normal line. */
const OFF_LINE = [
  ['N-BK7', '-0.0009'],
  ['F2', '0.0002'],
  ['N-SSK2', '-0.0016'],
  ['N-KZFS11', '-0.0120'],
  ['N-SF57', '0.0178'],
  ['N-FK51A', '0.0342'],
] as const;

/** V(λ) from 380 to 780 nm, every 10, as printed but for zeros at the end. */
const EYE = `
  0.00003900 0.00012000 0.00039600 0.00121000 0.00400000 0.01160000 0.02300000 0.03800000
  0.06000000 0.09098000 0.13902000 0.20802000 0.32300000 0.50300000 0.71000000 0.86200000
  0.95400000 0.99495010 0.99500000 0.95200000 0.87000000 0.75700000 0.63100000 0.50300000
  0.38100000 0.26500000 0.17500000 0.10700000 0.06100000 0.03200000 0.01700000 0.00821000
  0.00410200 0.00209100 0.00104700 0.00052000 0.00024920 0.00012000 0.00006000 0.00003000
  0.00001499`
  .trim()
  .split(/\s+/);

/** Both of an achromat's thin lenses, `told` by their powers. */
const achromat = (
  [power, first, second]: readonly [number, number, number],
  printed: readonly [string, string],
  told: (power: number) => number,
): readonly Value[] =>
  ([0, 1] as const).map((i) => ({
    what: ['first', 'second'][i] as string,
    printed: printed[i],
    of: () => told(achromatPowers(power, first, second)[i]),
  }));
const asFocalLength = (power: number): number => 1 / power;

export const GLASS: readonly Row[] = [
  {
    id: 'GLS-001',
    claim: 'normal lines P = a + b V_d: K7, one of the two glasses that define them, lies on them',
    source: {
      title: 'Optical Glass',
      by: 'P. Hartmann, SPIE Press PM249',
      year: 2014,
      where: 'p. 37, eq. 3.10: (C,t) .5450 + .004743 V, (F,e) .4884 - .000526 V, (g,F) .6438 - .001682 V, (i,g) 1.7241 - .008382 V',
    },
    known: 'formula read',
    how: "partialDispersion of K7; slack from the lines' own last digits. (C,s) is left out: today's K7 lies 0.0001 off it",
    values: [
      ...K7_LINES.map(([x, y, text]) => ({
        what: `${x},${y}`,
        printed: text,
        of: () => partialDispersion(named('K7'), x, y),
        slack: 0.00005 + 0.0000005 * 60.4,
      })),
      { what: 'g,F line', printed: '0.5422', of: () => normalPartialDispersion(60.406) },
    ],
  },
  {
    id: 'GLS-003',
    claim: 'how far six glasses lie off the normal line in P_gF, from -0.0120 to 0.0342',
    source: GLASS_CATALOGUE,
    known: 'read',
    how: 'offNormalLine',
    values: OFF_LINE.map(([name, text]) => ({ what: name, printed: text, of: () => offNormalLine(named(name)) })),
  },
  ...CATALOGUE.map(
    ([id, name, nd, vd]): Row => ({
      id,
      claim: `${name}: n_d ${nd}, V_d ${vd}`,
      source: GLASS_CATALOGUE,
      known: 'read',
      how: "Sellmeier's formula, abbeNumber",
      values: [
        { what: 'n_d', printed: nd, of: () => indexAtLine(named(name), 'd') },
        { what: 'V_d', printed: vd, of: () => abbeNumber(named(name), 'd') },
      ],
    }),
  ),
  {
    id: 'GLS-201',
    claim: 'N-BK7 at twelve spectral lines from 365 to 1014 nm; V_e 63.96',
    source: { title: 'N-BK7 data sheet', by: 'Schott' },
    known: 'from memory',
    how: "Sellmeier's formula at LINES",
    values: [
      ...DATA_SHEET.map(([line, text]) => ({
        what: `${line}, ${LINES[line]} nm`,
        printed: text,
        of: () => indexAtLine(named('N-BK7'), line),
      })),
      { what: 'V_e', printed: '63.96', of: () => abbeNumber(named('N-BK7'), 'e') },
    ],
  },
  {
    id: 'GLS-202',
    claim: 'calcium fluoride: n_d 1.43385, V_d 95.0',
    source: {
      title: 'A redetermination of some optical properties of calcium fluoride',
      by: 'I. H. Malitson, Appl. Opt. 2, 1103',
      year: 1963,
      where: "n_d also read in the glass catalogue of 2017, whose V_d, 95.23, is another melt's",
    },
    known: 'from memory',
    how: "Sellmeier's formula with the squared resonance wavelengths",
    values: [
      { what: 'n_d', printed: '1.43385', of: () => indexAtLine(named('CaF2'), 'd') },
      { what: 'V_d', printed: '95.0', of: () => abbeNumber(named('CaF2'), 'd') },
    ],
  },
  {
    id: 'GLS-203',
    claim: 'fused silica: n_d 1.45846, V_d 67.8',
    source: {
      title: 'Interspecimen comparison of the refractive index of fused silica',
      by: 'I. H. Malitson, J. Opt. Soc. Am. 55, 1205',
      year: 1965,
    },
    known: 'from memory',
    how: "Sellmeier's formula with the squared resonance wavelengths",
    values: [
      { what: 'n_d', printed: '1.45846', of: () => indexAtLine(named('fused silica'), 'd') },
      { what: 'V_d', printed: '67.8', of: () => abbeNumber(named('fused silica'), 'd') },
    ],
  },
  {
    id: 'RAY-100',
    claim: 'N-SSK2, N-SK2, F5 and N-SK16 at 656.3, 587.6 and 486.1 nm, in the listing of a published f/2 double Gauss',
    source: {
      title: 'Double Gauss F/2, available glasses',
      by: 'a lens listing with its refractive indices, kept with the tests of an open library',
      year: 2017,
    },
    known: 'read',
    how: "Sellmeier's formula",
    values: LISTING.flatMap(([name, ...printed]) =>
      printed.map((text, i) => ({
        what: `${name}, ${[656.3, 587.6, 486.1][i]} nm`,
        printed: text,
        of: () => named(name).indexAt([656.3, 587.6, 486.1][i] as number),
      })),
    ),
  },
  {
    id: 'VL-001',
    claim: "the eye's photopic luminous efficiency, 41 samples from 380 to 780 nm",
    source: {
      title: 'CIE 1924 photopic luminous efficiency',
      by: 'CIE, in the tables of the Colour & Vision Research Laboratory',
      year: 1924,
      where: 'cvrl.org, read in a copy',
    },
    known: 'read',
    how: 'LUMINOUS_EFFICIENCY',
    values: EYE.map((text, i) => ({
      what: `${380 + 10 * i} nm`,
      printed: text,
      of: () => LUMINOUS_EFFICIENCY.get(380 + 10 * i) as number,
    })),
  },
  {
    id: 'ACH-001',
    claim: 'thin achromat of BK7 and F2: the crown 0.43 f, the flint -0.76 f',
    source: { title: '9.1 Refracting telescope objective: achromats', by: 'telescope-optics.net' },
    known: 'read',
    how: 'achromatPowers of the Abbe numbers 64.17 and 36.37',
    values: achromat([1, 64.17, 36.37], ['0.43', '-0.76'], asFocalLength),
  },
  {
    id: 'ACH-003',
    claim: 'thin achromat of 200 mm, N-BK7 and SF2: 94.5 and -179.1 mm',
    source: {
      title: 'Optical Engineering Science, ch. 4, aplanatic doublet',
      by: 'S. Rolt, Wiley',
      year: 2020,
      where: 'of its radii 121.25, -81.78 and -281.88; the third, printed as -81.29, contradicts them by a turned digit pair',
    },
    known: 'formula read',
    how: 'achromatPowers of the Abbe numbers of the two glasses',
    values: achromat([1 / 200, abbeNumber(named('N-BK7'), 'd'), abbeNumber(named('SF2'), 'd')], ['94.5', '-179.1'], asFocalLength),
  },
  {
    id: 'ACH-004',
    claim: 'thin achromat of 2 dioptres, V 63.46 and 36.37: 4.685 and -2.685 dioptres',
    source: { title: 'Optics, 6.3.2', by: 'E. Hecht' },
    known: 'from memory',
    how: 'achromatPowers',
    values: achromat([2, 63.46, 36.37], ['4.685', '-2.685'], (power) => power),
  },
  {
    id: 'ACH-005',
    claim: 'the secondary spectrum of an ordinary achromat is some 2000th of its focal length: 0.0005 f',
    source: { title: "Rule of thumb of the telescope maker's texts", by: 'A. E. Conrady; E. Hecht' },
    known: 'from memory',
    how: 'secondarySpectrum of N-BK7 and F2, of K7 and F2, of N-BK7 and SF5',
    values: [
      ['N-BK7', 'F2'],
      ['K7', 'F2'],
      ['N-BK7', 'SF5'],
    ].map((pair) => ({ what: pair.join(', '), printed: '0.0005', of: () => secondarySpectrum(...(pair.map(named) as [Medium, Medium])) })),
  },
];
