import type { SettingKey, TableFigureId } from '../../../core/table.ts';
import type { SettingField } from '../setting-field.ts';

export const FIGURE_NAMES: Record<TableFigureId<'stillness'>, string> = {
  moreExposureEv: 'More exposure than the macro lens, middle',
  cornerMoreExposureEv: 'More exposure than its middle, corner',
  referenceWorkingFNumber: 'The macro lens’s working f-number',
  equalFNumber: 'Equal light with the macro lens set to f/',
  throughLensBrightness: 'Brightness lit through the objective',
  stillUm: 'Largest movement at the subject',
  stillSpeedUmPerS: 'Speed that the exposure stops',
  flashSpeedUmPerS: 'Speed that the flash stops',
  longestExposureS: 'Longest exposure as it drifts',
  driftPixels: 'Pixels drawn out by the drift',
  swingPixels: 'Pixels drawn out by the swinging, exposure',
  flashSwingPixels: 'Pixels drawn out by the swinging, flash',
  swingExposureS: 'Longest exposure as it swings',
};

export const SETTING_FIELDS: Record<SettingKey<'stillness'>, SettingField> = {
  referenceFNumber: { label: 'Macro lens to compare with, f/' },
  referencePupilRatio: { label: 'Its exit pupil over its entrance pupil' },
  exposureS: { label: 'Exposure time' },
  flashMs: { label: 'The flash burns' },
  blurPixels: { label: 'Blur allowed, in pixels' },
  driftUmPerS: { label: 'The subject drifts' },
  swingUm: { label: 'It swings to either side by' },
  swingHz: { label: 'How often a second' },
};
