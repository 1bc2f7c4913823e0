import { type TableGroup, tableCautions } from '../../core/table.ts';
import { tabled } from './tabled.ts';

/** What to mind while this is done. */
export function SectionCautions({ group }: { group: TableGroup }) {
  const cautions = tableCautions(tabled.value, group);
  if (cautions.length === 0) return null;
  return (
    <ul class="cautions">
      {cautions.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  );
}
