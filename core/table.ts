/**
 * What happens on the table, as a contents page: what to screw together, what was seen, how to shoot. The page
 * fetches it with that view.
 */

export { tableAssumptions } from './table/assumptions.ts';
// What to screw together.
export { type BuildAsk, buildAskSchema, buildAskShape } from './table/build/ask.ts';
export { buildEffects, darkens } from './table/build/effects.ts';
export type { SheetPart } from './table/build/parts-list.ts';
export { buildSentence, buildWords } from './table/build/sentence.ts';
export { type BuildSheet, buildSheet } from './table/build/sheet.ts';
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
export { infinitySteps } from './table/infinity/procedure.ts';
export { type TubePoint, tubeStudy } from './table/infinity/study.ts';
export { infinityBrief, infinitySays, TUBE_BITES, tubeBites } from './table/infinity/told.ts';
export { OUT, wayOf } from './table/infinity/way.ts';
// Frames for this subject, and room for light.
export { lightSentence } from './table/light/sentence.ts';
export { type SideView, sideViewOf } from './table/light/side.ts';
// What you saw.
export type { Finding } from './table/saw/findings.ts';
export { type Saw, sawOf, sawSchema, sawShape, type Tightened } from './table/saw/saw.ts';
export { MOST_SIGHTINGS, SIGHTING_KINDS, type Sighting, type SightingKind } from './table/saw/sightings.ts';
export { measuredAs } from './table/saw/take.ts';
export { findingInWords, inconsistentInWords, seenInWords, unsolvedInWords } from './table/saw/words.ts';
export { shapeOf } from './table/setting.ts';
export { byConvention, CONVENTION_WORDS } from './table/stack/conventions.ts';
export { MOST_OBJECTIVES, nearestIn, type ObjectiveStack, objectiveName, stackByObjective } from './table/stack/objectives.ts';
export { stackSentence } from './table/stack/sentence.ts';
// Light and stillness.
export { stillnessSays } from './table/stillness/told.ts';
export { KNOWN_THREADS } from './table/threads/known.ts';
export { readThread } from './table/threads/read.ts';
