import { AIRY_ZERO, diffractionMtf, pixelMtf } from '../../index.ts';
import type { Check } from '../check.ts';
import { type Changes, engraved, figureValue } from '../rig.ts';

/** Frequency over the cut-off, and the contrast printed for it. */
export const CIRCLE_MTF = [
  [0.1, '0.873'],
  [0.2, '0.747'],
  [0.3, '0.624'],
  [0.4, '0.505'],
  [0.5, '0.391'],
  [0.6, '0.285'],
  [0.7, '0.188'],
  [0.8, '0.104'],
  [0.9, '0.037'],
] as const;

/** Pupil and rim of 10 mm, 100 mm apart; with 200 mm behind they part at 20 mm on the sensor. */
export const EQUAL_DISCS: Changes = { relay: { clearApertureMm: 10 }, infinitySpaceMm: 100 };

/** A corner at `v` of the way to the dark. */
const equalDiscs = (v: number): Changes => ({ ...EQUAL_DISCS, sensor: { widthMm: 1.6 * 20 * v, heightMm: 1.2 * 20 * v } });

export const DIFFRACTION: readonly Check[] = [
  {
    id: 'DIF-002',
    claim: 'first dark ring of the Airy pattern at x/π = 1.220',
    source: 'optical-theory',
    known: 'from memory',
    how: 'the constant from which all of diffraction is worked out; the tests ask the Bessel function of an open library as well',
    values: [{ printed: '1.220', of: () => AIRY_ZERO }],
  },
  {
    id: 'DIF-009',
    claim: 'cut-off 2 NA / λ = 1 / (λ N): NA 0.25 at 0.55 µm, 909.09 lp/mm; N = 20, 90.909 lp/mm',
    source: 'magazine-column',
    known: 'formula read',
    how: 'the finest patterns at subject and sensor of 10x/0.25',
    values: [
      figureValue('cutoffObjectLpPerMm', '909.09', engraved('10x/0.25'), { what: 'subject' }),
      figureValue('cutoffImageLpPerMm', '90.909', engraved('10x/0.25'), { what: 'sensor' }),
    ],
  },
  {
    id: 'DIF-010',
    claim: 'contrast of a round pupil without aberration, at tenths of the cut-off',
    source: 'contrast-tables',
    known: 'from memory',
    how: 'two round pupils, one shifted over the other',
    values: CIRCLE_MTF.map(([v, text]) => ({ what: `${v}`, printed: text, of: () => diffractionMtf(v) })),
  },
  {
    id: 'DIF-010b',
    claim: 'the same numbers as light: a rim as wide as the pupil cuts it as the pupil cuts its own shifted self',
    source: 'contrast-tables',
    known: 'from memory',
    how: 'the light in the corner, with the corner at tenths of the way to the dark',
    values: CIRCLE_MTF.map(([v, text]) => figureValue('cornerIllumination', text, equalDiscs(v), { what: `${v} of the way` })),
  },
  {
    id: 'DIF-012',
    claim: 'a square pixel of full fill leaves 2/π = 0.637 at the Nyquist frequency',
    source: 'sampling-text',
    known: 'from memory',
    how: 'the contrast of a pixel at half a cycle, and that of a rig whose coarse pixels leave diffraction nothing to take',
    values: [
      { what: 'pixel', printed: '0.637', of: () => pixelMtf(0.5) },
      figureValue(
        'contrastAtNyquist',
        '0.637',
        { ...engraved('1x/0.90', { wavelengthNm: 200 }), sensor: { pixelPitchUm: 1000 } },
        { what: 'of a whole rig' },
      ),
    ],
  },
  {
    id: 'DIF-014',
    claim: 'a blur 3.45 µm wide leaves 0.6366 at 144.93 lp/mm: sin(π v w) / (π v w)',
    source: 'contrast-text',
    known: 'formula read',
    how: 'the contrast of a pixel at the cycles that fall on its width; its first zero at one cycle',
    values: [
      { what: 'at 144.93 lp/mm', printed: '0.6366', of: () => pixelMtf(3.45e-3 * 144.93) },
      { what: 'first zero', printed: '0.0000', of: () => pixelMtf(1) },
    ],
  },
];
