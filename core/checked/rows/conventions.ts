import { AIRY_ZERO, rayleigh, waveTerm } from '../../index.ts';
import type { Check } from '../check.ts';
import { engraved, figureValue, told } from '../rig.ts';
import { facing } from './aperture.ts';

/** The wave term of 10x/0.25 at 0.55 µm. */
const depth = (convention: Parameters<typeof waveTerm>[0]) => () => waveTerm(convention, 0.55, 0.25, 1);

/** Radius of the Airy disc over λ N, of 10x/0.25. */
const radius = (): number => told(engraved('10x/0.25'), 'airyDiameterUm') / 2 / (0.55 * 20);

/** f-number; NA by the sine; NA by the tangent. */
const SINES = [
  [1.4, '0.357', '0.33634'],
  [2, '0.25', '0.24254'],
  [4, '0.125', '0.12403'],
] as const;

/** Where sources disagree: core's convention is named, the number printed under it comes out, and no other one does. */
export const CONVENTIONS: readonly Check[] = [
  {
    id: 'CNV-001',
    claim: 'depth of 10x/0.25 at 0.55 µm by four conventions: the whole of λ n / NA², half of it, twice it, and by the angle',
    source: 'light-microscopy',
    known: 'formula read',
    how: 'the wave term under each name',
    values: [
      { what: "'wave-and-pixel'", printed: '8.80', of: depth('wave-and-pixel'), not: ['4.4', '17.6', '8.66', '4.33'] },
      { what: "'half-wave-term', on one side", printed: '4.4', of: depth('half-wave-term'), not: ['8.80'] },
      { what: "'double-wave-term'", printed: '17.60', of: depth('double-wave-term'), not: ['8.80'] },
      // Twice λ / (8 n sin²(α/2)) with sin α = 0.25.
      { what: "'high-aperture'", printed: '8.660', of: depth('high-aperture'), not: ['8.80'] },
    ],
  },
  {
    id: 'CNV-002',
    claim: 'Rayleigh’s factor with all its digits: 0.3354 µm at NA 1 and 0.55 µm, where 0.61 gives 0.3355 and 0.612 gives 0.3366',
    source: 'optical-theory',
    known: 'from memory',
    how: 'half the first zero of the Airy pattern',
    values: [{ printed: '0.3354', of: () => rayleigh(0.55, 1), not: ['0.3355', '0.3366'] }],
  },
  {
    id: 'CNV-003',
    claim: '1.22 λ N is the radius of the Airy disc, not its diameter',
    source: 'optical-theory',
    known: 'from memory',
    how: 'half of the Airy disc over λ N',
    values: [
      { what: 'radius', printed: '1.22', of: radius, not: ['2.44'] },
      { what: 'factor', printed: '1.22', of: () => AIRY_ZERO },
    ],
  },
  {
    id: 'AP-004',
    claim: 'numerical aperture by the sine: f/2 takes 0.25, not the 0.24254 of a tangent',
    source: 'formula-collection',
    known: 'formula read',
    how: 'the aperture of a rig whose camera lens faces an objective of its own focal length',
    values: SINES.map(([N, sine, tangent]) => figureValue('systemNa', sine, facing(N), { what: `f/${N}`, not: [tangent] })),
  },
  {
    id: 'CNV-004',
    claim: 'a pupil of 20 mm and NA 0.28 is 11.2 mm wide by the sine, not the 11.7 mm of the tangent',
    source: 'guide-tube-lenses',
    known: 'formula read',
    how: 'the exit pupil',
    values: [figureValue('pupilDiameterMm', '11.2', { objective: { na: 0.28 } }, { not: ['11.7'] })],
  },
  {
    id: 'CNV-005',
    claim: '19 mm at 166 mm by the sine, 0.1137, separates 2.93 µm; the 2.92 µm that is printed is by the tangent',
    source: 'maker-resolution',
    known: 'formula read',
    how: 'the finest separation at 546 nm',
    values: [figureValue('rayleighUm', '2.93', { objective: { na: 0.1137 }, wavelengthNm: 546 }, { not: ['2.92'] })],
  },
];
