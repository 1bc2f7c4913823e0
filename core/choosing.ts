/**
 * Choosing, as a contents page: from what a person wants to the pairings that give it, each with its
 * reasons. Fetched by the page with the views that need it.
 */

export type { Asked, Offered } from './choose/asked.ts';
export { type Choice, type Choices, choosing } from './choose/choices.ts';
export { LIMIT_NAMES, type Limit, type LimitName, limitsOf, marginOf, meets } from './choose/limits.ts';
export { type OneMore, type Opening, oneMore } from './choose/one-more.ts';
export { VARIABLES, type Variable } from './choose/quantities.ts';
export { type Found, searching } from './choose/search.ts';
export { subjectOf, type Want, wantSchema } from './choose/want.ts';
export { type WindowAnswer, type WindowQuestion, windowing, windowOf } from './choose/windows.ts';
export { amountOf, ENDS, holdsOf, LIMIT_WORDS, type LimitWords } from './choose/words.ts';
