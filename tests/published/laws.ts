import { diffractionMtf } from '../../core/index.ts';
import { BUILD_LAWS } from './laws/build.ts';
import { CLOSE_UP_LAWS } from './laws/close-up.ts';
import { INFINITY_LAWS } from './laws/infinity.ts';
import { LIGHT_LAWS } from './laws/light.ts';
import { STACK_LAWS } from './laws/stack.ts';
import { STILLNESS_LAWS } from './laws/stillness.ts';
import { type Changes, engraved, told } from './rig.ts';
import type { ToldId } from './row.ts';
import { cornerAt } from './rows/aperture.ts';

/** A statement that follows from a definition or from plain geometry: each pair must be equal. */
export interface Law {
  readonly law: string;
  /** Figures that break it when they are off. */
  readonly figures: readonly ToldId[];
  readonly pairs: () => readonly (readonly [core: number, law: number])[];
}

/** A square sensor of 20 mm and 16 million pixels, everything but the named circle 60 mm or wider. */
const square = (more: Changes): Changes => ({
  ...engraved(10, 0.5),
  ...more,
  objective: { magnification: 10, na: 0.5, fieldNumberMm: 60, ...more.objective },
  relay: { imageCircleMm: 60, ...more.relay },
  sensor: { widthMm: 20, heightMm: 20, pixelPitchUm: 5 },
});

/** A mask with a round hole of 20 mm right on the sensor. */
const MASK: Changes = square({ stops: [{ label: 'mask', diameterMm: 20, fromSensorMm: 0 }] });
const FIELD_OF_20 = square({ objective: { fieldNumberMm: 20 } });
const CIRCLE_OF_20 = square({ relay: { imageCircleMm: 20 } });

/** Pupil and rim of 10 mm, 100 mm apart; with 200 mm behind they part at 20 mm on the sensor. */
export const EQUAL_DISCS: Changes = { relay: { clearApertureMm: 10 }, infinitySpaceMm: 100 };

/** A corner 50 mm out with a relay of 50 mm whose principal plane stands `space` behind the exit pupil. */
const slanted = (space: number): Changes => ({
  relay: { focalLengthMm: 50 },
  sensor: { widthMm: 80, heightMm: 60 },
  infinitySpaceMm: space,
});

