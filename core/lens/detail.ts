import { fieldPoint } from '../contrast/field.ts';
import { contrastAt } from '../contrast/through-focus.ts';
import { pixelMtf } from '../diffraction/mtf.ts';
import { type Judging, settingAt } from './judging.ts';

/** Contrast at one detail: absolute, from 0 to 1. */
export interface DetailPoint {
  /** lp/mm on the sensor, and at the subject. */
  readonly imageLpPerMm: number;
  readonly objectLpPerMm: number;
  /** The optics alone: with the relay's aberrations, and without them in the same beam. */
  readonly sagittal: number;
  readonly tangential: number;
  readonly perfect: number;
  /** The pixel alone; negative where it reverses the contrast. */
  readonly pixel: number;
}

/** Which point of the picture, how it is focused, and what records it. */
export interface DetailQuestion {
  readonly infinitySpaceMm: number;
  readonly radiusMm: number;
  /** mm from the paraxial focus. */
  readonly focusMm: number;
  readonly magnification: number;
  readonly pixelMm: number;
  /** lp/mm on the sensor. */
  readonly frequencies: readonly number[];
}

/** Contrast against detail at one point of the picture: the curve ends where nothing passes any more. */
export function contrastAgainstDetail(judging: Judging, question: DetailQuestion): DetailPoint[] {
  const { infinitySpaceMm, radiusMm, focusMm, magnification, pixelMm, frequencies } = question;
  const setting = settingAt(judging, judging.ways[judging.reversed ? 1 : 0], infinitySpaceMm);
  return frequencies.flatMap((frequency): DetailPoint[] => {
    const point = fieldPoint({ ...setting, frequency }, radiusMm / setting.scaleMm);
    if (!point) return [];
    const { sagittal, tangential } = point;
    return [
      {
        imageLpPerMm: frequency,
        objectLpPerMm: frequency * magnification,
        sagittal: sagittal.perfect * contrastAt(sagittal, focusMm),
        tangential: tangential.perfect * contrastAt(tangential, focusMm),
        perfect: (sagittal.perfect + tangential.perfect) / 2,
        pixel: pixelMtf(frequency * pixelMm),
      },
    ];
  });
}
