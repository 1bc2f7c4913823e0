import { rayleigh } from '../../../core/index.ts';
import { engraved, figureValue, told } from '../rig.ts';
import type { Row } from '../row.ts';
import { CAMERA_GLOSSARY, MICROSCOPE_MANUAL, MURPHY, SMITH } from '../sources.ts';

const TABLE = MURPHY('Table 4-1, p. 54; λ = 0.55 µm inferred; the column prints two decimals');
const HOMEWORK = { title: 'Homework solution, Abbe equation', by: 'homeworksource.com' };
const OIL = 1.515;

/** A line of a table of Rayleigh distances, in µm. */
const separation = (id: string, M: number, NA: number, printed: string, index = 1): Row => ({
  id,
  claim: `${M}x/${NA} separates ${printed} µm`,
  source: TABLE,
  known: 'read',
  how: 'rayleighUm; the source takes 0.61 for k/2',
  values: [figureValue('rayleighUm', printed, engraved(M, NA, 550, index))],
});

const homework = (id: string, M: number, NA: number, printed: string, index = 1): Row => ({
  id,
  claim: `NA ${NA} separates ${printed} µm at 0.55 µm (cut off, not rounded)`,
  source: HOMEWORK,
  known: 'read',
  how: 'rayleighUm; the source takes 0.612 for k/2, too small a difference to show in its digits',
  values: [figureValue('rayleighUm', printed, engraved(M, NA, 550, index), { cutOff: true })],
});

/** λ/(2 NA) in nm: the period at the cut-off. */
const period =
  (M: number, NA: number, nm: number, index = 1) =>
  (): number =>
    1e6 / told(engraved(M, NA, nm, index), 'cutoffObjectLpPerMm');

export const RESOLUTION: readonly Row[] = [
  separation('RES-001', 5, 0.12, '2.80'),
  separation('RES-002', 10, 0.25, '1.34'),
  separation('RES-003', 20, 0.45, '0.75'),
  separation('RES-004', 25, 0.8, '0.42', OIL),
  {
    id: 'RES-201',
    claim: '100x/0.90 separates 0.37 µm (the last number from memory)',
    source: MICROSCOPE_MANUAL,
    known: 'from memory',
    how: 'rayleighUm',
    values: [figureValue('rayleighUm', '0.37', engraved(100, 0.9))],
  },
  {
    id: 'PIX-006',
    claim: 'Rayleigh limit at 500 nm and NA 1.4 is 218 nm',
    source: CAMERA_GLOSSARY,
    known: 'read',
    how: 'rayleighUm in oil',
    values: [figureValue('rayleighUm', '218', engraved(60, 1.4, 500, OIL), { per: 1000 })],
  },
  {
    id: 'RES-202',
    claim: '40x/0.65 at 530 nm: λ/(2 NA) = 408 nm',
    source: { title: 'Hints to understand optical microscopy', by: 'Chinetek' },
    known: 'read',
    how: 'cutoffObjectLpPerMm as a period',
    values: [{ printed: '408', of: period(40, 0.65, 530), figure: 'cutoffObjectLpPerMm' }],
  },
  {
    id: 'RES-203',
    claim: 'NA 1.4 at 550 nm: about 0.2 µm, λ/(2 NA)',
    source: { title: 'Microscope Image Processing', by: 'Q. Wu, F. Merchant, K. Castleman, Academic Press', year: 2008, where: 'ch. 17' },
    known: 'read',
    how: 'cutoffObjectLpPerMm as a period',
    values: [{ printed: '0.2', of: () => period(60, 1.4, 550, OIL)() / 1000, figure: 'cutoffObjectLpPerMm' }],
  },
  {
    id: 'RES-204',
    claim: 'with a condenser: 1.22 x 400 / (1.45 + 0.95) = 203 nm',
    source: { title: 'Angular resolution', by: 'Wikipedia' },
    known: 'read',
    how: 'rayleigh, with the mean aperture 1.20 of objective and condenser',
    values: [{ printed: '203', of: () => rayleigh(400, 1.2) }],
  },
  {
    id: 'RES-205',
    claim: 'aperture 0.114 (by the tangent, radius 19 mm at 166 mm) separates 2.92 µm, 342 lp/mm',
    source: { title: 'Tech note: Determining the theoretical resolution', by: 'Infinity Photo-Optical' },
    known: 'read',
    how: 'rayleighUm at 546 nm, which is what 3000 NA lp/mm comes to',
    values: [
      figureValue('rayleighUm', '2.92', engraved(2, 0.114, 546), { what: 'µm' }),
      { what: 'lp/mm', printed: '342', of: () => 1000 / told(engraved(2, 0.114, 546), 'rayleighUm'), figure: 'rayleighUm' },
    ],
  },
  {
    id: 'RES-401',
    claim: 'the Rayleigh limit is 0.61 λ / NA at the subject and 1.22 λ N on the sensor: 1.342 and 13.42 µm for 10x/0.25 at 0.55 µm',
    source: SMITH('p. 192 f.'),
    known: 'formula read',
    how: 'rayleighUm, and half of airyDiameterUm',
    values: [
      figureValue('rayleighUm', '1.342', engraved(10, 0.25), { what: 'subject' }),
      figureValue('airyDiameterUm', '13.42', engraved(10, 0.25), { what: 'sensor', per: 0.5 }),
    ],
  },
  homework('RES-211', 10, 0.25, '1.34'),
  homework('RES-212', 40, 0.65, '0.51'),
  homework('RES-213', 100, 1.25, '0.26', OIL),
];
