import { useState } from 'preact/hooks';
import { type Answered, isOfTable, workingThere } from '../../core/checked.ts';
import { short } from '../../core/index.ts';
import { TABLE_ROLES as AS } from '../charts/roles.ts';
import { WorkingLines } from '../figures/working.tsx';
import { keptAs } from '../state/kept.ts';
import { linkTo } from '../state/link.ts';
import { Indices } from './indices.tsx';

interface Props {
  name: string;
  /** What the numbers that stand first are called. */
  due: string;
  values: readonly Answered[];
  /** So many stand at once. */
  most: number;
  /** Whether the heads of its columns are seen; they are always heard. */
  headed: boolean;
}

/** A check's numbers: as printed, as worked out, what they may differ by, and where that falls. */
export function Numbers({ name, due, values, most, headed }: Props) {
  const [all, setAll] = useState(false);
  const shown = all ? values : values.slice(0, most);
  const named = values.some(({ what }) => what !== '');
  return (
    <>
      <table class={named ? 'held-against' : 'held-against nameless'} aria-label={name} {...AS.table}>
        <thead class={headed ? undefined : 'unseen'} {...AS.rows}>
          <tr {...AS.row}>
            {named && (
              <th {...AS.column}>
                <span class="unseen">which</span>
              </th>
            )}
            <th {...AS.column}>{due}</th>
            <th {...AS.column}>worked out now</th>
            <th {...AS.column}>may be off by</th>
            <th {...AS.column}>where it falls</th>
          </tr>
        </thead>
        <tbody {...AS.rows}>
          {shown.map((value, i) => (
            <NumberRow key={i} value={value} named={named} />
          ))}
        </tbody>
      </table>
      {values.length > most && (
        <button type="button" class="lead more" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? `the first ${most} only` : `all ${values.length} of them`}
        </button>
      )}
    </>
  );
}

function NumberRow({ value, named }: { value: Answered; named: boolean }) {
  const [open, setOpen] = useState(false);
  const { what, expected, shown, holds, fault } = value;
  return (
    <>
      <tr class={holds ? undefined : 'bites'} {...AS.row}>
        {named && (
          <th {...AS.name}>
            <Indices text={what} />
          </th>
        )}
        <td {...AS.cell}>{expected}</td>
        <td class="now" {...AS.cell}>
          {shown}
          {!holds && <em> {fault ?? 'does not agree'}</em>}
        </td>
        <td class="room" {...AS.cell}>
          {roomIn(value.room)}
        </td>
        <td class="where" {...AS.cell}>
          <Where value={value} />
          {value.figure && value.rig && (
            <button
              type="button"
              class="show"
              aria-expanded={open}
              aria-label={`${open ? 'Hide' : 'Show'} the working of ${expected}`}
              onClick={() => setOpen(!open)}
            >
              {open ? 'hide' : 'how'}
            </button>
          )}
        </td>
      </tr>
      {open && (
        <tr class="opened" {...AS.row}>
          <td colSpan={named ? 5 : 4} {...AS.cell}>
            <There value={value} />
          </td>
        </tr>
      )}
    </>
  );
}

/** Either way, or upward where digits are cut off. */
function roomIn([below, above]: Answered['room']): string {
  const most = Math.max(below, above);
  const told = (room: number): string => (room < 1e-3 * most ? '0' : small(room));
  return below === above ? `± ${told(above)}` : `−${told(below)} +${told(above)}`;
}

/** From here on down in powers of ten. */
const TINY = 1e-4;

function small(room: number): string {
  if (room >= TINY) return short(room, 2);
  const [digits = '', power = ''] = room.toExponential(1).split('e-');
  return `${short(Number(digits), 2)} × 10⁻${[...power].map((digit) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)]).join('')}`;
}

const HALF = 26;
const HIGH = 15;
/** Room beside the line for what lies beyond it. */
const SIDE = 8;

/** A number's own tolerance as a line, and where on it the number falls. */
function Where({ value: { place, holds } }: { value: Answered }) {
  const x = SIDE + HALF + HALF * Math.max(-1.15, Math.min(1.15, place));
  return (
    <svg class="spot" width={2 * (HALF + SIDE)} height={HIGH} viewBox={`0 0 ${2 * (HALF + SIDE)} ${HIGH}`} aria-hidden="true">
      <path class="ground" d={`M${SIDE} 3v9M${SIDE} 7.5h${2 * HALF}m0 -4.5v9`} />
      {holds ? <path class="tick" d={`M${x} 1v13`} /> : <path class="miss" d={`M${x - 4} 3l8 9m0 -9l-8 9`} />}
    </svg>
  );
}

/** The working of the figure with the numbers of its rig, and a way to that very pairing. */
function There({ value: { figure, rig } }: { value: Answered }) {
  if (!figure || !rig) return null;
  const there = rig();
  const working = workingThere(figure, there);
  const search = isOfTable(figure) ? `?view=table&set=${keptAs(there.settings)}` : '';
  return (
    <>
      {/* What it rests on stands in that pairing and not in this page's inputs: nothing leads there. */}
      <WorkingLines working={{ ...working, terms: working.terms.map(({ path: _, ...term }) => term) }} />
      <p class="open-there">
        <a href={`${location.pathname}${search}${linkTo(there.pairing)}`}>Open this very pairing</a>
      </p>
    </>
  );
}
