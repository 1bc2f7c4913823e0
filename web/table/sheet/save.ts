import type { Evaluation, Report } from '../../../core/index.ts';
import type { TableEvaluation } from '../../../core/table.ts';
import { fileName, written } from '../../share/file.ts';
import RIG_STYLE from '../../styles/rig.css?inline';
import SHEET_STYLE from '../../styles/sheet.css?inline';
import type { SheetContents } from './contents.ts';
import { sheetMarkdown } from './markdown.ts';

/** What a sheet can be saved as. */
export const KINDS = {
  html: 'text/html',
  md: 'text/markdown',
  json: 'application/json',
} as const;
export type Kind = keyof typeof KINDS;

/**
 * The sheet as one file that shows it without a network: the page as it stands, with its style inside. The
 * browser writes the markup, so that names are text in it whatever they are.
 */
function sheetHtml(name: string, sheet: Element): string {
  const title = document.createElement('title');
  title.textContent = name;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
${title.outerHTML}
<style>
${SHEET_STYLE}${RIG_STYLE}</style>
</head>
<body>
${sheet.outerHTML}
</body>
</html>
`;
}

interface Saved {
  contents: SheetContents;
  evaluation: Evaluation;
  report: Report;
  table: TableEvaluation;
  /** The sheet as it stands on the page. */
  sheet: Element;
}

/** The file's text. What is saved as JSON opens again as a pairing. */
export function sheetAs(kind: Kind, { contents, evaluation, report, table, sheet }: Saved): string {
  if (kind === 'html') return sheetHtml(contents.title, sheet);
  if (kind === 'md') return sheetMarkdown(contents);
  return written(evaluation.pairing, report, { settings: table.settings, figures: table.answers, sheet: contents });
}

export const sheetName = ({ pairing }: Evaluation, kind: Kind): string =>
  fileName(pairing).replace('pupilwalk-', 'pupilwalk-sheet-').replace(/json$/, kind);
