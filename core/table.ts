/**
 * What happens on the table, as a contents page: what to screw together, what was seen, how to shoot. The page
 * fetches it with that view.
 */

export { tableAssumptions } from './table/assumptions.ts';
export { tableCautions } from './table/cautions.ts';
export { closeUpClaims } from './table/close-up/claims.ts';
export { closeUpSays } from './table/close-up/sentence.ts';
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
// Setting infinity, and what may be wrong about it.
export { type TubePoint, type TubeStudy, tubeStudy } from './table/infinity/study.ts';
export { infinitySays, TUBE_BITES, tubeBites } from './table/infinity/told.ts';
export { shapeOf } from './table/setting.ts';
// Light and stillness.
export { stillnessSays } from './table/stillness/told.ts';
