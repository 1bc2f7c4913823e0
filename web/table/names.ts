import { SETTINGS, type SettingKey, type TableFigureId } from '../../core/table.ts';
import type { Field } from '../fields/field-lists.ts';
import * as build from './build/names.ts';
import * as closeUp from './close-up/names.ts';
import * as infinity from './infinity/names.ts';
import * as light from './light/names.ts';
import type { SettingField } from './setting-field.ts';
import * as stack from './stack/names.ts';
import * as stillness from './stillness/names.ts';

/** The table's figures as the page heads them. */
export const TABLE_FIGURE_NAMES: Record<TableFigureId, string> = {
  ...build.FIGURE_NAMES,
  ...infinity.FIGURE_NAMES,
  ...stack.FIGURE_NAMES,
  ...stillness.FIGURE_NAMES,
  ...light.FIGURE_NAMES,
  ...closeUp.FIGURE_NAMES,
};

const SETTING_FIELDS: Record<SettingKey, SettingField> = {
  ...build.SETTING_FIELDS,
  ...infinity.SETTING_FIELDS,
  ...stack.SETTING_FIELDS,
  ...stillness.SETTING_FIELDS,
  ...light.SETTING_FIELDS,
  ...closeUp.SETTING_FIELDS,
};

/** The table's figures that are told in per cent. */
export const TABLE_SHARES: ReadonlySet<TableFigureId> = new Set<TableFigureId>([
  'tubeMagnificationChange',
  'farMagnificationChange',
  'scaleChange',
  'lightShare',
  'diffuserShare',
]);

const FIELDS = new Map(
  SETTINGS.map((one): [string, Field] => [
    one.key,
    {
      key: one.key,
      label: SETTING_FIELDS[one.key as SettingKey].label,
      kind: 'quantity',
      unit: one.leaf.unit,
      ends: one.bounds,
      brought: true,
    },
  ]),
);

/** The input of a setting that a path leads to; the path of its ± leads to it too. */
export const settingField = (path: string): Field | undefined => FIELDS.get(path.split('/')[1] ?? '');
