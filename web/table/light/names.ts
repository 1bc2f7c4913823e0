import type { SettingKey, TableFigureId } from '../../../core/table.ts';
import type { SettingField } from '../setting-field.ts';

export const FIGURE_NAMES: Record<TableFigureId<'light'>, string> = {
  lightMiddleDeg: 'Light to the middle, up to',
  lightFarCornerDeg: 'Light to the far corner, up to',
  lightShare: 'Half-space that light can come from',
  objectiveConeDeg: "The objective's own cone, half",
  noseClearanceMm: 'Left before the nose at the end',
  diffuserSpareMm: 'The diffuser has to spare',
  diffuserShare: 'Half-space that the diffuser fills',
};

export const SETTING_FIELDS: Record<SettingKey<'light'>, SettingField> = {
  noseFrontDiameterMm: { label: "Width of the nose's end" },
  noseTaperLengthMm: { label: 'Taper, from there to the whole width' },
  inTheWayMm: { label: 'What stands up before the subject' },
  diffuserDiameterMm: { label: 'Width of the diffuser, outside' },
  diffuserTopDiameterMm: { label: 'Its width at the top, if a cone' },
  diffuserHeightMm: { label: 'Its height' },
  diffuserThicknessMm: { label: 'Its wall' },
};
