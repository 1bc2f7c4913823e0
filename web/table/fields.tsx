import type { SettingKey } from '../../core/table.ts';
import type { Field } from '../fields/field-lists.ts';
import { Input } from '../fields/input.tsx';
import { settingField } from './names.ts';
import { TABLE } from './tabled.ts';

/** Settings of the table as labelled inputs. */
export const SettingFields = ({ keys }: { keys: readonly SettingKey[] }) => (
  <div class="fields">
    {keys.map((key) => (
      <Input key={key} field={settingField(`/${key}`) as Field} path={`/${key}`} sheet={TABLE} />
    ))}
  </div>
);
