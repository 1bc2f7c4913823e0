import { gap, thinLens, train } from '../../index.ts';
import { MM_PER_M } from '../../units.ts';
import type { Check } from '../check.ts';
import { image } from '../image.ts';
import { type Changes, figureValue } from '../rig.ts';

const powered = (powerDioptre: number): Changes => ({ relay: { kind: 'supplementary', powerDioptre, focalLengthMm: undefined } });

/** A close-up lens of `dioptre` in the objective's place: an objective that magnifies so often with 1 m. */
const asObjective = (dioptre: number, cameraMm: number): Changes => ({
  objective: { magnification: dioptre, referenceFocalLengthMm: MM_PER_M },
  relay: { focalLengthMm: cameraMm },
});

/** A close-up lens of `dioptre` on a camera lens. */
const screwedOn = (dioptre: number, table: Changes['table'] = {}): Changes => ({ ...powered(dioptre), table });

export const CLOSE_UPS: readonly Check[] = [
  {
    id: 'CU-002',
    claim: 'a working distance of 25 cm takes +4; +1, +2 and +4 together make +7',
    source: 'encyclopaedia-close-up',
    known: 'read',
    how: 'the focal length of +4; three thin lenses as one ray matrix; +3 and +4 in one mount on the table',
    values: [
      figureValue('relayFocalLengthMm', '25', powered(4), { what: 'cm', per: 1 / 10 }),
      figureValue('closeUpFarthestMm', '25', screwedOn(4), { what: 'farthest, cm', per: 1 / 10 }),
      // Two of the three in one mount: what is stacked in front of them adds its own.
      figureValue('closeUpPowerDioptre', '7', screwedOn(3, { secondPowerDioptre: 4, secondSeparationMm: 0 }), { what: '3 and 4' }),
      { what: 'dioptres', printed: '7', of: () => -MM_PER_M * train(thinLens(1000), thinLens(500), thinLens(250)).c },
    ],
  },
  {
    id: 'CU-003',
    claim: '+3: 0.333 m; 0.9x with 300 mm set to infinity; with a lens that reaches 1.5 m, 0.273 m and 5.5 times as large',
    source: 'encyclopaedia-close-up',
    known: 'from memory',
    how: 'the focal length; the magnification with the +3 in the objective’s place; the virtual image through its ray matrix; and the close-up lens on a camera lens',
    values: [
      figureValue('relayFocalLengthMm', '0.333', powered(3), { what: 'm', per: 1 / MM_PER_M }),
      figureValue('systemMagnification', '0.9', asObjective(3, 300), { what: 'with 300 mm' }),
      figureValue('closeUpFarthestMm', '0.333', screwedOn(3), { what: 'farthest, m', per: 1 / MM_PER_M }),
      figureValue('closeUpFarMagnification', '0.9', screwedOn(3, { cameraFocalLengthMm: 300 }), { what: 'on 300 mm' }),
      figureValue('closeUpNearestMm', '0.273', screwedOn(3, { cameraSubjectDistanceMm: 1500 }), { what: 'nearest, m', per: 1 / MM_PER_M }),
      figureValue('closeUpGain', '5.5', screwedOn(3, { cameraSubjectDistanceMm: 1500 }), { what: 'times as large' }),
      // Light backward: from the plane at 1.5 m that the camera lens sees to where the subject must be.
      { what: 'closest, m', printed: '0.273', of: () => image(train(gap(-1500), thinLens(MM_PER_M / 3))).distance / MM_PER_M },
      { what: 'gain', printed: '5.5', of: () => 1 / image(train(gap(-1500), thinLens(MM_PER_M / 3))).magnification },
    ],
  },
  {
    id: 'CU-004',
    claim: 'a 200 mm lens behind +5, both at infinity, magnifies 1.0 times: f_camera / f_close-up',
    source: 'encyclopaedia-close-up',
    known: 'formula read',
    how: 'the magnification with the +5 in the objective’s place, and with it on a camera lens',
    values: [
      figureValue('systemMagnification', '1.0', asObjective(5, 200), { what: 'as an objective' }),
      figureValue('closeUpFarMagnification', '1.0', screwedOn(5, { cameraFocalLengthMm: 200 }), { what: 'screwed on' }),
    ],
  },
  {
    id: 'CU-005',
    claim: '+2 focuses at 0.5 m, +4 at 0.25 m',
    source: 'close-up-article',
    known: 'read',
    how: 'the focal length of the relay',
    values: [
      figureValue('relayFocalLengthMm', '0.5', powered(2), { what: '+2', per: 1 / MM_PER_M }),
      figureValue('relayFocalLengthMm', '0.25', powered(4), { what: '+4', per: 1 / MM_PER_M }),
    ],
  },
];
