import { type Changes, engraved, figureValue, told } from '../rig.ts';
import type { Row, Value } from '../row.ts';
import { OBJECT_SPACE } from '../sources.ts';

const MATCHING = {
  title: 'Electronic Imaging Detectors, digital camera resolution requirements (table)',
  by: 'Molecular Expressions, Florida State University',
};

const halfUnit = (text: string): number => 0.5 * 10 ** -(text.split('.')[1]?.length ?? 0);

/** Period of a pattern of `lpPerMm`, µm. */
const periodUm = (changes: Changes, id: 'cutoffObjectLpPerMm' | 'cutoffImageLpPerMm'): number => 1000 / told(changes, id);

/**
 * One line of the table, at 550 nm. Its second number is rounded before it is multiplied by `M` for the
 * third and halved for the fourth, so half of its last digit comes along as slack.
 */
function line(id: string, M: number, NA: number, limit: string, projected: string, pixel: string): Row {
  const rounded = M * halfUnit(limit);
  const changes = engraved(M, NA);
  const values: Value[] = [
    { what: 'resolution limit, µm', printed: limit, of: () => periodUm(changes, 'cutoffObjectLpPerMm'), figure: 'cutoffObjectLpPerMm' },
    {
      what: 'the same on the sensor, µm',
      printed: projected,
      of: () => periodUm(changes, 'cutoffImageLpPerMm'),
      slack: rounded,
      figure: 'cutoffImageLpPerMm',
    },
    {
      what: 'pixel that just samples it, µm',
      printed: pixel,
      // At the pixel that the table asks for the sampling is critical: the ratio is 1.
      of: () => Number(pixel) * told({ ...changes, sensor: { pixelPitchUm: Number(pixel) } }, 'samplingRatio'),
      slack: rounded / 2,
      figure: 'samplingRatio',
    },
  ];
  return {
    id,
    claim: `${M}x/${NA} needs pixels of ${pixel} µm: half of ${projected} µm, the image of ${limit} µm (two figures each)`,
    source: MATCHING,
    known: 'from memory',
    how: 'cutoffObjectLpPerMm and cutoffImageLpPerMm as periods; samplingRatio at the pixel printed',
    values,
  };
}

export const SAMPLING: readonly Row[] = [
  {
    id: 'PIX-001',
    claim: 'pixels of 3.45 µm record at most 145 lp/mm on the sensor',
    source: OBJECT_SPACE,
    known: 'read',
    how: 'nyquistLpPerMm',
    values: [figureValue('nyquistLpPerMm', '145', { sensor: { pixelPitchUm: 3.45 } })],
  },
  {
    id: 'PIX-002',
    claim: 'a sensor of 2448 x 2050 pixels of 3.45 µm measures 8.45 x 7.07 mm',
    source: OBJECT_SPACE,
    known: 'read',
    how: 'the other way round: nyquistLpPerMm of that size and that count, by the pitch that follows from them',
    values: [
      figureValue('nyquistLpPerMm', '145', {
        sensor: { widthMm: 8.45, heightMm: 7.07, columns: 2448, rows: 2050, pixelPitchUm: undefined },
      }),
    ],
  },
  line('PIX-101', 1, 0.04, '6.9', '6.9', '3.5'),
  line('PIX-102', 2, 0.06, '4.6', '9.2', '4.6'),
  line('PIX-103', 2, 0.1, '2.8', '5.6', '2.8'),
  line('PIX-104', 4, 0.1, '2.8', '11.2', '5.6'),
  line('PIX-106', 4, 0.2, '1.4', '5.6', '2.8'),
  line('PIX-108', 10, 0.3, '0.92', '9.2', '4.6'),
  line('PIX-111', 20, 0.5, '0.55', '11.0', '5.5'),
  line('PIX-113', 40, 0.65, '0.42', '16.8', '8.4'),
  line('PIX-115', 40, 0.95, '0.29', '11.6', '5.8'),
  line('PIX-117', 100, 0.9, '0.31', '31.0', '15.5'),
];
