import { amount } from '../../parts/quantity.ts';
import { diagonalOf } from '../../parts/sensor.ts';
import type { TableEvaluation } from '../evaluate.ts';

/** Between which focal lengths close-up lenses are of use, and below which they darken corners (common practice, without source). */
const OF_USE = [50, 300] as const;
const DARK_BELOW = { full: 50, crop: 30 } as const;
/** A sensor with a diagonal under this counts as a crop, mm. */
const CROP_BELOW = 35;

/** What to mind with a close-up lens on a camera lens; nothing where no camera lens is told. */
export function closeUpCautions({ pairing, settings, answers }: TableEvaluation): string[] {
  if (settings.cameraFocalLengthMm === undefined || answers.closeUpFocalMm.state !== 'known') return [];
  const f = amount(settings.cameraFocalLengthMm);
  const dark = diagonalOf(pairing.sensor) < CROP_BELOW ? DARK_BELOW.crop : DARK_BELOW.full;
  return [
    'Never aim a camera lens, with a close-up lens or without, at the sun or near it: it burns eyes, shutter and sensor.',
    ...(f < dark && answers.closeUpRoomMm.state !== 'known'
      ? [`Below about ${dark} mm on this sensor close-up lenses usually darken the corners (common practice): look at a blank wall first.`]
      : f < OF_USE[0] || f > OF_USE[1]
        ? [`Close-up lenses are mostly of use on camera lenses of ${OF_USE[0]} to ${OF_USE[1]} mm (common practice).`]
        : []),
  ];
}
