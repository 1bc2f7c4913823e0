import type { Law } from '../check.ts';
import { type Changes, engraved, told } from '../rig.ts';

const WATER = 4 / 3;
/** So little more or less that it only tells on which side of a border one is. */
export const HAIR = 1e-6;

/** A rig, its depth, and a subject of so many depths. */
const RIG: Changes = engraved('4x/0.10');
const depthMm = (): number => told(RIG, 'depthOfFieldUm') / 1000;
const deep = (depths: number, table: Changes['table'] = {}): Changes => ({ ...RIG, subject: { depthMm: depths * depthMm() }, table });

/** A ring one focal length of the objective behind its pupil: a part of the size for each focal length of depth. */
export const RING: Changes = { stops: [{ label: 'ring', diameterMm: 5, fromShoulderMm: 20 }] };
const RINGED: Changes = { ...RING, subject: { depthMm: 0.2 } };

export const STACK_LAWS: readonly Law[] = [
  {
    law: 'a frame shares with the next what the overlap says, and as much again as the rail may err on either side',
    figures: ['frameStepUm'],
    pairs: () => {
      const depth = told(engraved('10x/0.25'), 'depthOfFieldUm');
      return [
        [told({ ...engraved('10x/0.25'), table: { overlap: 0.25 } }, 'frameStepUm'), (3 * depth) / 4],
        [told({ ...engraved('10x/0.25'), table: { overlap: 0, railErrorUm: depth / 8 } }, 'frameStepUm'), (3 * depth) / 4],
      ];
    },
  },
  {
    law: 'water looks three quarters as deep as it is (Bernoulli and Snellius, index 4/3): a nose above it moves by three for the focus by four, one that dips in by four',
    figures: ['focusPerRail', 'railStepUm'],
    pairs: () => {
      const above: Changes = { ...RIG, subject: { index: WATER } };
      const dipped: Changes = { ...RIG, objective: { ...RIG.objective, immersionIndex: WATER } };
      return [
        [told(above, 'focusPerRail'), 4 / 3],
        [told(above, 'railStepUm'), (3 / 4) * told(above, 'frameStepUm')],
        [told(dipped, 'focusPerRail'), 1],
        [told(dipped, 'railStepUm'), told(dipped, 'frameStepUm')],
        // Five rail errors of the air are four of the focus in a medium of 1.25.
        [
          told({ ...RIG, subject: { index: 1.25 }, table: { overlap: 0, railErrorUm: 4 } }, 'frameStepUm'),
          told({ ...RIG, subject: { index: 1.25 } }, 'depthOfFieldUm') - 10,
        ],
      ];
    },
  },
  {
    law: 'a frame stands for one depth, and each one more for what it does not share: with a quarter shared five reach four depths',
    figures: ['stackFrames', 'framesInAll'],
    pairs: () =>
      (
        [
          [0, 1],
          [1, 1],
          [1 + HAIR, 2],
          [4 - HAIR, 5],
          [4 + HAIR, 6],
        ] as const
      ).flatMap(([depths, due]) => [
        [told(deep(depths, { overlap: 0.25 }), 'stackFrames'), due] as const,
        [told(deep(depths, { overlap: 0.25 }), 'framesInAll'), due] as const,
      ]),
  },
  {
    law: 'four depths at steps of three quarters take five frames, and one more where the rail errs by an eighth at ends that nobody looks at',
    figures: ['stackFramesUnwatched'],
    pairs: () => {
      const border = 15 / 4;
      const errs = { overlap: 0, railErrorUm: (1000 * depthMm()) / 8 };
      return [
        [told(deep(4 - HAIR, errs), 'stackFrames'), 5],
        [told(deep(border - HAIR, errs), 'stackFramesUnwatched'), 5],
        [told(deep(border + HAIR, errs), 'stackFramesUnwatched'), 6],
        [told(deep(4 - HAIR, { overlap: 0.25 }), 'stackFramesUnwatched'), 5],
      ];
    },
  },
  {
    law: 'a rail that goes whole increments goes the most that fit: of three quarters of a depth, three of a fifth; in water each is four thirds for the focus',
    figures: ['frameStepUm', 'railStepUm', 'stackFrames'],
    pairs: () => {
      const overlap = 0.25;
      const fifth = { overlap, railIncrementUm: 200 * depthMm() };
      const wet: Changes = { ...RIG, subject: { index: WATER } };
      const wetDepth = told(wet, 'depthOfFieldUm');
      return [
        [told({ ...RIG, table: fifth }, 'railStepUm'), 600 * depthMm()],
        [told(deep(4 - HAIR, fifth), 'stackFrames'), 6],
        [told(deep(4 + HAIR, fifth), 'stackFrames'), 7],
        // Just as long as an increment is, to the last digit.
        [told({ ...RIG, table: { overlap, railIncrementUm: 750 * depthMm() } }, 'railStepUm'), 750 * depthMm()],
        [told({ ...wet, table: { overlap: 0, railIncrementUm: (3 / 4) * (wetDepth / 2.5) } }, 'frameStepUm'), wetDepth / 1.25],
      ];
    },
  },
  {
    law: 'two neighbours that part by all that they share just touch: half of the overlap each',
    figures: ['railErrorForgivenUm'],
    pairs: () => {
      const overlap = 0.3;
      const railErrorUm = told({ ...RIG, table: { overlap } }, 'railErrorForgivenUm');
      const at = (times: number): number =>
        told({ ...RIG, table: { overlap, railErrorUm: times * railErrorUm } }, 'frameStepUm') / (1000 * depthMm());
      return [
        [railErrorUm, 150 * depthMm()],
        [at(1), 0.7],
        [at(2), 0.4],
        // Whole fifths: three, of the three and a half that the overlap lets be, so that two fifths are shared.
        [told({ ...RIG, table: { overlap, railIncrementUm: 200 * depthMm() } }, 'railErrorForgivenUm'), 200 * depthMm()],
      ];
    },
  },
  {
    law: 'corners that are two depths off want as many frames as a subject that much deeper',
    figures: ['curvatureFrames', 'framesInAll'],
    pairs: () => {
      const overlap = 0.5;
      const curved = deep(2 - HAIR, { overlap, fieldCurvatureUm: 2000 * depthMm() });
      return [
        [told(curved, 'curvatureFrames'), 4],
        [told(curved, 'framesInAll'), told(deep(4 - HAIR, { overlap }), 'stackFrames')],
        [told(deep(0, { overlap, fieldCurvatureUm: 999 * depthMm() }), 'curvatureFrames'), 0],
      ];
    },
  },
  {
    law: 'five frames are four steps apart, and each takes its settling, its flash and its exposure',
    figures: ['railTravelMm', 'focusTravelMm', 'stackTimeS'],
    pairs: () => {
      const stack = deep(4 - HAIR, { overlap: 0.25, exposureS: 0.5, settlingS: 2, flashRecycleS: 1.25 });
      const water: Changes = { ...stack, subject: { depthMm: (4 - HAIR) * WATER * depthMm(), index: WATER } };
      return [
        [told(stack, 'railTravelMm'), 3 * depthMm()],
        [told(stack, 'focusTravelMm'), 3 * depthMm()],
        [told(stack, 'stackTimeS'), 5 * 3.75],
        [told(water, 'focusTravelMm'), 4 * depthMm()],
        [told(water, 'railTravelMm'), 3 * depthMm()],
      ];
    },
  },
  {
    law: 'an entrance pupil 20 mm from the front makes the back, 0.2 mm behind it, a hundredth larger: a hundredth of the half-diagonal at the corner',
    figures: ['scaleChange', 'scaleChangePixels'],
    pairs: () => [
      [told(RINGED, 'scaleChange'), 0.01],
      // 3 mm to the corner in pixels of 4 µm.
      [told(RINGED, 'scaleChangePixels'), 7.5],
      [told({ ...RINGED, objective: { exitPupilFromShoulderMm: 40 } }, 'scaleChange'), -0.01],
      [told({ ...RINGED, objective: { exitPupilFromShoulderMm: 40 } }, 'scaleChangePixels'), 7.5],
    ],
  },
];
