import { LUMINOUS_EFFICIENCY } from '../../diffraction/spectrum.ts';
import { achromatPowers, secondarySpectrum } from '../../glass/achromat.ts';
import { abbeNumber } from '../../glass/lines.ts';
import type { Medium } from '../../glass/medium.ts';
import type { Check, Value } from '../check.ts';
import { named } from './glass.ts';

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

/** Colour: what an achromat's two lenses make of it, and how the eye weighs it. */
export const COLOUR: readonly Check[] = [
  {
    id: 'ACH-001',
    claim: 'thin achromat of BK7 and F2: the crown 0.43 f, the flint -0.76 f',
    source: 'telescope-optics',
    known: 'read',
    how: 'two thin lenses of the Abbe numbers 64.17 and 36.37',
    values: achromat([1, 64.17, 36.37], ['0.43', '-0.76'], asFocalLength),
  },
  {
    id: 'ACH-003',
    claim: 'thin achromat of 200 mm, N-BK7 and SF2: 94.5 and -179.1 mm',
    source: 'engineering-science',
    known: 'formula read',
    how: 'two thin lenses of the Abbe numbers of these glasses',
    values: achromat([1 / 200, abbeNumber(named('N-BK7'), 'd'), abbeNumber(named('SF2'), 'd')], ['94.5', '-179.1'], asFocalLength),
  },
  {
    id: 'ACH-004',
    claim: 'thin achromat of 2 dioptres, V 63.46 and 36.37: 4.685 and -2.685 dioptres',
    source: 'optics-text',
    known: 'from memory',
    how: 'two thin lenses of these Abbe numbers',
    values: achromat([2, 63.46, 36.37], ['4.685', '-2.685'], (power) => power),
  },
  {
    id: 'ACH-005',
    claim: 'the secondary spectrum of an ordinary achromat is some 2000th of its focal length: 0.0005 f',
    source: 'telescope-makers',
    known: 'from memory',
    how: 'the focus between the lines that are brought together, for three pairs of glass',
    values: [
      ['N-BK7', 'F2'],
      ['K7', 'F2'],
      ['N-BK7', 'SF5'],
    ].map((pair) => ({ what: pair.join(', '), printed: '0.0005', of: () => secondarySpectrum(...(pair.map(named) as [Medium, Medium])) })),
  },
  {
    id: 'VL-001',
    claim: "the eye's photopic luminous efficiency, 41 samples from 380 to 780 nm",
    source: 'eye',
    known: 'read',
    how: 'the table by which a spectrum is weighed',
    values: EYE.map((printed, i) => {
      const nm = 380 + 10 * i;
      return { what: `${nm} nm`, printed, of: () => LUMINOUS_EFFICIENCY.get(nm) as number };
    }),
  },
];
