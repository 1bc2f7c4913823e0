import { answered } from '../state/draft.ts';
import { wholeLink } from '../state/link.ts';
import { searchOf, view } from '../state/view.ts';

/** Puts a text on the clipboard; says whether the browser let it. */
export async function onClipboard(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

export const linkHere = (): string => `${location.origin}${location.pathname}${searchOf(view.value)}${wholeLink(answered.value.pairing)}`;
