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
// Frames for this subject, and room for light.
export { lightSentence } from './table/light/sentence.ts';
export { type SideView, sideViewOf } from './table/light/side.ts';
export { shapeOf } from './table/setting.ts';
export { byConvention, CONVENTION_WORDS } from './table/stack/conventions.ts';
export { MOST_OBJECTIVES, type ObjectiveStack, objectiveName, stackByObjective } from './table/stack/objectives.ts';
export { duration, stackSentence } from './table/stack/sentence.ts';
