/** A table's roles said anew: on a phone its rows are laid out as grids and may no longer count as a table's. */
export const TABLE_ROLES = {
  table: { role: 'table' },
  rows: { role: 'rowgroup' },
  row: { role: 'row' },
  column: { role: 'columnheader', scope: 'col' },
  name: { role: 'rowheader', scope: 'row' },
  cell: { role: 'cell' },
} as const;
