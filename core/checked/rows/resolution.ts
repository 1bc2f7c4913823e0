import { rayleigh } from '../../index.ts';
import { UM_PER_MM } from '../../units.ts';
import type { Check, Value } from '../check.ts';
import { type Changes, type Engraving, engraved, figureValue, OIL } from '../rig.ts';

/** An aperture alone: what separates two points does not hang on the magnification. */
const aperture = (na: number, wavelengthNm: number, immersionIndex?: number): Changes => ({
  objective: { na, immersionIndex },
  wavelengthNm,
});

/** A line of a table of Rayleigh distances, in µm. */
const separation = (id: string, objective: Engraving, printed: string): Check => ({
  id,
  claim: `${objective} separates ${printed} µm`,
  source: 'light-microscopy',
  known: 'read',
  how: 'the finest separation; the source takes 0.61 for Rayleigh’s factor',
  values: [figureValue('rayleighUm', printed, engraved(objective))],
});

const homework = (id: string, NA: number, printed: string, index?: number): Check => ({
  id,
  claim: `NA ${NA} separates ${printed} µm at 0.55 µm (cut off, not rounded)`,
  source: 'homework',
  known: 'read',
  how: 'the finest separation; the source takes 0.612 for Rayleigh’s factor, too small a difference to show in its digits',
  values: [figureValue('rayleighUm', printed, aperture(NA, 550, index), { cutOff: true })],
});

/** λ/(2 NA): the period at the cut-off, `perMm` units of the source to a millimetre. */
const period = (printed: string, perMm: number, rig: Changes): Value =>
  figureValue('cutoffObjectLpPerMm', printed, rig, { as: (lpPerMm) => perMm / lpPerMm });

export const RESOLUTION: readonly Check[] = [
  separation('RES-001', '5x/0.12', '2.80'),
  separation('RES-002', '10x/0.25', '1.34'),
  separation('RES-003', '20x/0.45', '0.75'),
  separation('RES-004', '25x/0.80', '0.42'),
  {
    id: 'RES-201',
    claim: '100x/0.90 separates 0.37 µm (the last number from memory)',
    source: 'microscope-manual',
    known: 'from memory',
    how: 'the finest separation',
    values: [figureValue('rayleighUm', '0.37', engraved('100x/0.90'))],
  },
  {
    id: 'PIX-006',
    claim: 'Rayleigh limit at 500 nm and NA 1.4 is 218 nm',
    source: 'camera-glossary',
    known: 'read',
    how: 'the finest separation, in oil',
    values: [figureValue('rayleighUm', '218', aperture(1.4, 500, OIL), { per: UM_PER_MM })],
  },
  {
    id: 'RES-202',
    claim: '40x/0.65 at 530 nm: λ/(2 NA) = 408 nm',
    source: 'microscopy-hints',
    known: 'read',
    how: 'the finest pattern at the subject, as a period',
    values: [period('408', 1e6, engraved('40x/0.65', { wavelengthNm: 530 }))],
  },
  {
    id: 'RES-203',
    claim: 'NA 1.4 at 550 nm: about 0.2 µm, λ/(2 NA)',
    source: 'image-processing',
    known: 'read',
    how: 'the finest pattern at the subject, as a period',
    values: [period('0.2', 1e3, aperture(1.4, 550, OIL))],
  },
  {
    id: 'RES-204',
    claim: 'with a condenser: 1.22 x 400 / (1.45 + 0.95) = 203 nm',
    source: 'encyclopaedia-resolution',
    known: 'read',
    how: 'Rayleigh’s formula with the mean aperture of objective and condenser, 1.20',
    values: [{ printed: '203', of: () => rayleigh(400, 1.2) }],
  },
  {
    id: 'RES-205',
    claim: 'aperture 0.114 (by the tangent, radius 19 mm at 166 mm) separates 2.92 µm, 342 lp/mm',
    source: 'maker-resolution',
    known: 'read',
    how: 'the finest separation at 546 nm, which is what 3000 NA lp/mm comes to',
    values: [
      figureValue('rayleighUm', '2.92', aperture(0.114, 546), { what: 'µm' }),
      figureValue('rayleighUm', '342', aperture(0.114, 546), { what: 'lp/mm', as: (um) => 1000 / um }),
    ],
  },
  {
    id: 'RES-401',
    claim: 'the Rayleigh limit is 0.61 λ / NA at the subject and 1.22 λ N on the sensor: 1.342 and 13.42 µm for 10x/0.25 at 0.55 µm',
    source: 'optical-engineering',
    known: 'formula read',
    how: 'the finest separation, and half of the Airy disc',
    values: [
      figureValue('rayleighUm', '1.342', engraved('10x/0.25'), { what: 'subject' }),
      figureValue('airyDiameterUm', '13.42', engraved('10x/0.25'), { what: 'sensor', per: 0.5 }),
    ],
  },
  homework('RES-211', 0.25, '1.34'),
  homework('RES-212', 0.65, '0.51'),
  homework('RES-213', 1.25, '0.26', OIL),
];
