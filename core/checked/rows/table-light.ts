import type { Check } from '../check.ts';
import { type Changes, type Engraving, engraved, figureValue, OIL, told } from '../rig.ts';
import { tubed } from './aperture.ts';

/** A macro lens of `N` and pupil ratio `P` beside an objective of magnification `m`. */
const beside = (m: number, N: number, P: number): Changes => ({
  objective: { magnification: m },
  table: { referenceFNumber: N, referencePupilRatio: P },
});

const BRT = [
  ['5x/0.12', engraved('5x/0.12'), '0.1'],
  ['10x/0.25', engraved('10x/0.25'), '0.4'],
  ['20x/0.45', engraved('20x/0.45'), '1.0'],
  ['25x/0.80, oil', engraved('25x/0.80', { immersionIndex: OIL }), '6.6'],
] as const;

/** Brightness lit through the objective. */
const epi = (objective: Engraving): number => told(engraved(objective), 'throughLensBrightness');

export const TABLE_LIGHT: readonly Check[] = [
  {
    id: 'AP-002b',
    claim: 'a lens of f/4 and pupil ratio 2 works at f/14 at the magnification 5: (1 + m/P) N',
    source: 'encyclopaedia-aperture',
    known: 'formula read',
    how: 'the working f-number of the macro lens to compare with, and of a camera lens on tubes',
    values: [
      figureValue('tubesFarFNumber', '14', tubed(4, 5, 2), { what: 'with tubes' }),
      figureValue('referenceWorkingFNumber', '14.00', beside(5, 4, 2), { what: 'a macro lens' }),
      figureValue('referenceWorkingFNumber', '8.000', beside(1, 4, 1), { what: 'f/4 at 1:1, ratio 1' }),
    ],
  },
  {
    id: 'BRT-001',
    claim: 'brightness of objectives lit through themselves, 10⁴ NA⁴ / M²',
    source: 'light-microscopy',
    known: 'read',
    how: 'the brightness lit through the objective',
    values: BRT.map(([what, rig, text]) => figureValue('throughLensBrightness', text, rig, { what })),
  },
  {
    id: 'AP-007',
    claim: 'of 10x/0.25 and 5x/0.12 the first is 4.71 times as bright lit through itself',
    source: 'light-microscopy',
    known: 'formula read',
    how: 'the brightness lit through the one over that through the other',
    values: [{ printed: '4.71', of: () => epi('10x/0.25') / epi('5x/0.12') }],
  },
];
