import { fieldAt, inputId, inputPath } from '../fields/names.ts';
import { openView } from './address.ts';
import type { View } from './view.ts';

/** The element of the input that a path leads to; undefined where the page has none. */
const inputOf = (path: string): HTMLElement | null => document.getElementById(inputId(inputPath(path)));

/** The view that has the input: the relay's glass and how it is judged stand in a view of their own. */
const homeOf = (path: string): View =>
  /^\/(relay\/glass|sharp)(\/|$)/.test(path) ? 'glass' : fieldAt(path)?.brought ? 'table' : 'pairing';

/** How long a piece of the page that has to be fetched is waited for, ms. */
const LONGEST = 5000;

/** Leads to an input, in its own view if need be: unfolds what hides it, brings it into view, and puts the cursor there. */
export function leadTo(path: string): void {
  if (!inputOf(path)) openView(homeOf(path));
  const since = performance.now();
  const look = (): void => {
    const there = inputOf(path);
    if (there) bringTo(there);
    else if (performance.now() - since < LONGEST) requestAnimationFrame(look);
  };
  look();
}

function bringTo(input: HTMLElement): void {
  for (let fold = input.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null) fold.open = true;
  const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
  input.scrollIntoView({ block: 'center', behavior: calm ? 'auto' : 'smooth' });
  input.focus({ preventScroll: true });
}
