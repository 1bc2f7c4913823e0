import { TABLE_GROUPS } from '../../../core/table.ts';
import { SectionCautions } from '../cautions.tsx';
import { SettingFields } from '../fields.tsx';
import { FigureList } from '../figure-list.tsx';

/** The frames from the front of the subject to its back. */
export function StackSection() {
  const { figures, settings } = TABLE_GROUPS.stack;
  return (
    <>
      <SettingFields keys={settings.map(({ key }) => key)} />
      <FigureList ids={figures.map(({ id }) => id)} />
      <SectionCautions group="stack" />
    </>
  );
}
