/**
 * Text in a table's cell. A spreadsheet takes a cell that begins with one of some signs for a formula and
 * may work it out, whoever wrote it; and where it cuts the lines at another sign than ours, a cell of its own
 * begins after that sign too; spaces and quotation marks before the sign hide it from few. There an apostrophe is put before it, which spreadsheets know as 'text follows'.
 * Where the text has apostrophes of its own before such a sign it gets one more, so that taking one away
 * gives back what there was.
 */

/** What a formula begins with, the wide signs of other scripts included. */
const SIGNS = '=+\\-@\\t\\r\\n＝＋－＠';
/** After what a spreadsheet may begin a cell. */
const CUTS = ',;|\\t\\r\\n';

const BARE = new RegExp(`(?<=^|[${CUTS}])(?=['" ]*[${SIGNS}])`, 'gu');
const GUARDED = new RegExp(`(?<=^|[${CUTS}])'(?=['" ]*[${SIGNS}])`, 'gu');

/** Text as it stands in a cell. An empty cell means nothing at all, so that text without a letter gets an apostrophe too. */
export const cellOf = (text: string): string => (/^'*$/.test(text) ? `'${text}` : text.replace(BARE, "'"));

/** A cell's text, what `cellOf` put in taken out; undefined where the cell is empty. */
export const textIn = (cell: string): string | undefined =>
  cell === '' ? undefined : /^'+$/.test(cell) ? cell.slice(1) : cell.replace(GUARDED, '');

/** A value as JSON in a cell: begins with a bracket, and what could cut the line or begin a formula stands in it in code. */
export const jsonCell = (value: unknown): string =>
  JSON.stringify(value).replace(/[;|=+@＝＋－＠]/g, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);
