import { findingInWords, seenInWords } from '../../../core/table.ts';
import type { OnSheet } from '../on-sheet.ts';
import { isTaken, looked } from './state.ts';

/** What was seen, and of what it gave the part that was taken. */
export function sawOnSheet(): OnSheet {
  const { saw } = looked.value;
  if (!saw) return { says: [], figures: [] };
  const seen = saw.magnification ? [seenInWords(saw.magnification)] : [];
  return { says: [...seen, ...saw.results.filter(isTaken).map(findingInWords)], figures: [] };
}
