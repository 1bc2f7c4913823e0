import type { Settings } from '../../table.ts';
import type { Law } from '../check.ts';
import { type Changes, told } from '../rig.ts';

/** A close-up lens of 200 mm on a 100 mm lens that reaches 1/2 with the subject 300 mm from its rim, where its principal plane is. */
const SETTINGS: Settings = {
  closeUpFocalLengthMm: 200,
  cameraFocalLengthMm: 100,
  cameraMagnification: 0.5,
  cameraSubjectDistanceMm: 300,
  cameraPrincipalPlaneMm: 0,
  cameraFNumber: 8,
  pupilRatio: 1,
};
const rig = (table: Settings = {}, more: Changes = {}): Changes => ({ ...more, table: { ...SETTINGS, ...table } });

/** 200 mm and, 100 mm before it, another of 200 mm. */
const TWO: Settings = { secondPowerDioptre: 5, secondSeparationMm: 100 };
/** A lens that moves as a whole, drawn out from 1/4 to 3/4. */
const DRAWN: Settings = { cameraMagnification: 0.25, cameraSubjectDistanceMm: 500, nearFocalLengthMm: 100, extensionMm: 50 };
/** No close-up lens told on the table. */
const RELAY: Settings = { closeUpFocalLengthMm: undefined, closeUpClearApertureMm: undefined };

