import type { Check, Value } from '../check.ts';
import { printed } from '../printed.ts';
import { type Engraving, engraved, figureValue } from '../rig.ts';

/** Period of a pattern in µm. */
const periodUm = (lpPerMm: number): number => 1000 / lpPerMm;

/**
 * One line of the table, at 550 nm. Its second number is rounded before it is multiplied by `M` for the
 * third and halved for the fourth, so half of its last digit comes along as slack.
 */
function line(id: string, objective: Engraving, limit: string, projected: string, pixel: string): Check {
  const changes = engraved(objective);
  const rounded = (changes.objective?.magnification as number) * (printed(limit).unit / 2);
  const values: Value[] = [
    figureValue('cutoffObjectLpPerMm', limit, changes, { what: 'resolution limit, µm', as: periodUm }),
    figureValue('cutoffImageLpPerMm', projected, changes, {
      what: 'the same on the sensor, µm',
      as: periodUm,
      slack: { of: () => rounded, why: 'a limit rounded before it was multiplied' },
    }),
    // At the pixel that the table asks for the sampling is critical: the ratio is 1.
    figureValue(
      'samplingRatio',
      pixel,
      { ...changes, sensor: { pixelPitchUm: Number(pixel) } },
      {
        what: 'pixel that just samples it, µm',
        per: Number(pixel),
        slack: { of: () => rounded / 2, why: 'a limit rounded before it was halved' },
      },
    ),
  ];
  return {
    id,
    claim: `${objective} needs pixels of ${pixel} µm: half of ${projected} µm, the image of ${limit} µm (two figures each)`,
    source: 'microscopy-course',
    known: 'from memory',
    how: 'the finest patterns at subject and sensor as periods; at the pixel printed the oversampling must be 1',
    values,
  };
}

export const SAMPLING: readonly Check[] = [
  {
    id: 'PIX-001',
    claim: 'pixels of 3.45 µm record at most 145 lp/mm on the sensor',
    source: 'guide-camera',
    known: 'read',
    how: 'the finest pattern for the pixels',
    values: [figureValue('nyquistLpPerMm', '145', { sensor: { pixelPitchUm: 3.45 } })],
  },
  {
    id: 'PIX-002',
    claim: 'a sensor of 2448 x 2050 pixels of 3.45 µm measures 8.45 x 7.07 mm',
    source: 'guide-camera',
    known: 'read',
    how: 'the other way round: the finest pattern for pixels whose pitch follows from that size and that count',
    values: [
      figureValue('nyquistLpPerMm', '145', {
        sensor: { widthMm: 8.45, heightMm: 7.07, columns: 2448, rows: 2050, pixelPitchUm: undefined },
      }),
    ],
  },
  line('PIX-101', '1x/0.04', '6.9', '6.9', '3.5'),
  line('PIX-102', '2x/0.06', '4.6', '9.2', '4.6'),
  line('PIX-103', '2x/0.10', '2.8', '5.6', '2.8'),
  line('PIX-104', '4x/0.10', '2.8', '11.2', '5.6'),
  line('PIX-106', '4x/0.20', '1.4', '5.6', '2.8'),
  line('PIX-108', '10x/0.30', '0.92', '9.2', '4.6'),
  line('PIX-111', '20x/0.50', '0.55', '11.0', '5.5'),
  line('PIX-113', '40x/0.65', '0.42', '16.8', '8.4'),
  line('PIX-115', '40x/0.95', '0.29', '11.6', '5.8'),
  line('PIX-117', '100x/0.90', '0.31', '31.0', '15.5'),
];
