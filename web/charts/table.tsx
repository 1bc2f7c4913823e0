import { useState } from 'preact/hooks';
import { Scroll } from './scroll.tsx';

interface Numbers {
  title: string;
  columns: readonly string[];
  /** Asked only when they are shown. */
  rows: () => readonly (readonly string[])[];
}

/** The numbers of a chart behind a fold: with the keyboard and without eyes as good as the chart. */
export function Table(numbers: Numbers) {
  const [open, setOpen] = useState(false);
  return (
    <details class="fold" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{numbers.title}</summary>
      {open && <InRows {...numbers} />}
    </details>
  );
}

/** The same where they already stand behind a fold. */
export function InRows({ title, columns, rows }: Numbers) {
  return (
    <Scroll title={title} tall>
      <table>
        <thead>
          <tr>
            {columns.map((column) => (
              <th scope="col" key={column}>
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows().map(([first, ...rest]) => (
            <tr key={first}>
              <th scope="row">{first}</th>
              {rest.map((cell, i) => (
                <td key={columns[i + 1]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
