import type { Answer } from '../../../core/index.ts';
import type { Tightened } from '../../../core/table.ts';
import { FIGURE_NAMES } from '../../figures/names.ts';
import { toldAs } from '../../figures/value.ts';

type Known = Extract<Answer, { state: 'known' }> & { low: number; high: number };
interface Line {
  readonly id: Tightened['id'];
  readonly before: Known;
  readonly after: Known;
}

const isKnown = (a: Answer): a is Known => a.state === 'known' && a.low !== undefined && a.high !== undefined && a.high > a.low;
const width = ({ low, high }: Known): number => high - low;

/** Said anew, because on a phone the rows are laid out as grids and may no longer count as a table's. */
const AS = {
  table: { role: 'table' },
  rows: { role: 'rowgroup' },
  row: { role: 'row' },
  column: { role: 'columnheader', scope: 'col' },
  name: { role: 'rowheader', scope: 'row' },
  cell: { role: 'cell' },
} as const;

/** Less of a change than this is not worth a line. */
const CHANGES = 0.02;

/** The headline figures whose ± what was seen changes. */
export const linesOf = (figures: readonly Tightened[]): Line[] =>
  figures.flatMap(({ id, before, after }) =>
    isKnown(before) && isKnown(after) && Math.abs(width(after) / width(before) - 1) > CHANGES ? [{ id, before, after }] : [],
  );

/** How far each figure could be off before, as a thin line, and after, as a bar on it. */
export function Tightens({ lines }: { lines: readonly Line[] }) {
  const tighter = lines.filter(({ before, after }) => width(after) < width(before)).length;
  return (
    <figure class="tightens">
      <figcaption>
        {tighter === lines.length ? 'Taken, these tighten' : 'Taken, these change'}: the thin line is how far each could be off before, the
        bar how far it still can.
      </figcaption>
      <table {...AS.table}>
        <thead {...AS.rows}>
          <tr {...AS.row}>
            <th {...AS.column}>Figure</th>
            <th {...AS.column}>Before</th>
            <th {...AS.column}>After</th>
            <td {...AS.cell} />
          </tr>
        </thead>
        <tbody {...AS.rows}>
          {lines.map(({ id, before, after }) => (
            <tr key={id} data-tightens={id} {...AS.row}>
              <th {...AS.name}>{FIGURE_NAMES[id]}</th>
              <td {...AS.cell} class="before">
                {inWords(id, before)}
              </td>
              <td {...AS.cell} class="after">
                {inWords(id, after)}
              </td>
              <td {...AS.cell}>
                <Gauge before={before} after={after} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </figure>
  );
}

const BOX = { width: 200, height: 16, margin: 4 };

function Gauge({ before, after }: Pick<Line, 'before' | 'after'>) {
  const least = Math.min(before.low, after.low);
  const greatest = Math.max(before.high, after.high);
  const x = (v: number): number => BOX.margin + ((v - least) / (greatest - least)) * (BOX.width - 2 * BOX.margin);
  const y = BOX.height / 2;
  const thick = Math.max(2, x(after.high) - x(after.low));
  const middle = (x(after.high) + x(after.low)) / 2;
  return (
    <svg class="gauge" viewBox={`0 0 ${BOX.width} ${BOX.height}`} aria-hidden="true">
      <path d={`M${x(before.low)} ${y}H${x(before.high)}M${x(before.low)} ${y - 4}v8M${x(before.high)} ${y - 4}v8`} />
      <rect x={middle - thick / 2} y={y - 3} width={thick} height={6} />
    </svg>
  );
}

/** 'from … to …' in the figure's unit. */
function inWords(id: string, answer: Known): string {
  const { text, unit, range } = toldAs(id, answer);
  const behind = unit === '' ? '' : unit === '×' || unit === '%' ? unit : ` ${unit}`;
  return `${range || text}${behind}`;
}
