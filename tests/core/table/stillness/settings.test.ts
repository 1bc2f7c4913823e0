import { SETTINGS } from '../../../../core/table/stillness/settings.ts';
import { holdsSettings } from '../setting-bounds.ts';

holdsSettings(SETTINGS, {
  referenceFNumber: [0.5, 64, 8],
  referencePupilRatio: [0.1, 10, { value: 1, plusMinus: 0.3 }],
  exposureS: [1e-6, 3600, 0.01],
  flashMs: [0.0001, 100, 1],
  blurPixels: [0.05, 50, 1],
  driftUmPerS: [0, 100_000, 1],
  swingUm: [0, 1000],
  swingHz: [0.01, 10_000],
});
