import Papa from 'papaparse';
import { MOST_OWN, type Problem, shown } from '../../../core/index.ts';
import { Refusal } from '../../problems.ts';
import { type Row, tooMany } from '../take-in.ts';
import { ALL_HEADS, COLUMNS, type Column, QUANTITY_ENDS } from './columns.ts';
import { textIn } from './text.ts';

/** What a table may be cut at: a spreadsheet of another country writes semicolons, and commas in its numbers. */
const CUTS = [',', ';', '\t'] as const;
type Cut = (typeof CUTS)[number];

interface Line {
  /** Where it begins in the file, from 1. */
  line: number;
  cells: string[];
}

/** The parts of a table, not judged yet. @throws Refusal 422 where it is no table of ours */
export function rowsOfTable(table: string): Row[] {
  const text = table.replace(/^\uFEFF/, '');
  const cut = cutOf(text);
  const [head, ...lines] = linesOf(text, cut);
  if (!head) throw headProblem('has no line', 'nothing');
  const places = placesOf(head.cells, lines);
  if (lines.length > MOST_OWN) throw tooMany(lines.length);
  return lines.map(({ line, cells }) => {
    const row = rowOf(line, (name) => cells[places.get(name) ?? -1] ?? '', cut);
    const extra = cells.slice(head.cells.length).find((cell) => cell.trim() !== '');
    if (extra !== undefined)
      row.faults.push({
        path: '',
        code: 'tooManyCells',
        message: 'has more cells than the table has columns',
        given: shown(extra),
        expected: `at most ${head.cells.length}; text that holds "${cut}" stands in quotation marks`,
      });
    return row;
  });
}

/** The sign that makes most names that are ours of the first line. */
function cutOf(table: string): Cut {
  const first = table.slice(0, 20_000);
  const known = (cut: Cut): number =>
    (Papa.parse<string[]>(first, { delimiter: cut, preview: 1 }).data[0] ?? []).filter((name) => ALL_HEADS.includes(name.trim())).length;
  return CUTS.toSorted((a, b) => known(b) - known(a))[0] as Cut;
}

/** The lines that hold anything, cut into cells; no further than one more than a drawer holds. */
function linesOf(table: string, cut: Cut): Line[] {
  const lines: Line[] = [];
  let line = 1;
  let from = 0;
  Papa.parse<string[]>(table, {
    delimiter: cut,
    step: ({ data, errors, meta }, parser) => {
      const [error] = errors;
      if (error) throw headProblem(`is no whole table: ${error.message.toLowerCase()} on line ${line}`, data.join(cut));
      if (data.some((cell) => cell.trim() !== '')) lines.push({ line, cells: data });
      line += table.slice(from, meta.cursor).match(/\r\n|\r|\n/g)?.length ?? 0;
      from = meta.cursor;
      if (lines.length > MOST_OWN + 1) parser.abort();
    },
  });
  return lines;
}

const headProblem = (
  message: string,
  given: string,
  expected = 'a table with the columns of GET /api/parts/drawer.csv: kind, owned, name and so on',
): Refusal => new Refusal(422, [{ path: '', code: 'notADrawer', message, given: shown(given), expected }]);

/** Where each column stands. @throws Refusal 422 where one is not ours, stands there twice, or is wanting */
function placesOf(head: readonly string[], lines: readonly Line[]): ReadonlyMap<string, number> {
  const places = new Map<string, number>();
  for (const [i, cell] of head.entries()) {
    const name = cell.trim();
    if (name === '' && lines.every(({ cells }) => (cells[i] ?? '').trim() === '')) continue;
    if (!ALL_HEADS.includes(name))
      throw headProblem(
        'has a column that means nothing here',
        name,
        'the columns of GET /api/parts/drawer.csv; what else there is to say goes into notes',
      );
    if (places.has(name)) throw headProblem('has a column twice', name, 'each column once');
    places.set(name, i);
  }
  for (const name of ['kind', 'owned', 'name'])
    if (!places.has(name)) throw headProblem('lacks a column that every part needs', head.join(' '), `a column ${name}`);
  return places;
}

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** A cell's number; what is none stays text, for the part's own schema to complain of. */
function numberIn(cell: string, cut: Cut): number | string | undefined {
  const text = cut === ',' ? cell.trim() : cell.trim().replace(/^([+-]?\d*),(\d+)/, '$1.$2');
  return text === '' ? undefined : NUMBER.test(text) ? Number(text) : cell;
}

function yesIn(cell: string): boolean | string | undefined {
  const word = cell.trim().toLowerCase();
  return word === '' ? undefined : ['yes', 'true'].includes(word) ? true : ['no', 'false'].includes(word) ? false : cell;
}

/** A field's value from its cells, as many as it has columns; undefined where they are empty. */
function fieldOf({ way, field }: Column, cells: readonly string[], cut: Cut, faults: Problem[]): unknown {
  const [first = '', second = '', third = '', fourth = ''] = cells;
  switch (way) {
    case 'quantity': {
      const story = { plusMinus: numberIn(second, cut), origin: third.trim() || undefined, marked: numberIn(fourth, cut) };
      const value = numberIn(first, cut);
      return QUANTITY_ENDS.every((end) => story[end] === undefined) ? value : said({ value, ...story });
    }
    case 'range': {
      const ends = [numberIn(first, cut), numberIn(second, cut)];
      return ends.every((end) => end === undefined) ? undefined : ends.map((end) => end ?? '');
    }
    case 'text':
      return textIn(first);
    case 'word':
      return first.trim() || undefined;
    case 'yes':
      return yesIn(first);
    case 'number':
      return numberIn(first, cut);
    case 'json':
      if (first.trim() === '') return undefined;
      try {
        return JSON.parse(first);
      } catch (error) {
        const message = `is not JSON: ${(error as Error).message.slice(0, 80)}`;
        faults.push({
          path: `/part/${field}`,
          code: 'notJson',
          message,
          given: shown(first),
          expected: 'what the drawer wrote there, or nothing',
        });
        return undefined;
      }
  }
}

/** What is said, without what is not. */
const said = (values: Record<string, unknown>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));

function rowOf(line: number, cell: (head: string) => string, cut: Cut): Row & { faults: Problem[] } {
  const faults: Problem[] = [];
  const part = said(Object.fromEntries(COLUMNS.map((column) => [column.field, fieldOf(column, column.heads.map(cell), cut, faults)])));
  const own = said({
    kind: cell('kind').trim() || undefined,
    owned: yesIn(cell('owned')),
    price: numberIn(cell('price'), cut),
    notes: textIn(cell('notes')),
    part,
  });
  return { line, id: cell('id').trim() || undefined, own, faults };
}
