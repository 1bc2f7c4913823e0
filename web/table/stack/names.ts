import type { SettingKey, TableFigureId } from '../../../core/table.ts';
import type { SettingField } from '../setting-field.ts';

export const FIGURE_NAMES: Record<TableFigureId<'stack'>, string> = {
  stackFrames: 'Frames, front to back',
  curvatureFrames: 'More for the curved field',
  framesInAll: 'Frames to take',
  stackFramesUnwatched: 'Frames if you set the ends without looking',
  frameStepUm: 'Step from frame to frame',
  railStepUm: 'Step of the rail',
  focusPerRail: 'Travel of the focus for each of the rail',
  railErrorForgivenUm: 'Error of the rail that costs nothing',
  railTravelMm: 'Travel of the rail',
  focusTravelMm: 'Travel of the focus',
  stackTimeS: 'Time for the stack',
  scaleChange: 'Change of scale, front to back',
  scaleChangePixels: 'The same at the corner, in pixels',
};

export const SETTING_FIELDS: Record<SettingKey<'stack'>, SettingField> = {
  overlap: { label: 'Overlap of neighbouring frames, as a share' },
  railErrorUm: { label: 'Error of the rail' },
  railIncrementUm: { label: 'Finest step of the rail, 0 for any' },
  fieldCurvatureUm: { label: 'Focus of the corner from the middle’s, as seen' },
  exposureS: { label: 'Exposure of a frame' },
  settlingS: { label: 'Wait until nothing swings' },
  flashRecycleS: { label: 'Wait for the flash after that' },
};
