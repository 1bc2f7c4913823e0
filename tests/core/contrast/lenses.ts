import { type Colours, coloursOf } from '../../../core/contrast/colours.ts';
import type { Setting } from '../../../core/contrast/field.ts';
import { oneWavelength, type Spectrum } from '../../../core/diffraction/spectrum.ts';
import { glassNamed } from '../../../core/glass/glasses.ts';
import type { Medium } from '../../../core/glass/medium.ts';
import { type Lens, widestSemiApertures } from '../../../core/trace/lens.ts';

const lensOf = (radiiMm: number[], thicknessesMm: number[], glasses: string[]): Lens => ({
  radiiMm,
  thicknessesMm,
  media: glasses.map((name) => glassNamed(name) as Medium),
  semiAperturesMm: widestSemiApertures(radiiMm, thicknessesMm),
});

/** A cemented lens bent for the close-up job, f = 198 mm; weak side first as it is listed. */
export const BENT = lensOf([1000, -54, -91], [11, 4], ['N-BK7', 'N-SF5']);

export const LIGHT = 587.5618;

export const settingOf = (
  lens: Lens,
  {
    radius = 5.6,
    distance = 85,
    frequency = 48,
    spectrum = oneWavelength(LIGHT),
  }: { radius?: number; distance?: number; frequency?: number; spectrum?: Spectrum } = {},
): Setting & { colours: Colours } => ({
  colours: coloursOf(lens, spectrum, LIGHT),
  discs: { walk: [0], radius: [radius] },
  pupilDistanceMm: distance,
  frequency,
});
