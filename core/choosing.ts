/**
 * Choosing, as a contents page: from what a person wants to the pairings that give it, each with its
 * reasons. Fetched by the page with the views that need it.
 */

// What is asked: a wish, the parts to choose from, the order in which it is told.
export {
  type Asked,
  DEFAULT_FRONTIER,
  DEFAULT_SORT,
  DEFAULT_SPACES_MM,
  DEFAULT_TOLD,
  MOST_CONSIDERED,
  MOST_TOLD,
  type Offered,
  type Sort,
} from './choose/asked.ts';
export { BETTER } from './choose/better.ts';
// What comes of it.
export { type Choice, type Choices, choosing } from './choose/choices.ts';
export { type LimitAnswer, limitAnswers } from './choose/limit-answers.ts';
export { LIMIT_NAMES, type Limit, type LimitName, limitsOf, marginOf, meets } from './choose/limits.ts';
export type { NearMiss } from './choose/near.ts';
export { type OneMore, type Opening, oneMore, type Shift } from './choose/one-more.ts';
// Where a quantity may lie, all else held.
export { VARIABLES, type Variable } from './choose/quantities.ts';
export { bitesOf, metOf, nameOfLimit, toldIn } from './choose/reasons.ts';
export { type Found, type Progress, type Stopped, searching } from './choose/search.ts';
export { subjectOf, type Want, wantSchema } from './choose/want.ts';
export type { WindowAnswer, WindowQuestion } from './choose/window-answer.ts';
export { where } from './choose/window-words.ts';
export { windowing, windowOf } from './choose/windows.ts';
export { amountOf, ENDS, holdsOf, LIMIT_WORDS, type LimitWords } from './choose/words.ts';
