import type { SettingKey, TableFigureId } from '../../../core/table.ts';
import type { SettingField } from '../setting-field.ts';

export const FIGURE_NAMES: Record<TableFigureId<'stillness'>, string> = {
  moreExposureEv: 'Exposure against the macro lens, middle',
  cornerMoreExposureEv: 'Exposure against the macro lens, corner',
  referenceWorkingFNumber: 'The macro lens’s working f-number at this size',
  equalFNumber: 'The macro lens gives as much light at f/',
  throughLensBrightness: 'Brightness with light through the objective, 10⁴ NA⁴/m²',
  stillUm: 'Largest movement at the subject',
  stillSpeedUmPerS: 'Speed that the exposure freezes',
  flashSpeedUmPerS: 'Speed that the flash freezes',
  longestExposureS: 'Longest exposure as it drifts',
  driftPixels: 'Pixels drawn out by the drift',
  swingPixels: 'Pixels drawn out by the swinging, exposure',
  flashSwingPixels: 'Pixels drawn out by the swinging, flash',
  swingExposureS: 'Longest exposure as it swings',
};

export const SETTING_FIELDS: Record<SettingKey<'stillness'>, SettingField> = {
  referenceFNumber: { label: 'Macro lens to compare with, set to f/' },
  referencePupilRatio: { label: 'Its exit pupil over its entrance pupil' },
  exposureS: { label: 'Exposure time' },
  flashMs: { label: 'Flash duration' },
  blurPixels: { label: 'Blur allowed, in pixels' },
  driftUmPerS: { label: 'The subject drifts' },
  swingUm: { label: 'It swings to either side by' },
  swingHz: { label: 'How often a second' },
};
