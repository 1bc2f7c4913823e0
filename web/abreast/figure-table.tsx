import type { RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { type Answer, COMPARED, type ComparedId, letter, letters, nameOf, type Row, short } from '../../core/index.ts';
import { TABLE_ROLES as AS } from '../charts/roles.ts';
import { Scroll } from '../charts/scroll.tsx';
import { FIGURE_NAMES } from '../figures/names.ts';
import { toldAs } from '../figures/value.ts';
import type { Compared } from './compared.ts';
import { lessOf } from './less.ts';

/** The figures as rows, the pairings as columns, and by how much each differs from one of them. */
export function FigureTable({ all, rows }: { all: readonly Compared[]; rows: readonly Row[] | undefined }) {
  const [chosen, setBase] = useState(0);
  const base = chosen < all.length ? chosen : -1;
  const table = useRef<HTMLTableElement>(null);
  const slides = useWiderThanItsBox(table, all.length);
  return (
    <>
      <p class="against">
        <label for="abreast-base">Differences from</label>
        <select id="abreast-base" value={String(base)} onChange={({ currentTarget }) => setBase(Number(currentTarget.value))}>
          {all.map(({ place }, i) => (
            <option key={place} value={String(i)}>
              {letter(i)}
            </option>
          ))}
          <option value="-1">none</option>
        </select>
      </p>
      {slides && <p class="hint">{letters(all.map((_, i) => i))}: slide the table sideways.</p>}
      <Scroll title="The figures side by side">
        <table class="abreast-table" ref={table} style={{ '--columns': all.length }} {...AS.table}>
          <thead {...AS.rows}>
            <tr {...AS.row}>
              <td {...AS.cell} />
              {all.map(({ place }, i) => (
                <th key={place} {...AS.column}>
                  {letter(i)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody {...AS.rows}>
            {COMPARED.map((id, n) => (
              <tr key={id} data-row={id} {...AS.row}>
                <th {...AS.name}>{FIGURE_NAMES[id]}</th>
                {all.map(({ place, answers }, i) => (
                  <Cell key={place} id={id} answer={answers[id]} row={rows?.[n]} place={i} base={base} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </>
  );
}

/** Whether a table of so many columns has to be slid to be seen whole. */
function useWiderThanItsBox(table: RefObject<HTMLTableElement | null>, columns: number): boolean {
  const [wider, setWider] = useState(false);
  useLayoutEffect(() => {
    const box = table.current?.parentElement;
    if (!box) return;
    const measure = (): void => setWider(box.scrollWidth > box.clientWidth);
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(box);
    return () => watch.disconnect();
  }, [table, columns]);
  return wider;
}

interface CellProps {
  id: ComparedId;
  answer: Answer;
  /** Undefined until the differences are known. */
  row: Row | undefined;
  place: number;
  base: number;
}

/** A value with the digits that it earns; bold and 'best' only where that is beyond doubt. */
function Cell({ id, answer, row, place, base }: CellProps) {
  const best = row?.best === place;
  const { number, small } = shownAs(id, answer);
  const level = row?.first.includes(place) ? row.first.filter((other) => other !== place) : [];
  return (
    <td class={answer.state === 'known' && answer.origin === 'assumed' ? 'assumed' : undefined} {...AS.cell}>
      <span class="number">{best ? <b>{number}</b> : number}</span>
      {best && <em class="best">best</em>}
      {level.length > 0 && <small class="less tied">first, level with {letters(level)}</small>}
      {small && <small>{small}</small>}
      {row && base >= 0 && base !== place && !level.includes(base) && <small class="less">{lessOf(row, base, place)}</small>}
    </td>
  );
}

function shownAs(id: ComparedId, answer: Answer): { number: string; small: string } {
  switch (answer.state) {
    case 'known': {
      const { text, unit, range } = toldAs(id, answer);
      return {
        number: id === 'workingFNumber' ? `f/${text}` : `${text}${unit === '' || unit === '×' || unit === '°' ? unit : ` ${unit}`}`,
        small: range,
      };
    }
    case 'unlimited':
      return { number: 'without limit', small: answer.low === undefined ? '' : `at least ${short(answer.low)}` };
    case 'none':
      return { number: 'none', small: answer.why };
    case 'unknown':
      return { number: 'not known', small: answer.missing.length > 0 ? `needs ${answer.missing.map(nameOf).join(', ')}` : '' };
  }
}
