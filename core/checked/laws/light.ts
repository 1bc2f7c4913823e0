import type { Law } from '../check.ts';
import { type Changes, told } from '../rig.ts';

/** A nose of 20 mm, 10 mm away, over a field of 0.6 mm. */
const NOSE: Changes = { objective: { workingDistanceMm: 10, noseDiameterMm: 20 } };
const at = (table: Changes['table'], more: Changes = {}): Changes => ({
  ...NOSE,
  ...more,
  objective: { ...NOSE.objective, ...more.objective },
  table,
});
const rad = (deg: number): number => (deg * Math.PI) / 180;
/** In front of a nose as wide as it is far, half the half-space is `1 - 1/√2` in the shadow. */
const SHADOW = 1 - Math.SQRT1_2;

export const LIGHT_LAWS: readonly Law[] = [
  {
    law: 'an edge as far to the side as it is high lets light in from 45 degrees down, be it of the nose, of its end or of the relay',
    figures: ['lightMiddleDeg', 'lightFarCornerDeg'],
    pairs: () => {
      const relay: Changes = { objective: { workingDistanceMm: 40, parfocalDistanceMm: 45 }, relay: { clearApertureMm: 190 } };
      return [
        [told(at({}), 'lightMiddleDeg'), 45],
        [told(at({}, { objective: { noseDiameterMm: 19.4 } }), 'lightFarCornerDeg'), 45],
        // A tapered nose: its end of 12 mm lets more in, and the whole width, 14 mm up, less than 45° only from 28 mm on.
        [told(at({ noseFrontDiameterMm: 20, noseTaperLengthMm: 4 }, { objective: { noseDiameterMm: 27.9 } }), 'lightMiddleDeg'), 45],
        [told(at({ noseFrontDiameterMm: 2, noseTaperLengthMm: 4 }, { objective: { noseDiameterMm: 28 } }), 'lightMiddleDeg'), 45],
        [told(at({ noseFrontDiameterMm: 2, noseTaperLengthMm: 4 }, { objective: { noseDiameterMm: 27.4 } }), 'lightFarCornerDeg'), 45],
        // An end that is told, and no taper: the nose is as wide as that, whatever its whole width was taken as.
        [told(at({ noseFrontDiameterMm: 20 }, { objective: { noseDiameterMm: 34 } }), 'lightMiddleDeg'), 45],
        [told(at({ noseFrontDiameterMm: 19.4 }, { objective: { noseDiameterMm: 34 } }), 'lightFarCornerDeg'), 45],
        [told(at({}, relay), 'lightMiddleDeg'), 45],
        [told(at({}, { ...relay, relay: { clearApertureMm: 189.4 } }), 'lightFarCornerDeg'), 45],
      ];
    },
  },
  {
    law: 'without a taper the corner gets light from as high as the pairing itself says of its room for light',
    figures: ['lightFarCornerDeg'],
    pairs: () =>
      [3, 8, 25].map((workingDistanceMm) => {
        const rig: Changes = {
          objective: { workingDistanceMm, noseDiameterMm: 24, parfocalDistanceMm: 60 },
          relay: { clearApertureMm: 60 },
        };
        return [told(rig, 'lightFarCornerDeg'), told(rig, 'lightConeDeg')] as const;
      }),
  },
  {
    law: 'the zone of a sphere up to 30 degrees is half of it, and all that a disc at 45 degrees leaves is the root of a half (Archimedes)',
    figures: ['lightShare', 'diffuserShare'],
    pairs: () => [
      [told(at({}, { objective: { noseDiameterMm: 20 * Math.sqrt(3) } }), 'lightShare'), 0.5],
      [told(at({}), 'lightShare'), 1 - SHADOW],
      [told(at({ diffuserDiameterMm: 10 * Math.sqrt(3), diffuserHeightMm: 5 }), 'diffuserShare'), 0.5],
      // A diffuser that reaches above the nose's edge gets no light there.
      [told(at({ diffuserDiameterMm: 10, diffuserHeightMm: 9 }), 'diffuserShare'), 1 - SHADOW],
      [
        told(
          at({ diffuserDiameterMm: 30, diffuserTopDiameterMm: 14, diffuserThicknessMm: 1, diffuserHeightMm: 6 / Math.sqrt(3) }),
          'diffuserShare',
        ),
        0.5,
      ],
    ],
  },
  {
    law: 'an aperture of a half takes up 30 degrees about the axis in air, and as much in water with two thirds',
    figures: ['objectiveConeDeg'],
    pairs: () => [
      [told({ objective: { na: 0.5 } }, 'objectiveConeDeg'), 30],
      [told({ objective: { na: 2 / 3, immersionIndex: 4 / 3 } }, 'objectiveConeDeg'), 30],
    ],
  },
  {
    law: 'the nose comes as much closer as the subject is deep, under a flat surface of water by three quarters of that, and a cover takes its thickness',
    figures: ['noseClearanceMm'],
    pairs: () => [
      [told(at({}, { subject: { depthMm: 2 } }), 'noseClearanceMm'), 8],
      [told(at({ inTheWayMm: 1.5 }, { subject: { depthMm: 2 } }), 'noseClearanceMm'), 6.5],
      [told(at({}, { subject: { depthMm: 2, index: 4 / 3 } }), 'noseClearanceMm'), 8.5],
      [told(at({}, { subject: { depthMm: 11 } }), 'noseClearanceMm'), -1],
      // 200 mm of extension at 10x with 20 before 200 mm bring the subject 20² × 200 / (200 × F) nearer, F with the pupil 50 mm off.
      [
        told(at({}, { sensorOffsetMm: 200, subject: { depthMm: 9 } }), 'noseClearanceMm'),
        10 - 9 - (20 ** 2 * 200) / (200 * (200 + 200 - 50)),
      ],
      [
        told(at({}, { sensorOffsetMm: 200, subject: { depthMm: 9 }, objective: { workingDistanceMm: 1 } }), 'noseClearanceMm'),
        1 - 9 - 400 / 350,
      ],
    ],
  },
  {
    law: 'a diffuser has to spare what is left under the nose, beside it where it is wider, or beside the picture where it is narrow',
    figures: ['diffuserSpareMm'],
    pairs: () => {
      const subject = { depthMm: 2 };
      const under = { diffuserDiameterMm: 20, diffuserHeightMm: 7 };
      /** Higher than the nose's edge. */
      const diffuserHeightMm = 30;
      return [
        [told(at(under, { subject }), 'diffuserSpareMm'), 3],
        [told(at({ diffuserDiameterMm: 40, diffuserHeightMm, diffuserThicknessMm: 2 }, { subject }), 'diffuserSpareMm'), 8],
        [told(at({ diffuserDiameterMm: 16, diffuserHeightMm, diffuserThicknessMm: 1 }, { subject }), 'diffuserSpareMm'), -3],
        [told(at({ diffuserDiameterMm: 40, diffuserHeightMm, noseFrontDiameterMm: 18 }, { subject }), 'diffuserSpareMm'), 11],
        // Half-way up its taper a nose of 10 and 30 mm is 20 mm wide.
        [
          told(
            at(
              { diffuserDiameterMm: 36, diffuserHeightMm: 15, noseFrontDiameterMm: 10, noseTaperLengthMm: 10 },
              { subject, objective: { noseDiameterMm: 30 } },
            ),
            'diffuserSpareMm',
          ),
          8,
        ],
        // Beside the picture: 0.3 mm of field and the beam of sin u = 0.6, three quarters as wide as it is high.
        [told(at({ diffuserDiameterMm: 10, diffuserHeightMm: 4 }, { subject, objective: { na: 0.6 } }), 'diffuserSpareMm'), 5 - 0.3 - 3],
        // A nose above water stays higher over the back: 10 + 2 − 1.5.
        [told(at(under, { subject: { depthMm: 2, index: 4 / 3 } }), 'diffuserSpareMm'), 3.5],
      ];
    },
  },
  {
    law: 'what the nose leaves in the shadow is what a disc of its width covers, 2π (1 − cos) of a cone about the axis',
    figures: ['lightShare', 'lightMiddleDeg'],
    pairs: () =>
      [4, 9, 26].map((workingDistanceMm) => {
        const rig = at({}, { objective: { workingDistanceMm } });
        return [1 - told(rig, 'lightShare'), 1 - Math.cos(rad(90 - told(rig, 'lightMiddleDeg')))] as const;
      }),
  },
];
