import type { SettingKey, TableFigureId } from '../../../core/table.ts';
import type { SettingField } from '../setting-field.ts';

export const FIGURE_NAMES: Record<TableFigureId<'stack'>, string> = {
  frameStepUm: 'Step from frame to frame',
};

export const SETTING_FIELDS: Record<SettingKey<'stack'>, SettingField> = {
  overlap: { label: 'Overlap of neighbouring frames, as a share' },
  railErrorUm: { label: 'Error of the rail' },
};
