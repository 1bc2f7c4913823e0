import type { Check } from '../check.ts';
import { type Changes, figureValue } from '../rig.ts';

/** A 10x objective of NA 0.28 for 200 mm before a tube lens of 24 mm: f1 = 20 mm, image 11 mm across. */
const TUBE = {
  objective: { na: 0.28 },
  relay: { clearApertureMm: 24 },
  sensor: { widthMm: 8.8, heightMm: 6.6 },
} as const;

/** A sensor behind an objective of 200 mm and a relay that makes the magnification `m` with it. */
const sized = (m: number, sensor: Changes['sensor'] = {}): Changes => ({
  objective: { magnification: 1 },
  relay: { focalLengthMm: 200 * m },
  sensor,
});

/** Infinity space, vignetting, field and coverage. */
export const FIELD: readonly Check[] = [
  {
    id: 'INF-001',
    claim: 'exit pupil of an objective of 20 mm and NA 0.28 is 11.2 mm wide: φ1 = 2 f1 NA',
    source: 'guide-tube-lenses',
    known: 'read',
    how: 'the exit pupil of a 10x/0.28 objective made for 200 mm',
    values: [
      figureValue('objectiveFocalLengthMm', '20', TUBE, { what: 'f1' }),
      figureValue('pupilDiameterMm', '11.2', TUBE, { what: 'φ1' }),
    ],
  },
  {
    id: 'INF-002',
    claim: 'longest way from pupil to tube lens without vignetting is L = (φ2 − φ1) f2 / φ, 232.7 mm',
    source: 'guide-tube-lenses',
    known: 'read',
    how: 'the longest space without loss over an 11 mm diagonal; with the relay put there, light begins to fall at 5.5 mm, half of 11',
    values: [
      figureValue('longestUnvignettedSpaceMm', '232.7', TUBE, { what: 'L' }),
      figureValue('onsetRadiusMm', '5.5', { ...TUBE, infinitySpaceMm: 232.7 }, { what: 'half the image' }),
    ],
  },
  {
    id: 'INF-012',
    claim: 'a 2/3 inch sensor 8.8 mm wide behind 50x and a 0.5x adapter sees 352 µm',
    source: 'microscope-manual',
    known: 'read',
    how: 'the subject across the width, with a relay of half the focal length that the engraving is for',
    values: [
      figureValue(
        'objectFieldWidthMm',
        '352',
        { objective: { magnification: 50 }, relay: { focalLengthMm: 100 }, sensor: { widthMm: 8.8 } },
        { per: 1000 },
      ),
    ],
  },
  {
    id: 'INF-015',
    claim: 'sensors of 4.8 x 3.6, 6.4 x 4.8 and 8.8 x 6.6 mm have diagonals of 6, 8 and 11 mm (the sides but 8.8 from memory)',
    source: 'measuring-machine',
    known: 'read',
    how: 'the subject along the diagonal, at the magnification 1',
    values: [
      figureValue('objectFieldDiagonalMm', '6', sized(1, { widthMm: 4.8, heightMm: 3.6 }), { what: '1/3 inch' }),
      figureValue('objectFieldDiagonalMm', '8', sized(1, { widthMm: 6.4, heightMm: 4.8 }), { what: '1/2 inch' }),
      figureValue('objectFieldDiagonalMm', '11', sized(1, { widthMm: 8.8, heightMm: 6.6 }), { what: '2/3 inch' }),
    ],
  },
  {
    id: 'PIX-003',
    claim: 'a field of 100 mm on a sensor 8.45 mm wide takes the magnification 0.0845',
    source: 'guide-camera',
    known: 'read',
    how: 'the other way round: the subject across the width at that magnification',
    values: [
      figureValue('systemMagnification', '0.0845', sized(0.0845), { what: 'magnification' }),
      figureValue('objectFieldWidthMm', '100', sized(0.0845, { widthMm: 8.45 }), { what: 'field' }),
    ],
  },
  {
    id: 'PIX-004',
    claim: 'pixels of 3.45 µm at the magnification 0.0845 resolve about 41 µm at the subject',
    source: 'guide-camera',
    known: 'from memory',
    how: 'a pixel at the subject: half of the finest period that the pixels record',
    values: [figureValue('pixelAtSubjectUm', '41', sized(0.0845, { pixelPitchUm: 3.45 }))],
  },
  {
    id: 'PIX-005',
    claim: 'pixels of 6.45 µm behind a 60x objective stand 108 nm apart at the subject',
    source: 'camera-glossary',
    known: 'read',
    how: 'a pixel at the subject',
    values: [figureValue('pixelAtSubjectUm', '108', { objective: { magnification: 60 }, sensor: { pixelPitchUm: 6.45 } }, { per: 1000 })],
  },
];
