import { detectorTerm, waveTerm } from '../../index.ts';
import type { Check } from '../check.ts';
import { type Engraving, engraved, figureValue, OIL } from '../rig.ts';

const LAMBDA = 0.55;

const naOf = (objective: Engraving): number => engraved(objective).objective?.na as number;

const wave = (id: string, objective: Engraving, index: number, printed: string): Check => ({
  id,
  claim: `${objective} in n = ${index}: depth n λ / NA² = ${printed} µm, the whole of it (convention 'wave-and-pixel')`,
  source: 'light-microscopy',
  known: 'read',
  how: "the wave term of the convention 'wave-and-pixel'; the table leaves the detector out",
  values: [{ printed, of: () => waveTerm('wave-and-pixel', LAMBDA, naOf(objective), index) }],
});

/** Each row names its convention: sources differ by up to four times. */
export const DEPTH: readonly Check[] = [
  wave('DOF-001', '5x/0.12', 1, '38.19'),
  wave('DOF-002', '10x/0.25', 1, '8.80'),
  wave('DOF-003', '20x/0.45', 1, '2.72'),
  wave('DOF-004', '25x/0.80', OIL, '1.30'),
  {
    id: 'DOF-322',
    claim: "4x/0.10 at 0.55 µm: (λ n / NA²)(1 + 1/(2M)) = 61.875 µm (convention 'wave-and-pixel', blur λ / (2 NA) = 2.75 µm)",
    source: 'university-depth',
    known: 'formula read',
    how: 'the depth of field with a blur of 2.75 µm on the sensor, which is what the bracket adds',
    values: [
      figureValue(
        'depthOfFieldUm',
        '61.875',
        { ...engraved('4x/0.10'), depth: { convention: 'wave-and-pixel', blurUm: 2.75 } },
        { what: 'by name' },
      ),
      figureValue(
        'depthOfFieldUm',
        '61.875',
        { ...engraved('4x/0.10'), depth: { blurUm: 2.75 } },
        { what: 'unless told otherwise', not: ['34.375', '116.875'] },
      ),
    ],
  },
  {
    id: 'DOF-341',
    claim: 'a blur of 10 µm at f/10 and m = 5 allows ± 100 µm on the sensor, ± 4.0 µm at the subject: B N, and that over m²',
    source: 'optical-engineering',
    known: 'formula read',
    how: 'the detector’s term, halved for one side; at the sensor with m = 1 and NA = 1/(2N)',
    values: [
      { what: 'sensor', printed: '100', of: () => detectorTerm(10, 1, 0.05, 1) / 2 },
      { what: 'subject', printed: '4.0', of: () => detectorTerm(10, 5, 0.25, 1) / 2 },
    ],
  },
  {
    id: 'DOF-343',
    claim: 'a quarter wave of defocus at f/10 and 0.55 µm is ± 110 µm on the sensor: 2 λ N²',
    source: 'telescope-optics',
    known: 'formula read',
    how: "the wave term of 'half-wave-term', the depth on one side, at the sensor with NA = 1/(2N)",
    values: [{ printed: '110', of: () => waveTerm('half-wave-term', LAMBDA, 0.05, 1) }],
  },
  {
    id: 'THN-007',
    claim: 'a quarter wave of defocus at NA 0.25 and 0.55 µm is ± 4.4 µm: n λ / (2 NA²)',
    source: 'light-microscopy',
    known: 'formula read',
    how: "the wave term of 'half-wave-term', the depth on one side",
    values: [{ printed: '4.4', of: () => waveTerm('half-wave-term', LAMBDA, 0.25, 1) }],
  },
];