export const CLOSE_UP_LAWS: readonly Law[] = [
  {
    law: 'two lenses of 200 mm, 100 mm apart: 133.3 mm together, 66.7 mm of that behind the front one, and what is sharp 66.7 mm before it',
    figures: ['closeUpPowerDioptre', 'closeUpFocalMm', 'closeUpPlaneMm', 'closeUpFarthestMm'],
    pairs: () => [
      [told(rig(TWO), 'closeUpPowerDioptre'), 7.5],
      [told(rig(TWO), 'closeUpFocalMm'), 400 / 3],
      [told(rig(TWO), 'closeUpPlaneMm'), 200 / 3],
      [told(rig(TWO), 'closeUpFarthestMm'), 200 / 3],
      [told(rig({ ...TWO, secondSeparationMm: 0 }), 'closeUpFocalMm'), 100],
      [told(rig(), 'closeUpFarthestMm'), 200],
    ],
  },
  {
    law: 'the relay is the close-up lens where it is one',
    figures: ['closeUpFocalMm'],
    pairs: () => [
      [
        told(
          { relay: { kind: 'supplementary', powerDioptre: 4, focalLengthMm: undefined }, table: { cameraFocalLengthMm: 100 } },
          'closeUpFocalMm',
        ),
        250,
      ],
    ],
  },
  {
    law: 'equal focal lengths show life size, and fill the sensor with as much as its own width',
    figures: ['closeUpFarMagnification', 'closeUpFarFieldMm'],
    pairs: () => [
      [told(rig({ cameraFocalLengthMm: 200 }), 'closeUpFarMagnification'), 1],
      [told(rig({ cameraFocalLengthMm: 200 }, { sensor: { widthMm: 24 } }), 'closeUpFarFieldMm'), 24],
    ],
  },
  {
    law: 'what stands as far off as the focal length of the close-up lens comes to half of it and is twice as large, whatever lens it is',
    figures: ['closeUpNearestMm', 'closeUpGain', 'closeUpNearMagnification', 'closeUpNearFieldMm'],
    pairs: () => {
      const equal = rig({ cameraSubjectDistanceMm: 200 }, { sensor: { widthMm: 24 } });
      return [
        [told(equal, 'closeUpNearestMm'), 100],
        [told(equal, 'closeUpGain'), 2],
        [told(equal, 'closeUpNearMagnification'), 1],
        [told(equal, 'closeUpNearFieldMm'), 24],
      ];
    },
  },
  {
    law: 'far off, nearest is farthest: m₀ X is the camera lens’s focal length',
    figures: ['closeUpNearestMm', 'closeUpNearMagnification'],
    pairs: () => {
      const far = 1e5;
      const alone = rig({ cameraSubjectDistanceMm: far, cameraMagnification: 100 / far });
      return [
        [told(alone, 'closeUpNearestMm') * (1 + 200 / far), told(alone, 'closeUpFarthestMm')],
        [told(alone, 'closeUpNearMagnification') - 100 / far, told(alone, 'closeUpFarMagnification')],
      ];
    },
  },
  {
    law: 'closest focus counts from the sensor, what the close-up lens sees from the rim',
    figures: ['closeUpGain'],
    pairs: () => [[told({ table: { closeUpFocalLengthMm: 200, closestFocusMm: 500, cameraLengthMm: 100 } }, 'closeUpGain'), 3]],
  },
  {
    law: 'a lens that reaches 1/2 by moving has half as much again of its f-number there, with the close-up lens or without',
    figures: ['closeUpNearFNumber', 'closeUpNearDiffractionFNumber'],
    pairs: () => [
      [told(rig(), 'closeUpNearFNumber'), 12],
      [told(rig({ pupilRatio: 0.5 }), 'closeUpNearFNumber'), 16],
      [told(rig(), 'closeUpNearDiffractionFNumber'), told(rig(), 'closeUpDiffractionFNumber') / 1.5],
    ],
  },
  {
    law: 'a lens in its place takes as much light at f/8 as any working at f/8: the Airy disc, and the pixels that meet it',
    figures: ['closeUpAiryUm', 'closeUpDiffractionFNumber'],
    pairs: () => {
      const eight: Changes = { objective: { magnification: 10, na: 10 / 16 } };
      const airy = told(eight, 'airyDiameterUm');
      const sampling = told(eight, 'samplingRatio');
      return [
        [told(rig(), 'closeUpAiryUm'), airy],
        [told(rig(), 'closeUpDiffractionFNumber'), 8 / sampling],
      ];
    },
  },
  {
    law: 'tubes as long as the focal length show life size, two focal lengths off, and cost two stops',
    figures: ['tubesFarExtensionMm', 'tubesFarDistanceMm', 'tubesFarFNumber', 'tubesFarCostEv', 'tubesDiffractionFNumber'],
    pairs: () => {
      const equal = rig({ closeUpFocalLengthMm: 100 });
      return [
        [told(equal, 'tubesFarExtensionMm'), 100],
        [told(equal, 'tubesFarDistanceMm'), 200],
        [told(rig({ closeUpFocalLengthMm: 100, cameraPrincipalPlaneMm: 30 }), 'tubesFarDistanceMm'), 170],
        [told(equal, 'tubesFarFNumber'), 16],
        [told(equal, 'tubesFarCostEv'), 2],
        [told(equal, 'tubesDiffractionFNumber'), told(equal, 'closeUpDiffractionFNumber') / 2],
      ];
    },
  },
  {
    law: 'and so at nearest focus, where the close-up lens shows life size and the lens alone 1/3: half the light again is lost',
    figures: ['tubesNearExtensionMm', 'tubesNearDistanceMm', 'tubesNearFNumber', 'tubesNearCostEv', 'tubesNearDiffractionFNumber'],
    pairs: () => {
      const life = rig({ cameraMagnification: 1 / 3, cameraSubjectDistanceMm: 400 });
      return [
        [told(life, 'tubesNearExtensionMm'), 100],
        [told(life, 'tubesNearDistanceMm'), 200],
        [told(life, 'tubesNearFNumber'), 16],
        [told(life, 'tubesNearCostEv'), 2 * Math.log2(1.5)],
        [told(life, 'tubesNearDiffractionFNumber'), told(life, 'closeUpDiffractionFNumber') / 2],
      ];
    },
  },
  {
    law: 'a lens drawn out by half its focal length: from infinity to 1/2, three focal lengths off; from 1/4, five off, to 3/4, 7/3 off',
    figures: ['ownTubesFarMagnification', 'ownTubesFarDistanceMm', 'ownTubesNearMagnification', 'ownTubesNearDistanceMm'],
    pairs: () => [
      [told(rig(DRAWN), 'ownTubesFarMagnification'), 1 / 2],
      [told(rig(DRAWN), 'ownTubesFarDistanceMm'), 300],
      [told(rig(DRAWN), 'ownTubesNearMagnification'), 3 / 4],
      [told(rig(DRAWN), 'ownTubesNearDistanceMm'), 700 / 3],
    ],
  },
  {
    law: 'the rim needs the pupil and, on either side, the corner’s slant over the depth; where the slant alone fills it half the light is left',
    figures: ['closeUpRoomMm', 'closeUpShortestCameraMm'],
    pairs: () => {
      // A diagonal of 30 mm behind 100 mm: a slope of 0.15, 6 mm over 40 mm.
      const rim = rig({ closeUpClearApertureMm: 54, cameraFNumber: 4, cameraPupilDepthMm: 40 }, { sensor: { widthMm: 24, heightMm: 18 } });
      return [
        [told(rim, 'closeUpRoomMm'), 54 - 25 - 12],
        [told(rim, 'closeUpShortestCameraMm'), 200 / 9],
        // Another lens 10 mm before it: 7.5 mm of slant.
        [told({ ...rim, table: { ...rim.table, secondPowerDioptre: 2, secondSeparationMm: 10 } }, 'closeUpRoomMm'), 54 - 25 - 15],
        // The relay's own rim, where that is the close-up lens.
        [
          told({ ...rim, relay: { kind: 'supplementary', clearApertureMm: 60 }, table: { ...rim.table, ...RELAY } }, 'closeUpRoomMm'),
          60 - 25 - 12,
        ],
      ];
    },
  },
];
