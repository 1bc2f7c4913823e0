import type { Check } from '../check.ts';
import { type Changes, type Engraving, engraved, figureValue, told } from '../rig.ts';

/**
 * A camera lens of f-number `N` that faces an objective of its own focal length, wide open behind: at
 * the magnification 1 it takes the aperture 1/(2N) from the subject.
 */
export const facing = (N: number): Changes => ({
  ...engraved('2x/0.90'),
  relay: { kind: 'camera-lens', focalLengthMm: 100, fNumber: N },
});

/** A camera lens of f-number `N` with tubes for the magnification `m`, its exit pupil `P` times as wide as its entrance pupil. */
export const tubed = (N: number, m: number, P: number): Changes => ({
  table: { closeUpFocalLengthMm: 100, cameraFocalLengthMm: 100 * m, cameraFNumber: N, pupilRatio: P },
});

/**
 * A rig at the working f-number `N`, with the sensor's corner where `share` of the light is left: the relay's rim is as
 * wide as the exit pupil, and as far behind it as the relay's focal length.
 */
export function cornerAt(N: number, share: number): Changes {
  const rig: Changes = {
    objective: { magnification: N / 2 },
    relay: { clearApertureMm: 200 / N },
    infinitySpaceMm: 200,
    litThreshold: share,
  };
  const corner = told(rig, 'litCircleMm');
  return { ...rig, sensor: { widthMm: 0.8 * corner, heightMm: 0.6 * corner } };
}

const AP_005 = [
  [1.2, '0.4167'],
  [1.4, '0.357'],
  [2, '0.25'],
  [2.8, '0.1786'],
  [4, '0.125'],
  [5.6, '0.0893'],
  [8, '0.0625'],
  [11, '0.045'],
  [16, '0.03125'],
] as const;

/** Full stops as engraved, in steps of half and of a quarter of the light: digits are cut off, 5.6 for 5.66 and 11 for 11.3. */
const AP_006 = [
  [1, '1.4', '2'],
  [2, '2.8', '4'],
  [4, '5.6', '8'],
  [8, '11', '16'],
  [16, '22', '32'],
  [32, '45', '64'],
] as const;

const AP_003 = [
  ['5x/0.14', '17.86'],
  ['10x/0.28', '17.86'],
  ['20x/0.42', '23.81'],
  ['10x/0.25', '20.00'],
] as const satisfies readonly (readonly [Engraving, string])[];

export const APERTURE: readonly Check[] = [
  {
    id: 'AP-001',
    claim: 'a lens of f/4 works at f/8 at the magnification 1, with NA 0.0625 at the subject: (1 + m) N, NA = m / (2 N_w)',
    source: 'maker-aperture',
    known: 'formula read',
    how: 'the working f-number of a rig of that magnification and aperture, and of a camera lens on tubes',
    values: [
      figureValue('tubesFarFNumber', '8', tubed(4, 1, 1), { what: 'with tubes' }),
      figureValue('workingFNumber', '8.000', engraved('1x/0.0625'), { what: 'working f-number' }),
      figureValue('systemNa', '0.0625', facing(8), { what: 'NA' }),
    ],
  },
  {
    id: 'AP-003',
    claim: 'f-number on the sensor N = M / (2 NA)',
    source: 'image-side',
    known: 'from memory',
    how: 'the working f-number',
    values: AP_003.map(([objective, text]) => figureValue('workingFNumber', text, engraved(objective), { what: objective })),
  },
  {
    id: 'AP-005',
    claim: 'NA = 1 / (2 N), by the sine',
    source: 'microscope-notes',
    known: 'read',
    how: 'the aperture of a rig whose camera lens faces an objective of its own focal length',
    values: AP_005.map(([N, text]) => figureValue('systemNa', text, facing(N), { what: `f/${N}` })),
  },
  {
    id: 'AP-006',
    claim: 'full stops run 1 1.4 2 2.8 4 5.6 8 11 16 22 32 45 64',
    source: 'full-stops',
    known: 'read',
    how: 'the f-number in a corner that keeps half of the light is the next stop, in one that keeps a quarter the next but one',
    values: [
      ...AP_006.map(([N, text]) => figureValue('cornerFNumber', text, () => cornerAt(N, 1 / 2), { what: `after ${N}`, cutOff: true })),
      ...AP_006.map(([N, , text]) => figureValue('cornerFNumber', text, () => cornerAt(N, 1 / 4), { what: `second after ${N}` })),
    ],
  },
];
