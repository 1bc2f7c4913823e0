import type { Law, ToldId } from '../check.ts';
import { type Changes, engraved, told } from '../rig.ts';
import { offConjugate, throughPlates } from './sine-phase.ts';

const GREEN = 550e-6;

/** 20x/0.42 and its tube lens of 200 mm, its principal plane 50 mm behind the pupil: magnification grows by 150/40000 a mm. */
const rig = (table: Changes['table'], more: Changes = {}): Changes => ({ ...engraved('20x/0.42'), ...more, table });
const at = (id: ToldId, table: Changes['table'], more: Changes = {}): number => told(rig(table, more), id);

/** Nothing but sharpness bites. */
const SHARPNESS = { magnificationTolerance: 0.5, shiftLimitMm: 100 } as const;
/** Focused on a thing that leaves 4 mm: 40000/4 and the focal length itself before the lens. */
const FOUR_MM = { farThingM: 10.2 } as const;
const M4 = 20 * (1 + (150 * 4) / 40000);
/** How much nearer the subject then is: s f_o² over f and the height per slope. */
const NEARER = (4 * 100) / (200 * 10 * M4);

export const INFINITY_LAWS: readonly Law[] = [
  {
    law: 'a sensor 4 mm out, by a tube or by a thing 10.2 m away, sees 1.5 % more and the subject nearer by s f_o²/(f F)',
    figures: [
      'tubeMagnification',
      'tubeMagnificationChange',
      'tubeSubjectShiftMm',
      'farErrorMm',
      'farMagnification',
      'farMagnificationChange',
      'farSubjectShiftMm',
    ],
    pairs: () => [
      [at('tubeMagnification', { tubeErrorMm: 4 }), M4],
      [at('tubeMagnificationChange', { tubeErrorMm: 4 }), 0.015],
      [at('tubeSubjectShiftMm', { tubeErrorMm: 4 }), -NEARER],
      [at('tubeSubjectShiftMm', { tubeErrorMm: 3 }, { sensorOffsetMm: 1 }) + at('tubeSubjectShiftMm', { tubeErrorMm: 1 }), -NEARER],
      [at('farErrorMm', FOUR_MM), 4],
      [at('farErrorMm', { farThingM: 10.17 }, { relay: { frontPrincipalPlaneFromRimMm: 30 } }), 4],
      [at('farMagnification', FOUR_MM), M4],
      [at('farMagnificationChange', FOUR_MM), 0.015],
      [at('farSubjectShiftMm', FOUR_MM), -NEARER],
    ],
  },
  {
    law: 'spherical aberration off the conjugate is what the sine condition leaves, ring by ring',
    figures: ['tubeWavesRms', 'tubeWaves', 'tubeStrehl', 'farWavesRms', 'farWaves', 'farStrehl'],
    *pairs() {
      const m60 = 20 * (1 + (150 * 60) / 40000);
      const large = offConjugate((60 * 100) / (200 * 10 * m60), 0.42, m60, GREEN);
      yield [at('tubeWavesRms', { tubeErrorMm: 60 }), large.rms];
      yield [at('tubeWaves', { tubeErrorMm: 60 }), large.waves];
      yield [at('tubeStrehl', { tubeErrorMm: 60 }), large.strehl];
      // One that is as far in is as wrong, for its own height per slope.
      const m60in = 20 * (1 - (150 * 60) / 40000);
      yield [at('tubeStrehl', { tubeErrorMm: -60 }), offConjugate((-60 * 100) / (200 * 10 * m60in), 0.42, m60in, GREEN).strehl];
      yield [at('tubeStrehl', { tubeErrorMm: 0 }), 1];
      const small = offConjugate(NEARER, 0.42, M4, GREEN);
      yield [at('farWavesRms', FOUR_MM), small.rms];
      yield [at('farWaves', FOUR_MM), small.waves];
      yield [at('farStrehl', FOUR_MM), small.strehl];
    },
  },
  {
    law: 'a tube may be wrong by the share of f_R² over z_H − f_R, or until the subject is where it may not be, or the Strehl ratio at its limit',
    figures: ['tubeToleranceMm', 'tubeShorterMm', 'tubeLongerMm', 'magnificationToleranceMm', 'sharpShorterMm', 'sharpLongerMm'],
    pairs: () => {
      const [longer, shorter] = [at('sharpLongerMm', {}), at('sharpShorterMm', {})];
      return [
        [at('magnificationToleranceMm', {}), (0.01 * 40000) / 150],
        [at('magnificationToleranceMm', {}, { infinitySpaceMm: 300 }), 4],
        [at('tubeToleranceMm', { magnificationTolerance: 0.02 }), 0.02 * (40000 / 150)],
        [at('tubeMagnificationChange', { tubeErrorMm: at('magnificationToleranceMm', {}) }), 0.01],
        [at('tubeStrehl', { tubeErrorMm: longer }), 0.8],
        [at('tubeStrehl', { tubeErrorMm: -shorter }), 0.8],
        [at('sharpLongerMm', {}, { sensorOffsetMm: 5 }), longer - 5],
        [at('sharpShorterMm', {}, { sensorOffsetMm: 5 }), shorter + 5],
        [at('tubeLongerMm', SHARPNESS), longer],
        [at('tubeShorterMm', SHARPNESS), shorter],
        [at('tubeToleranceMm', SHARPNESS), Math.min(longer, shorter)],
        [at('tubeSubjectShiftMm', { tubeErrorMm: at('tubeLongerMm', { shiftLimitMm: 0.002 }) }), -0.002],
        [at('tubeSubjectShiftMm', { tubeErrorMm: -at('tubeShorterMm', { shiftLimitMm: 0.002 }) }), 0.002],
        [at('tubeToleranceMm', { shiftLimitMm: 0.002 }), (0.002 * 40000) / (100 + 0.002 * 150)],
      ];
    },
  },
  {
    law: 'what may be taken for infinity leaves no more than the tube may be wrong by',
    figures: ['nearestThingM'],
    pairs: () => [
      [at('nearestThingM', { magnificationTolerance: 0.015 }), 10.2],
      [at('nearestThingM', { magnificationTolerance: 0.015 }, { relay: { frontPrincipalPlaneFromRimMm: 30 }, infinitySpaceMm: 20 }), 10.17],
    ],
  },
  {
    law: 'off infinity on purpose the picture is sharp until the Strehl ratio is at its limit, wherever the sensor stood before',
    figures: ['longestOffsetMm', 'shortestOffsetMm', 'longestMagnification', 'shortestMagnification'],
    pairs: () => {
      const [longest, shortest] = [at('longestOffsetMm', {}), at('shortestOffsetMm', {}, { sensorOffsetMm: 3 })];
      return [
        [at('tubeStrehl', { tubeErrorMm: longest - 3 }, { sensorOffsetMm: 3 }), 0.8],
        [at('tubeStrehl', { tubeErrorMm: -shortest }), 0.8],
        [at('longestMagnification', {}), 20 * (1 + (150 * longest) / 40000)],
        [at('shortestMagnification', {}), 20 * (1 - (150 * shortest) / 40000)],
      ];
    },
  },
  {
    law: 'slip and resin are what Snell leaves, ring by ring, less the cover glass that the objective is made for',
    figures: ['coverWavesRms', 'coverWaves', 'coverStrehl', 'slipToleranceMm'],
    *pairs() {
      const made: Changes = { objective: { ...engraved('20x/0.42').objective, coverGlassMm: 0.17 } };
      const there = { slipMm: 0.15, slipIndex: 1.5, resinMm: 0.4, resinIndex: 1.45 };
      const plates = throughPlates(
        [
          [0.15, 1.5],
          [0.4, 1.45],
          [-0.17, 1.5255],
        ],
        0.42,
        GREEN,
      );
      yield [at('coverWavesRms', there, made), plates.rms];
      yield [at('coverWaves', there, made), plates.waves];
      yield [at('coverStrehl', there, made), plates.strehl];
      const off = at('slipToleranceMm', {}, made);
      yield [at('coverStrehl', { slipMm: 0.17 }, made), 1];
      yield [at('coverStrehl', { slipMm: 0.17 + off }, made), 0.8];
      yield [throughPlates([[off, 1.5255]], 0.42, GREEN).strehl, 0.8];
    },
  },
];
