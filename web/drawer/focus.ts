import { inputId, inputPath } from '../fields/names.ts';

/** Where the cursor goes when what it was in has moved or gone. */

/** The element of a part's line in the list, and of the line that is left where it was taken out. */
export const idOfRow = (id: string): string => `own-${id}`;
/** The element of a slip. */
export const idOfSlip = (key: string): string => `laid-${key}`;

/** How long a line that is still to come is waited for, ms. */
const LONGEST = 2000;

/** To an input of a slip, unfolding what hides it; to the slip itself where the path is none of its inputs'; to a line of the list. */
export function bringTo(key: string, path?: string): void {
  const since = performance.now();
  const find = (): HTMLElement | null =>
    path === undefined
      ? document.getElementById(key)
      : (document.getElementById(inputId(inputPath(path), `-${key}`)) ?? document.getElementById(idOfSlip(key)));
  const look = (): void => {
    const there = find();
    if (!there) {
      if (performance.now() - since < LONGEST) requestAnimationFrame(look);
      return;
    }
    for (let fold = there.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null) fold.open = true;
    there.focus({ preventScroll: true });
    there.scrollIntoView({ block: 'nearest' });
  };
  requestAnimationFrame(look);
}

/** Remembers that the cursor was in a slip: its part may get a place in the list, and the cursor follows it there. */
export function keepPlace(key: string): (id: string | undefined) => void {
  const slip = document.getElementById(idOfSlip(key));
  const inside = slip?.contains(document.activeElement) ?? false;
  return (id) =>
    requestAnimationFrame(() => {
      if (inside && id !== undefined && !slip?.isConnected) bringTo(idOfRow(id));
    });
}
