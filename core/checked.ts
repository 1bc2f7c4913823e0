/**
 * What the outside world prints, and what core makes of it, as a contents page. The page fetches it with the
 * view that shows it; `tests/published` runs the same code and cites each source.
 */

export { type Answered, type Answers, asked, checking, type Entry, type Progress } from './checked/checking.ts';
export { EXACT, USUAL } from './checked/judge.ts';
export { isOfTable, workingThere } from './checked/look.ts';
export { checkedSays, placedIn, type Summary, summaryOf } from './checked/says.ts';
