import { SETTINGS } from '../../../../core/table/stack/settings.ts';
import { holdsSettings } from '../setting-bounds.ts';

holdsSettings(SETTINGS, {
  overlap: [0, 0.95, 0.2],
  railErrorUm: [0, 1000, 0],
  railIncrementUm: [0, 1000, 0],
  fieldCurvatureUm: [0, 100_000],
  settlingS: [0, 600, 2],
  flashRecycleS: [0, 600, 0],
  exposureS: [1e-6, 3600, 0.01],
});
