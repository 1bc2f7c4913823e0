import { computed } from '@preact/signals';
import { type Problem, steps, valueAt } from '../../core/index.ts';
import { evaluateTable, type Settings, settingsSchema } from '../../core/table.ts';
import { bringFields, inputPath } from '../fields/names.ts';
import type { Sheet } from '../fields/sheet.ts';
import { answered } from '../state/draft.ts';
import { withAt } from '../state/json.ts';
import { kept } from '../state/kept.ts';
import { tableTexts } from '../state/view.ts';
import { worksNow } from '../state/works.ts';
import { settingField } from './names.ts';

bringFields(settingField);

/** What is set on the table; it stands in the address. */
export const settings = kept<Settings>(tableTexts.set, settingsSchema, {});

/** The table's figures of the pairing that is answered. */
export const tabled = computed(() => evaluateTable(answered.value.pairing, settings.value.value, worksNow()));

const toldAt = (path: string): readonly Problem[] => settings.told.value.filter((p) => p.path === path || inputPath(p.path) === path);

/** What is set on the table, as inputs stand on it. */
export const TABLE: Sheet = {
  mark: '',
  brief: true,
  at: (path) => valueAt(settings.draft.value, steps(path)),
  edit: (path, value) => settings.take(withAt(settings.draft.value, path, value)),
  found: toldAt,
  done: settings.done,
  taken: (path) => tabled.value.inputs.find((input) => input.path === path),
};
