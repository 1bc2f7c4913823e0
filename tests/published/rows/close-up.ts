import { gap, thinLens, train } from '../../../core/index.ts';
import { image } from '../image.ts';
import { type Changes, figureValue } from '../rig.ts';
import type { Row } from '../row.ts';
import { CLOSE_UP } from '../sources.ts';

const powered = (powerDioptre: number): Changes => ({ relay: { kind: 'supplementary', powerDioptre, focalLengthMm: undefined } });

/** A close-up lens of `dioptre` in the objective's place: an objective that magnifies so often with 1 m. */
const asObjective = (dioptre: number, cameraMm: number): Changes => ({
  objective: { magnification: dioptre, referenceFocalLengthMm: 1000, na: 0.02 },
  relay: { focalLengthMm: cameraMm },
});

export const CLOSE_UPS: readonly Row[] = [
  {
    id: 'CU-002',
    claim: 'a working distance of 25 cm takes +4; +1, +2 and +4 together make +7',
    source: CLOSE_UP,
    known: 'read',
    how: 'relayFocalLengthMm of +4; three thin lenses as one ray matrix, its power in dioptres',
    values: [
      figureValue('relayFocalLengthMm', '25', powered(4), { what: 'cm', per: 0.1 }),
      { what: 'dioptres', printed: '7', of: () => -1000 * train(thinLens(1000), thinLens(500), thinLens(250)).c },
    ],
  },
  {
    id: 'CU-003',
    claim: '+3: 0.333 m; 0.9x with 300 mm set to infinity; with a lens that reaches 1.5 m, 0.273 m and 5.5 times as large',
    source: CLOSE_UP,
    known: 'from memory',
    how: 'relayFocalLengthMm; systemMagnification with the +3 in the objective’s place; the virtual image through its ray matrix',
    values: [
      figureValue('relayFocalLengthMm', '0.333', powered(3), { what: 'm', per: 1e-3 }),
      figureValue('systemMagnification', '0.9', asObjective(3, 300), { what: 'with 300 mm' }),
      // Light backward: from the plane at 1.5 m that the camera lens sees to where the subject must be.
      { what: 'closest, m', printed: '0.273', of: () => 1e-3 * image(train(gap(-1500), thinLens(1000 / 3))).distance },
      { what: 'gain', printed: '5.5', of: () => 1 / image(train(gap(-1500), thinLens(1000 / 3))).magnification },
    ],
  },
  {
    id: 'CU-004',
    claim: 'a 200 mm lens behind +5, both at infinity, magnifies 1.0 times: f_camera / f_close-up',
    source: CLOSE_UP,
    known: 'formula read',
    how: 'systemMagnification with the +5 in the objective’s place',
    values: [figureValue('systemMagnification', '1.0', asObjective(5, 200))],
  },
  {
    id: 'CU-005',
    claim: '+2 focuses at 0.5 m, +4 at 0.25 m',
    source: { title: 'Close-up Lens or Close-up Filters', by: 'thecustomizewindows.com', year: 2013 },
    known: 'read',
    how: 'relayFocalLengthMm',
    values: [
      figureValue('relayFocalLengthMm', '0.5', powered(2), { what: '+2', per: 1e-3 }),
      figureValue('relayFocalLengthMm', '0.25', powered(4), { what: '+4', per: 1e-3 }),
    ],
  },
];