export const LAWS: readonly Law[] = [
  ...BUILD_LAWS,
  ...INFINITY_LAWS,
  ...LIGHT_LAWS,
  ...STACK_LAWS,
  ...STILLNESS_LAWS,
  {
    law: 'a field has the shape of its sensor: 3 to 4 to 5',
    figures: ['objectFieldWidthMm', 'objectFieldHeightMm', 'objectFieldDiagonalMm'],
    pairs: () => [
      [told({}, 'objectFieldHeightMm') / told({}, 'objectFieldWidthMm'), 3 / 4],
      [told({}, 'objectFieldDiagonalMm') / told({}, 'objectFieldWidthMm'), 5 / 4],
    ],
  },
  {
    law: 'what fills the sensor at 10x is a tenth of it',
    figures: ['systemMagnification', 'objectFieldWidthMm', 'objectFieldHeightMm', 'objectFieldDiagonalMm', 'objectiveFocalLengthMm'],
    pairs: () => [
      [told({}, 'systemMagnification'), 10],
      [told({}, 'objectFieldWidthMm'), 0.48],
      [told({}, 'objectFieldHeightMm'), 0.36],
      [told({}, 'objectFieldDiagonalMm'), 0.6],
      [told({}, 'objectiveFocalLengthMm'), 20],
    ],
  },
  {
    law: 'a dioptre is one over a metre',
    figures: ['relayFocalLengthMm'],
    pairs: () => [[told({ relay: { kind: 'supplementary', powerDioptre: 5, focalLengthMm: undefined } }, 'relayFocalLengthMm'), 200]],
  },
  {
    law: 'behind its own tube lens an objective fills its field number, behind half of it half (ISO 8578: in the primary image)',
    figures: ['correctedCircleMm'],
    pairs: () => [
      [told({ objective: { fieldNumberMm: 22 } }, 'correctedCircleMm'), 22],
      [told({ objective: { fieldNumberMm: 22 }, relay: { focalLengthMm: 100 } }, 'correctedCircleMm'), 11],
    ],
  },
  {
    law: 'without glass a relay is sharp in the circle that it is rated for',
    figures: ['sharpCircleMm'],
    pairs: () => [[told({ relay: { imageCircleMm: 43.3 } }, 'sharpCircleMm'), 43.3]],
  },
  {
    law: 'a circle drawn into a square holds π/4 of it, whichever circle it is, and the smallest counts',
    figures: ['correctedShare', 'litShare', 'sharpShare', 'coveredShare'],
    pairs: () => [
      [told(FIELD_OF_20, 'correctedShare'), Math.PI / 4],
      [told(MASK, 'litShare'), Math.PI / 4],
      [told(CIRCLE_OF_20, 'sharpShare'), Math.PI / 4],
      ...[FIELD_OF_20, MASK, CIRCLE_OF_20].map((rig) => [told(rig, 'coveredShare'), Math.PI / 4] as const),
    ],
  },
  {
    law: 'a mask of 20 mm on the sensor lights 20 mm: full light up to its edge, none beyond',
    figures: ['litCircleMm', 'onsetRadiusMm', 'halfRadiusMm', 'cutoffRadiusMm'],
    pairs: () => [
      [told(MASK, 'litCircleMm'), 20],
      [told(MASK, 'onsetRadiusMm'), 10],
      [told(MASK, 'halfRadiusMm'), 10],
      [told(MASK, 'cutoffRadiusMm'), 10],
    ],
  },
  {
    law: 'two equal discs share what a round pupil shares with its shifted self: its MTF, at half light and where they part',
    figures: ['halfRadiusMm', 'cutoffRadiusMm', 'litCircleMm', 'cornerIllumination'],
    pairs: () => [
      [told(EQUAL_DISCS, 'cutoffRadiusMm'), 20],
      [diffractionMtf(told(EQUAL_DISCS, 'halfRadiusMm') / 20), 0.5],
      [diffractionMtf(told({ ...EQUAL_DISCS, litThreshold: 0.8 }, 'litCircleMm') / 40), 0.8],
      [told({ ...EQUAL_DISCS, sensor: { widthMm: 19.2, heightMm: 14.4 } }, 'cornerIllumination'), diffractionMtf(0.6)],
    ],
  },
  {
    law: 'a quarter of the light is two stops less, and the f-number of a pupil of half the diameter',
    figures: ['cornerIllumination', 'cornerLossEv', 'cornerFNumber'],
    pairs: () => [
      [told(cornerAt(8, 0.25), 'cornerIllumination'), 0.25],
      [told(cornerAt(8, 0.25), 'cornerLossEv'), 2],
      [told(cornerAt(8, 0.25), 'cornerFNumber'), 16],
    ],
  },
  {
    law: 'the field number 22 at 200 mm covers a diagonal of 33 mm from 300 mm on',
    figures: ['shortestCoveringFocalLengthMm'],
    pairs: () => [
      [told({ objective: { fieldNumberMm: 22 }, sensor: { widthMm: 26.4, heightMm: 19.8 } }, 'shortestCoveringFocalLengthMm'), 300],
    ],
  },
  {
    law: 'where the light decides, the shortest relay puts the corner right at the threshold',
    figures: ['shortestCoveringFocalLengthMm'],
    pairs: () => {
      const rig: Changes = { ...EQUAL_DISCS, sensor: { widthMm: 19.2, heightMm: 14.4 } };
      const focalLengthMm = told(rig, 'shortestCoveringFocalLengthMm');
      return [[told({ ...rig, relay: { ...rig.relay, focalLengthMm } }, 'cornerIllumination'), 0.5]];
    },
  },
  {
    law: 'at the critical pixel of 20x/0.50, 5.5 µm, the optics fill just the pixels: 2000 x 1500 make 3 megapixels',
    figures: ['samplingRatio', 'opticalDetailMegapixels', 'recordedDetailMegapixels', 'nyquistLpPerMm', 'cutoffImageLpPerMm'],
    pairs: () => {
      const rig: Changes = {
        ...engraved(20, 0.5),
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
    law: 'a circle of 4000 pixels across records 4π megapixels, and no pixel more than it covers',
    figures: ['recordedDetailMegapixels'],
    pairs: () => [FIELD_OF_20, MASK, CIRCLE_OF_20].map((rig) => [told(rig, 'recordedDetailMegapixels'), 4 * Math.PI] as const),
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
    pairs: () => {
      const rig: Changes = { stops: [{ label: 'ring', diameterMm: 5, fromShoulderMm: 20 }] };
      return [
        [told(rig, 'magnificationChangePerMm'), 1 / 20],
        [told({ ...rig, subject: { index: 4 / 3 } }, 'magnificationChangePerMm'), 3 / 80],
        [told({ ...rig, objective: { immersionIndex: 4 / 3 } }, 'magnificationChangePerMm'), 3 / 80],
      ];
    },
  },
  {
    law: 'a subject half as wide as what fills the sensor takes half of it, whichever way round it was told',
    figures: ['subjectFill'],
    pairs: () => [
      [told({ subject: { widthMm: 0.24, heightMm: 0.1 } }, 'subjectFill'), 0.5],
      [told({ subject: { widthMm: 0.1, heightMm: 0.24 } }, 'subjectFill'), 0.5],
      [told({ subject: { heightMm: 0.24 } }, 'subjectFill'), 0.24 / 0.36],
      [told({ subject: { widthMm: 0.3, heightMm: 0.36 } }, 'subjectFill'), 0.3 / 0.36],
    ],
  },
  {
    law: 'a circle of 20 mm on the sensor is one of 2 mm at the subject at 10x, whichever circle it is',
    figures: ['goodFieldMm'],
    pairs: () => [FIELD_OF_20, MASK, CIRCLE_OF_20].map((rig) => [told(rig, 'goodFieldMm'), 2] as const),
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
      const rig: Changes = { ...engraved(4, 0.1), depth: { convention: 'wave-and-pixel', blurUm: 2.75 } };
      const depth = told(rig, 'depthOfFieldUm') / 1000;
      const frames = (depths: number): number => told({ ...rig, subject: { depthMm: depths * depth } }, 'framesForSubject');
      return [
        [frames(0), 1],
        [frames(1), 1],
        [frames(1.01), 2],
        [frames(4.199), 5],
        [frames(4.201), 6],
      ];
    },
  },
  ...CLOSE_UP_LAWS,
];
