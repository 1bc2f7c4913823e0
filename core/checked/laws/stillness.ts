import type { Law, ToldId } from '../check.ts';
import { type Changes, engraved, told } from '../rig.ts';

/** 10x/0.25 at f/20 on pixels of 4 µm, each 0.4 µm at the subject. */
const at = (id: ToldId, table: Changes['table'], more: Changes = {}): number =>
  told({ ...engraved('10x/0.25'), relay: { focalLengthMm: 200, clearApertureMm: 500 }, ...more, table }, id);

/** The macro lens at f/10 and alike from both ends works at f/110 at 10x. */
const ALIKE = { referenceFNumber: 10, referencePupilRatio: 1 } as const;

export const STILLNESS_LAWS: readonly Law[] = [
  {
    law: 'at twice the working f-number a picture takes two stops more; at the equal one none',
    figures: ['referenceWorkingFNumber', 'equalFNumber', 'moreExposureEv', 'cornerMoreExposureEv'],
    pairs: () => [
      [at('referenceWorkingFNumber', ALIKE), 110],
      [at('referenceWorkingFNumber', { ...ALIKE, referencePupilRatio: 2 }), 60],
      [at('equalFNumber', ALIKE), 20 / 11],
      [at('moreExposureEv', { ...ALIKE, referenceFNumber: 10 / 11 }), 2],
      [at('moreExposureEv', { ...ALIKE, referenceFNumber: at('equalFNumber', ALIKE) }), 0],
      [at('cornerMoreExposureEv', { ...ALIKE, referenceFNumber: 10 / 11 }), 2],
      [
        at('cornerMoreExposureEv', ALIKE, { relay: { focalLengthMm: 200, clearApertureMm: 10 } }) -
          at('moreExposureEv', ALIKE, { relay: { focalLengthMm: 200, clearApertureMm: 10 } }),
        at('cornerLossEv', {}, { relay: { focalLengthMm: 200, clearApertureMm: 10 } }),
      ],
    ],
  },
  {
    law: 'lit through itself an objective of twice the aperture gives 16 times the light, at twice the magnification a quarter',
    figures: ['throughLensBrightness'],
    pairs: () => [
      [told(engraved('10x/0.50'), 'throughLensBrightness') / told(engraved('10x/0.25'), 'throughLensBrightness'), 16],
      [told(engraved('20x/0.25'), 'throughLensBrightness') / told(engraved('10x/0.25'), 'throughLensBrightness'), 0.25],
      [told(engraved('10x/0.50'), 'throughLensBrightness'), 6.25],
    ],
  },
  {
    law: 'a pixel of 4 µm at 10x is 0.4 µm: what moves no farther than two of them in its time is stopped',
    figures: ['stillUm', 'stillSpeedUmPerS', 'flashSpeedUmPerS', 'longestExposureS', 'driftPixels'],
    pairs: () => [
      [at('stillUm', { blurPixels: 2 }), 0.8],
      [at('stillSpeedUmPerS', { blurPixels: 2, exposureS: 0.05 }), 16],
      [at('flashSpeedUmPerS', { blurPixels: 2, flashMs: 0.1 }), 8000],
      [at('longestExposureS', { blurPixels: 2, driftUmPerS: 3.2 }), 0.25],
      [at('driftPixels', { driftUmPerS: 3.2, exposureS: 0.25 }), 2],
    ],
  },
  {
    law: 'a swing is seen from end to end in half its turn, and half of that way in the sixth of a turn around its middle',
    figures: ['swingPixels', 'flashSwingPixels', 'swingExposureS'],
    pairs: () => {
      const swing = { swingUm: 0.8, swingHz: 50 };
      return [
        [at('swingPixels', { ...swing, exposureS: 0.01 }), 4],
        [at('swingPixels', { ...swing, exposureS: 7 }), 4],
        [at('swingPixels', { ...swing, exposureS: 1 / 300 }), 2],
        [at('flashSwingPixels', { ...swing, flashMs: 10 }), 4],
        [at('flashSwingPixels', { ...swing, flashMs: 10 / 3 }), 2],
        [at('swingExposureS', { ...swing, blurPixels: 2 }), 1 / 300],
      ];
    },
  },
];
