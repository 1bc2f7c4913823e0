/**
 * What happens on the table, as a contents page: what to screw together, what was seen, how to shoot. The page
 * fetches it with that view.
 */

export { tableAssumptions } from './table/assumptions.ts';
export { tableCautions } from './table/cautions.ts';
// Figures of the table and what is set for them.
export { evaluateTable, type Settings, settingsSchema, type TableEvaluation } from './table/evaluate.ts';
export {
  planOf,
  SETTINGS,
  type SettingKey,
  TABLE_FIGURES,
  TABLE_GROUP_NAMES,
  TABLE_GROUPS,
  type TableFigureId,
  type TableGroup,
  tableFigureById,
} from './table/groups.ts';
// What you saw.
export type { Finding } from './table/saw/findings.ts';
export { type Saw, sawOf, sawSchema, sawShape, type Tightened } from './table/saw/saw.ts';
export { MOST_SIGHTINGS, SIGHTING_KINDS, type Sighting, type SightingKind } from './table/saw/sightings.ts';
export { measuredAs } from './table/saw/take.ts';
export { findingInWords, inconsistentInWords, seenInWords, unsolvedInWords } from './table/saw/words.ts';
export { shapeOf } from './table/setting.ts';
