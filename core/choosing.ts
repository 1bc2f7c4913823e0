/**
 * Choosing, as a contents page: from what a person wants to the pairings that give it, each with its
 * reasons. Fetched by the page with the views that need it.
 */

export { LIMIT_NAMES, type Limit, type LimitName, limitsOf, marginOf, meets } from './choose/limits.ts';
export { type Want, wantSchema } from './choose/want.ts';
export { amountOf, ENDS, holdsOf, LIMIT_WORDS, type LimitWords } from './choose/words.ts';
