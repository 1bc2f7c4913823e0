import { glassworks } from '../glassworks.ts';
import { evaluate, figureById, type Working, workingOf } from '../index.ts';
import { evaluateTable, TABLE_FIGURES, type TableFigureId, tableFigureById } from '../table.ts';
import type { OnTable, ToldId } from './check.ts';

/** A figure that belongs to the table and not to the pairing alone. */
export const isOfTable = (id: ToldId): id is TableFigureId => TABLE_FIGURES.some((figure) => figure.id === id);

/** The working of a checked figure, with the numbers of the rig that it is checked on. */
export function workingThere(id: ToldId, { pairing, settings }: OnTable): Working {
  const works = glassworks();
  return isOfTable(id)
    ? workingOf(evaluateTable(pairing, settings, works), tableFigureById(id))
    : workingOf(evaluate(pairing, works), figureById(id));
}
