import type { Law } from '../check.ts';
import { type Changes, engraved, told } from '../rig.ts';
import { HAIR, RING } from './stack.ts';

/** A corner 50 mm out with a relay of 50 mm whose principal plane stands `space` behind the exit pupil. */
const slanted = (space: number): Changes => ({
  relay: { focalLengthMm: 50 },
  sensor: { widthMm: 80, heightMm: 60 },
  infinitySpaceMm: space,
});

/** Detail, beams and room. */
export const DETAIL_LAWS: readonly Law[] = [
  {
    law: 'at the critical pixel of 20x/0.50, 5.5 µm, the optics fill just the pixels: 2000 x 1500 make 3 megapixels',
    figures: ['samplingRatio', 'opticalDetailMegapixels', 'recordedDetailMegapixels', 'nyquistLpPerMm', 'cutoffImageLpPerMm'],
    pairs: () => {
      const rig: Changes = {
        ...engraved('20x/0.50'),
        relay: { imageCircleMm: 60 },
        sensor: { widthMm: 11, heightMm: 8.25, pixelPitchUm: 5.5 },
      };
      return [
        [told(rig, 'samplingRatio'), 1],
        [told(rig, 'opticalDetailMegapixels'), 3],
        [told(rig, 'recordedDetailMegapixels'), 3],
        [told(rig, 'nyquistLpPerMm'), told(rig, 'cutoffImageLpPerMm')],
      ];
    },
  },
  {
    law: 'a relay its own focal length from the exit pupil sends every beam straight at the sensor, one at the pupil at atan(r / f)',
    figures: ['cornerChiefRayDeg'],
    pairs: () => [
      [told(slanted(0), 'cornerChiefRayDeg'), 45],
      [told(slanted(50), 'cornerChiefRayDeg'), 0],
      [told(slanted(100), 'cornerChiefRayDeg'), -45],
    ],
  },
  {
    law: 'the pupil alone limits a rig whose rings are all wider: its aperture, and no change of size with depth',
    figures: ['systemNa', 'magnificationChangePerMm'],
    pairs: () => [
      [told({}, 'systemNa'), 0.25],
      [told({}, 'magnificationChangePerMm'), 0],
    ],
  },
  {
    law: 'a ring as far behind the exit pupil as the objective is long puts the entrance pupil as far from the subject: one part a focal length; water around the subject puts it off by its index',
    figures: ['magnificationChangePerMm'],
    pairs: () => [
      [told(RING, 'magnificationChangePerMm'), 1 / 20],
      [told({ ...RING, subject: { index: 4 / 3 } }, 'magnificationChangePerMm'), 3 / 80],
      [told({ ...RING, objective: { immersionIndex: 4 / 3 } }, 'magnificationChangePerMm'), 3 / 80],
    ],
  },
  {
    law: 'a subject half as wide as what fills the sensor takes half of it, whichever way round it was told',
    figures: ['subjectFill'],
    pairs: () => [
      [told({ subject: { widthMm: 0.24, heightMm: 0.18 } }, 'subjectFill'), 0.5],
      [told({ subject: { widthMm: 0.18, heightMm: 0.24 } }, 'subjectFill'), 0.5],
      [told({ subject: { heightMm: 0.24 } }, 'subjectFill'), 0.24 / 0.36],
      [told({ subject: { widthMm: 0.3, heightMm: 0.4 } }, 'subjectFill'), 5 / 6],
    ],
  },
  {
    law: 'the coarser of aperture and pixels decides what is recorded: two pixels of 10 µm at 10x are 2 µm, and fine ones leave it to Rayleigh',
    figures: ['resolvedDetailUm'],
    pairs: () => [
      [told({ sensor: { pixelPitchUm: 10 } }, 'resolvedDetailUm'), 2],
      [told({ sensor: { pixelPitchUm: 2 } }, 'resolvedDetailUm'), told({}, 'rayleighUm')],
    ],
  },
  {
    law: "a sensor s beyond a relay one focal length behind the pupil brings the subject s over m² closer (Newton's equation), n times that where the nose dips into a medium",
    figures: ['clearWorkingDistanceMm'],
    pairs: () => {
      const rig: Changes = { objective: { workingDistanceMm: 20 }, infinitySpaceMm: 200 };
      return [
        [told(rig, 'clearWorkingDistanceMm'), 20],
        [told({ ...rig, sensorOffsetMm: 10 }, 'clearWorkingDistanceMm'), 19.9],
        [told({ ...rig, sensorOffsetMm: -10 }, 'clearWorkingDistanceMm'), 20.1],
        [
          told({ ...rig, objective: { workingDistanceMm: 20, immersionIndex: 1.33 }, sensorOffsetMm: 10 }, 'clearWorkingDistanceMm'),
          20 - 0.133,
        ],
        // Resin around the subject alone leaves air before the nose.
        [told({ ...rig, sensorOffsetMm: 10, subject: { index: 1.5 } }, 'clearWorkingDistanceMm'), 19.9],
      ];
    },
  },
  {
    law: 'an edge as far to the side as it is high lets light in from 45 degrees down, be it of the nose or of the relay',
    figures: ['lightConeDeg'],
    pairs: () => [
      [told({ objective: { workingDistanceMm: 10, noseDiameterMm: 19.4 } }, 'lightConeDeg'), 45],
      [
        told(
          { objective: { workingDistanceMm: 40, noseDiameterMm: 19.4, parfocalDistanceMm: 45 }, relay: { clearApertureMm: 189.4 } },
          'lightConeDeg',
        ),
        45,
      ],
    ],
  },
  {
    law: "a rig is as long as its pieces in a row: infinity space, relay's rim to its focus, sensor beyond it",
    figures: ['totalLengthMm'],
    pairs: () => [
      [told({}, 'totalLengthMm'), 250],
      [told({ relay: { frontPrincipalPlaneFromRimMm: -30 } }, 'totalLengthMm'), 220],
      [told({ relay: { rimToSensorMm: 150 }, sensorOffsetMm: 5 }, 'totalLengthMm'), 205],
    ],
  },
  {
    law: 'a frame stands for one depth, and each one more for four fifths of it: five reach as deep as 4.2 depths',
    figures: ['framesForSubject'],
    pairs: () => {
      const depth = told({}, 'depthOfFieldUm') / 1000;
      const border = 21 / 5;
      const frames = (depths: number): number => told({ subject: { depthMm: depths * depth } }, 'framesForSubject');
      return [
        [frames(0), 1],
        [frames(1), 1],
        [frames(1 + HAIR), 2],
        [frames(border - HAIR), 5],
        [frames(border + HAIR), 6],
      ];
    },
  },
];
