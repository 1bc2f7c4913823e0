import { diffractionMtf } from '../../index.ts';
import type { Law } from '../check.ts';
import { type Changes, engraved, told } from '../rig.ts';
import { cornerAt } from '../rows/aperture.ts';
import { EQUAL_DISCS } from '../rows/diffraction.ts';

/** Wider than anything that counts, mm. */
const WIDE = 60;

/** A square sensor of 20 mm and 16 million pixels, everything but the named circle wide. */
const square = (more: Changes): Changes => ({
  ...more,
  objective: { ...engraved('10x/0.50').objective, fieldNumberMm: WIDE, ...more.objective },
  relay: { imageCircleMm: WIDE, ...more.relay },
  sensor: { widthMm: 20, heightMm: 20, pixelPitchUm: 5 },
});

/** A mask with a round hole of 20 mm right on the sensor. */
const MASK: Changes = square({ stops: [{ label: 'mask', diameterMm: 20, fromSensorMm: 0 }] });
const FIELD_OF_20 = square({ objective: { fieldNumberMm: 20 } });
/** Equal discs with the corner at six tenths of the way to where they part, 12 mm out. */
const EQUAL_AT_12: Changes = { ...EQUAL_DISCS, sensor: { widthMm: 19.2, heightMm: 14.4 } };
const CIRCLE_OF_20 = square({ relay: { imageCircleMm: 20 } });

/** The picture: its field, its circles, the light in its corner. */
export const PICTURE_LAWS: readonly Law[] = [
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
      [told(EQUAL_AT_12, 'cornerIllumination'), diffractionMtf(0.6)],
    ],
  },
  {
    law: 'a quarter of the light is two stops less, and the f-number of a pupil of half the diameter',
    figures: ['cornerIllumination', 'cornerLossEv', 'cornerFNumber'],
    pairs: () => {
      const quarter = cornerAt(8, 1 / 4);
      return [
        [told(quarter, 'cornerIllumination'), 0.25],
        [told(quarter, 'cornerLossEv'), 2],
        [told(quarter, 'cornerFNumber'), 16],
      ];
    },
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
      const focalLengthMm = told(EQUAL_AT_12, 'shortestCoveringFocalLengthMm');
      return [[told({ ...EQUAL_AT_12, relay: { ...EQUAL_AT_12.relay, focalLengthMm } }, 'cornerIllumination'), 0.5]];
    },
  },
  {
    law: 'a circle of 4000 pixels across records 4π megapixels, and no pixel more than it covers',
    figures: ['recordedDetailMegapixels'],
    pairs: () => [FIELD_OF_20, MASK, CIRCLE_OF_20].map((rig) => [told(rig, 'recordedDetailMegapixels'), 4 * Math.PI] as const),
  },
  {
    law: 'a circle of 20 mm on the sensor is one of 2 mm at the subject at 10x, whichever circle it is',
    figures: ['goodFieldMm'],
    pairs: () => [FIELD_OF_20, MASK, CIRCLE_OF_20].map((rig) => [told(rig, 'goodFieldMm'), 2] as const),
  },
];
