import { SETTINGS } from '../../../../core/table/infinity/settings.ts';
import { holdsSettings } from '../setting-bounds.ts';

holdsSettings(SETTINGS, {
  tubeErrorMm: [-200, 200, 1],
  strehlLimit: [0.5, 0.99, 0.8],
  magnificationTolerance: [0.0001, 0.5, 0.01],
  shiftLimitMm: [0.001, 100, 1],
  farThingM: [1, 1_000_000, 100],
  slipMm: [0, 20, 0],
  // Standard cover glass, ISO 8255-1, at the d line.
  slipIndex: [1.3, 2.5, 1.5255],
  resinMm: [0, 20, 0],
  resinIndex: [1.3, 2.5, 1.5],
});
