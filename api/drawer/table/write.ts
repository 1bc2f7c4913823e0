import Papa from 'papaparse';
import type { QuantityInput } from '../../../core/index.ts';
import type { Stored } from '../form.ts';
import { COLUMNS, type Column, QUANTITY_ENDS, STORY } from './columns.ts';
import { cellOf, jsonCell } from './text.ts';

/** Spreadsheets tell UTF-8 from older codes by this sign at the start. */
const BYTE_ORDER_MARK = '\uFEFF';

const yes = (value: boolean): string => (value ? 'yes' : 'no');

/** A field's cells, as many as it has columns; an absent field's are empty. */
function cellsOf({ way, heads }: Column, value: unknown): string[] {
  if (value === undefined) return heads.map(() => '');
  switch (way) {
    case 'quantity': {
      const q = value as QuantityInput;
      const story = typeof q === 'number' ? { value: q } : q;
      return [String(story.value), ...QUANTITY_ENDS.map((end) => String((story as Partial<Record<typeof end, unknown>>)[end] ?? ''))];
    }
    case 'range':
      return (value as [number, number]).map(String);
    case 'text':
      return [cellOf(value as string)];
    case 'yes':
      return [yes(value as boolean)];
    case 'word':
    case 'number':
      return [String(value)];
    case 'json':
      return [jsonCell(value)];
  }
}

/** The drawer as a table: a line for each part, a column for everything that any of them has. */
export function tableOf(parts: readonly Stored[]): string {
  const columns = COLUMNS.flatMap((column) => {
    const rows = parts.map(({ part }) => cellsOf(column, (part as Record<string, unknown>)[column.field]));
    return column.heads.map((head, i) => ({ head, cells: rows.map((cells) => cells[i] ?? '') }));
  }).filter(({ cells }) => cells.some((cell) => cell !== ''));
  const lines = parts.map(({ id, kind, owned, price, notes }, row) => [
    id,
    kind,
    yes(owned),
    price === undefined ? '' : String(price),
    notes === undefined ? '' : cellOf(notes),
    ...columns.map(({ cells }) => cells[row] ?? ''),
  ]);
  const heads = [...STORY, ...columns.map(({ head }) => head)];
  return `${BYTE_ORDER_MARK}${Papa.unparse([heads, ...lines], { newline: '\r\n' })}\r\n`;
}
