import { glassNamed } from '../../glass/glasses.ts';
import { abbeNumber, indexAtLine, LINES, type Line, partialDispersion } from '../../glass/lines.ts';
import type { Medium } from '../../glass/medium.ts';
import { normalPartialDispersion, offNormalLine } from '../../glass/normal.ts';
import type { Check } from '../check.ts';

export const named = (name: string): Medium => glassNamed(name) as Medium;

/** Glass, n_d and V_d as the catalogue prints them. */
export const CATALOGUE = [
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

/** Glass and its index at each of these, nm. */
const LISTED_NM = [656.3, 587.6, 486.1];
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

export const GLASS: readonly Check[] = [
  {
    id: 'GLS-001',
    claim: 'normal lines P = a + b V_d: K7, one of the two glasses that define them, lies on them',
    source: 'optical-glass',
    known: 'formula read',
    how: "the dispersion formula of K7. The line (C,s) is left out: today's K7 lies 0.0001 off it",
    values: [
      ...K7_LINES.map(([x, y, text]) => ({
        what: `${x},${y}`,
        printed: text,
        of: () => partialDispersion(named('K7'), x, y),
        slack: { of: () => 0.00005 + 0.0000005 * 60.4, why: 'the rounding of the lines themselves' },
      })),
      { what: 'g,F line', printed: '0.5422', of: () => normalPartialDispersion(60.406) },
    ],
  },
  {
    id: 'GLS-003',
    claim: 'how far six glasses lie off the normal line in P_gF, from -0.0120 to 0.0342',
    source: 'glass-catalogue',
    known: 'read',
    how: 'the dispersion formula of each, against the line',
    values: OFF_LINE.map(([name, text]) => ({ what: name, printed: text, of: () => offNormalLine(named(name)) })),
  },
  ...CATALOGUE.map(
    ([id, name, nd, vd]): Check => ({
      id,
      claim: `${name}: n_d ${nd}, V_d ${vd}`,
      source: 'glass-catalogue',
      known: 'read',
      how: "Sellmeier's formula",
      values: [
        { what: 'n_d', printed: nd, of: () => indexAtLine(named(name), 'd') },
        { what: 'V_d', printed: vd, of: () => abbeNumber(named(name), 'd') },
      ],
    }),
  ),
  {
    id: 'GLS-201',
    claim: 'N-BK7 at twelve spectral lines from 365 to 1014 nm; V_e 63.96',
    source: 'glass-sheet',
    known: 'from memory',
    how: "Sellmeier's formula at the spectral lines",
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
    source: 'paper-fluoride',
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
    source: 'paper-silica',
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
    source: 'lens-listing',
    known: 'read',
    how: "Sellmeier's formula",
    values: LISTING.flatMap(([name, ...texts]) =>
      texts.map((printed, i) => {
        const nm = LISTED_NM[i] as number;
        return { what: `${name}, ${nm} nm`, printed, of: () => named(name).indexAt(nm) };
      }),
    ),
  },
];
