import { glassNamed } from '../../glass/glasses.ts';
import { LINES } from '../../glass/lines.ts';
import { AIR, type Medium, plainIndex } from '../../glass/medium.ts';
import { type Cardinal, cardinal } from '../../trace/cardinal.ts';
import { prescription } from '../../trace/prescription.ts';
import type { Check, Value } from '../check.ts';
import { lensOf, ofLens, type PrintedLens } from './printed-lens.ts';

const media = (...names: string[]): Medium[] => names.map((name) => glassNamed(name) as Medium);

/** Nominal focal length; radii, thicknesses and glasses; focal length and back focal length as the catalogue prints them. */
export const CATALOGUED = [
  ['RAY-301', '75', ['46.5', '-33.9', '-95.5'], [7, 2.5], ['N-BK7', 'SF5'], '74.9', '70.3'],
  ['RAY-302', '100', ['62.8', '-45.7', '-128.2'], [4, 2.5], ['N-BK7', 'SF5'], '100.1', '97.1'],
  ['RAY-303', '125', ['77.6', '-55.9', '-160.8'], [4, 2.8], ['N-BK7', 'N-SF5'], '125.0', '122.0'],
  ['RAY-304', '150', ['91.6', '-66.7', '-197.7'], [5.7, 2.2], ['N-BK7', 'SF5'], '150.0', '146.1'],
  ['RAY-305', '200', ['77.4', '-87.6', '291.1'], [4, 2.5], ['N-SSK5', 'LAFN7'], '200.2', '194.0'],
  ['RAY-306', '250', ['137.1', '-111.5', '-459.2'], [4, 2], ['N-BK7', 'SF2'], '250.0', '246.7'],
  ['RAY-307', '300', ['165.2', '-137.1', '-557.4'], [4, 2], ['N-BK7', 'SF2'], '300.2', '297.0'],
  ['RAY-308', '500', ['337.3', '-186.8', '-557.4'], [4, 2], ['N-BK7', 'SF2'], '502.5', '499.9'],
] as const;

const catalogued = ([id, nominal, radii, thicknessesMm, glasses, f, back]: (typeof CATALOGUED)[number]): Check => {
  const lens: PrintedLens = { radii, thicknessesMm, media: media(...glasses) };
  return {
    id,
    claim: `a cemented doublet of ${nominal} mm at 587.56 nm: f = ${f}, f_b = ${back}`,
    source: 'doublet-catalogue',
    known: 'read',
    how: 'the cardinal points; the catalogue rounds its radii to 0.1 mm, which moves both by a tenth of a millimetre and more',
    values: [
      ofLens(lens, 'f', f, (of) => cardinal(prescription(of, LINES.d)).effectiveFocalLengthMm),
      ofLens(lens, 'f_b', back, (of) => cardinal(prescription(of, LINES.d)).backFocalLengthMm),
    ],
  };
};

const AIR_SPACED: PrintedLens = {
  radii: ['29.32908', '-20.06842', '-20.08770', '-66.54774'],
  thicknessesMm: [0.7, 0.032, 0.578],
  media: media('N-BK7', 'air', 'SF2'),
};

/** The middle between the two yellow-green lines, and half of what parts them: the source does not tell its wavelength. */
function betweenLines(of: (lens: Cardinal) => number): Pick<Value, 'of' | 'slack'> {
  const at = (nm: number): number => of(cardinal(prescription(lensOf(AIR_SPACED), nm)));
  return {
    of: () => (at(LINES.e) + at(LINES.d)) / 2,
    // The longer wave comes to its focus farther back.
    slack: { of: () => (at(LINES.d) - at(LINES.e)) / 2, why: 'a wavelength that is not told' },
  };
}

const THIN = { thicknessesMm: [0] };
const APLANATIC_CROWN: PrintedLens = { ...THIN, radii: ['121.25', '-81.78'], media: [plainIndex(1.5168)] };
/** R3 is printed as -81.29, which contradicts the focal lengths beside it (f2 = -176.4, f = 203.6): two digits have changed places. */
const APLANATIC_FLINT: PrintedLens = { ...THIN, radii: ['-82.19', '-281.88'], media: [plainIndex(1.64769)] };
const APLANATIC: PrintedLens = {
  radii: [...APLANATIC_CROWN.radii, ...APLANATIC_FLINT.radii],
  thicknessesMm: [0, 0, 0],
  media: [...APLANATIC_CROWN.media, AIR, ...APLANATIC_FLINT.media],
};
const aplanatic = (lens: PrintedLens, what: string, text: string) =>
  ofLens(lens, what, text, (of) => cardinal(prescription(of, LINES.d)).effectiveFocalLengthMm);

export const DOUBLETS: readonly Check[] = [
  ...CATALOGUED.map(catalogued),
  {
    id: 'RAY-363',
    claim: 'an air-spaced telescope doublet: image 47.3562 behind it (read), focal length 48 (from memory)',
    source: 'lens-collection',
    known: 'read',
    how: 'the cardinal points, between the e and d lines: the source does not tell which wavelength it focuses for',
    values: [
      { what: 'image', printed: '47.3562', ...betweenLines((c) => c.backFocalLengthMm) },
      { what: 'focal length', printed: '48.0', ...betweenLines((c) => c.effectiveFocalLengthMm) },
    ],
  },
  {
    id: 'ACH-003b',
    claim:
      'a thin aplanatic doublet of 200 mm and its two lenses; its third radius is misprinted, and restored from its second focal length',
    source: 'engineering-science',
    known: 'formula read',
    how: 'the cardinal points of surfaces without thickness between them',
    values: [aplanatic(APLANATIC_CROWN, 'f1', '94.5'), aplanatic(APLANATIC_FLINT, 'f2', '-179.1'), aplanatic(APLANATIC, 'f', '200')],
  },
];
