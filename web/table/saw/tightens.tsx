import type { Answer } from '../../../core/index.ts';
import type { Tightened } from '../../../core/table.ts';
import { TABLE_ROLES as AS } from '../../charts/roles.ts';
import { FIGURE_NAMES } from '../../figures/names.ts';
import { toldAs } from '../../figures/value.ts';

type Known = Extract<Answer, { state: 'known' }> & { low: number; high: number };
export interface Line {
  readonly id: Tightened['id'];
  readonly before: Known;
  readonly after: Known;
}

const isKnown = (a: Answer): a is Known => a.state === 'known' && a.low !== undefined && a.high !== undefined && a.high > a.low;
const width = ({ low, high }: Known): number => high - low;

/** Less of a change than this, as a share of the interval before, is not worth a line. */
const CHANGES = 0.02;

/** What taking the findings does to the headline figures. */
export interface Changes {
  /** Those whose interval shrinks. */
  readonly tighter: readonly Line[];
  /** Those that lie elsewhere, no surer than they were. */
  readonly moved: readonly Line[];
}

export function changesOf(figures: readonly Tightened[]): Changes {
  const lines = figures.flatMap(({ id, before, after }) => (isKnown(before) && isKnown(after) ? [{ id, before, after }] : []));
  const seen = lines.filter(({ id, before, after }) => inWords(id, before) !== inWords(id, after));
  const shrinks = ({ before, after }: Line): boolean => width(after) < (1 - CHANGES) * width(before);
  const moves = ({ before, after }: Line): boolean =>
    Math.max(Math.abs(after.low - before.low), Math.abs(after.high - before.high)) > CHANGES * width(before);
  return { tighter: seen.filter(shrinks), moved: seen.filter((line) => !shrinks(line) && moves(line)) };
}

/** How far each figure could be off before, as a thin line, and after, as a bar on it. */
export const Tightens = ({ changes: { tighter, moved } }: { changes: Changes }) => (
  <>
    {tighter.length > 0 && <LinesOf lines={tighter} says={`Taken, these tighten: ${READ}`} />}
    {moved.length > 0 && (
      <LinesOf lines={moved} says={tighter.length > 0 ? 'These only move, no surer than before.' : `Taken, these move: ${READ}`} />
    )}
  </>
);

const READ = 'the thin line is how far each could be off before, the bar how far it still can.';

function LinesOf({ lines, says }: { lines: readonly Line[]; says: string }) {
  return (
    <figure class="tightens">
      <figcaption>{says}</figcaption>
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
