import { workingOf } from '../../core/index.ts';
import { type TableFigureId, tableFigureById } from '../../core/table.ts';
import { FigureRow } from '../figures/figure.tsx';
import { TABLE_FIGURE_NAMES, TABLE_SHARES } from './names.ts';
import { tabled } from './tabled.ts';

/** Figures of the table, each with its working on demand. */
export const FigureList = ({ ids }: { ids: readonly TableFigureId[] }) => (
  <ul class="list">
    {ids.map((id) => (
      <FigureRow
        key={id}
        id={id}
        name={TABLE_FIGURE_NAMES[id]}
        answer={tabled.value.answers[id]}
        share={TABLE_SHARES.has(id)}
        working={() => workingOf(tabled.value, tableFigureById(id))}
      />
    ))}
  </ul>
);
