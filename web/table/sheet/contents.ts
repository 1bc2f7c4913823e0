import { briefOf, type Evaluation, type FigureId, minutesFor, nameOf, type Pairing, type Report } from '../../../core/index.ts';
import { type TableEvaluation, tableAssumptions } from '../../../core/table.ts';
import { engraved } from '../../abreast/named.ts';
import { engravedObjective, engravedRelay } from '../../fields/engrave.ts';
import { lower } from '../../fields/names.ts';
import { FIGURE_NAMES } from '../../figures/names.ts';
import { howTo } from '../../measure/how.ts';
import { inWords, taken } from '../../share/figures-text.ts';
import { settingField, TABLE_FIGURE_NAMES, TABLE_SHARES } from '../names.ts';
import type { OnSheet } from '../on-sheet.ts';

/** The one page that goes to the table: what it says, whatever it is written as. */
export interface SheetContents {
  readonly title: string;
  /** The day it was made, as ISO 8601 writes it. */
  readonly on: string;
  readonly parts: readonly string[];
  readonly verdict: string;
  readonly sentence: string;
  readonly blocks: readonly Block[];
  /** What it rests on, what to measure first at their head: how long that takes, and with what. */
  readonly guesses: readonly string[];
  readonly cautions: readonly string[];
  /** What is written in at the table. */
  readonly blanks: readonly string[];
  readonly link: string;
}

export interface Block {
  readonly title: string;
  readonly says: readonly string[];
  readonly lines: readonly (readonly [name: string, value: string])[];
  /** Things in their order. */
  readonly list: readonly string[];
}

/** What of the pairing is looked up at the table. */
const OF_PAIRING = [
  'systemMagnification',
  'objectFieldWidthMm',
  'objectFieldHeightMm',
  'relayFocalLengthMm',
  'workingFNumber',
  'systemNa',
  'resolvedDetailUm',
  'pixelAtSubjectUm',
  'depthOfFieldUm',
  'coveredShare',
  'cornerIllumination',
] as const satisfies readonly FigureId[];

/** Left open on the sheet, to be filled in by hand. */
const BLANKS = ['Magnification seen', 'Rail from', 'Rail to', 'Exposure, ISO', 'Light and its power', 'Taken on'];

/** So many guesses and so many ways to find one out have room. */
const MOST_GUESSES = 5;
const MOST_MEASURED = 3;
const MOST_SET = 10;

interface Sources {
  evaluation: Evaluation;
  report: Report;
  table: TableEvaluation;
  sections: readonly { readonly title: string; readonly taken: OnSheet }[];
  /** What must be minded beside the pairing's own cautions. */
  cautions: readonly string[];
  title: string;
  on: string;
  link: string;
}

export function sheetContents({ evaluation, report, table, sections, cautions, title, on, link }: Sources): SheetContents {
  const assumptions = [...report.assumptions, ...tableAssumptions(table).filter(({ path }) => settingField(path))];
  return {
    title: title || calledIn(evaluation.pairing),
    on,
    parts: engraved(evaluation.pairing),
    verdict: `${briefOf(evaluation, report.coverage)}.`,
    sentence: report.sentence,
    blocks: [
      {
        title: 'The picture',
        says: [],
        list: [],
        lines: OF_PAIRING.map((id) => [FIGURE_NAMES[id], inWords(id, report.figures[id])] as const),
      },
      ...sections.map(({ title, taken: { says, figures, list = [] } }) => ({
        title,
        says,
        list,
        // What is not known needs no line: the sentence says so where it matters.
        lines: figures
          .filter((id) => table.answers[id].state !== 'unknown')
          .map((id) => [TABLE_FIGURE_NAMES[id], inWords(id, table.answers[id], TABLE_SHARES.has(id))] as const),
      })),
      { title: 'As set', says: [], list: [], lines: asSet(table) },
    ].filter(({ says, lines, list }) => says.length + lines.length + list.length > 0),
    guesses: assumptions.slice(0, MOST_GUESSES).map(({ path }, i) => {
      const guess = `${calledGuess(path)}, ${taken(table, path)}`;
      const how = i < MOST_MEASURED ? howTo(path) : undefined;
      return how ? `${guess}; found out in ${minutesFor(path)} with ${how.takes}` : guess;
    }),
    cautions: [...new Set([...report.cautions, ...cautions])],
    blanks: BLANKS,
    link,
  };
}

/** What a pairing is called where nobody calls it anything: its parts by name. */
const calledIn = ({ objective, relay }: Pairing): string =>
  [objective.name ?? engravedObjective(objective), relay.name ?? engravedRelay(relay)].join(' before ');

const calledGuess = (path: string): string => {
  const field = settingField(path);
  return field ? lower(field.label) : nameOf(path);
};

/** What the user set on the table; what is usual goes without saying. */
function asSet(table: TableEvaluation): Block['lines'] {
  const lines = Object.keys(table.settings).flatMap((key) => {
    const field = settingField(`/${key}`);
    const given = table.settings[key as keyof typeof table.settings];
    if (!field || given === undefined) return [];
    return [[field.label, typeof given === 'string' ? given : taken(table, `/${key}`)] as const];
  });
  return lines.length <= MOST_SET ? lines : [...lines.slice(0, MOST_SET), ['and', `${lines.length - MOST_SET} more, in the link`]];
}
