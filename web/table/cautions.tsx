import { type TableGroup, tableCautions } from '../../core/table.ts';
import { Cautions } from '../cautions.tsx';
import { tabled } from './tabled.ts';

/** What to mind while this is done. */
export const SectionCautions = ({ group }: { group: TableGroup }) => <Cautions lines={tableCautions(tabled.value, group)} />;
