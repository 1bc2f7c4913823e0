import { inputId, inputPath } from '../fields/names.ts';

/** The element of the input that a path leads to; undefined where the page has none. */
const inputOf = (path: string): HTMLElement | null => document.getElementById(inputId(inputPath(path)));

/** Leads to an input: unfolds what hides it, brings it into view, and puts the cursor there. */
export function leadTo(path: string): void {
  const input = inputOf(path);
  if (!input) return;
  for (let fold = input.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null) fold.open = true;
  const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
  input.scrollIntoView({ block: 'center', behavior: calm ? 'auto' : 'smooth' });
  input.focus({ preventScroll: true });
}
