import '../../styles/table-stack.css';
import { stackSentence, TABLE_GROUPS } from '../../../core/table.ts';
import { Input } from '../../fields/input.tsx';
import { DEPTH, type Field, SUBJECT } from '../../fields/names.ts';
import { SectionCautions } from '../cautions.tsx';
import { SettingFields } from '../fields.tsx';
import { FigureList } from '../figure-list.tsx';
import { tabled } from '../tabled.ts';
import { ConventionTable } from './convention-table.tsx';
import { ObjectiveTable } from './objective-table.tsx';
import { StackPlate } from './stack-plate.tsx';

/** Fields of the pairing that decide a stack, named as they are out of their own place. */
const named = (fields: readonly Field[], key: string, label: string): Field => ({
  ...(fields.find((field) => field.key === key) as Field),
  label,
});
const PAIRING_FIELDS = [
  named(SUBJECT, 'subject/depthMm', 'Depth of the subject'),
  named(SUBJECT, 'subject/index', 'Refractive index around the subject'),
  named(DEPTH, 'depth/convention', 'Convention of depth'),
];

/** The frames from the front of the subject to its back. */
export function StackSection() {
  const { figures, settings } = TABLE_GROUPS.stack;
  return (
    <div class="stack-part">
      <p class="sentence" role="status">
        {stackSentence(tabled.value)}
      </p>
      <div class="plate-and-list">
        <StackPlate />
        <FigureList ids={figures.map(({ id }) => id)} />
      </div>
      <div class="fields">
        {PAIRING_FIELDS.map((field) => (
          <Input key={field.key} field={field} path={`/${field.key}`} />
        ))}
      </div>
      <SettingFields keys={settings.map(({ key }) => key)} />
      <ConventionTable />
      <ObjectiveTable />
      <SectionCautions group="stack" />
    </div>
  );
}
