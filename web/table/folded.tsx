import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';

const FOLDS = 'details.in-full';

/** A part of the table as a phone shows it first: what it says, the rest behind a fold. */
export function Folded({ title, says, children }: { title: string; says: string | undefined; children: ComponentChildren }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      {says && !open && <p class="in-brief">{says}</p>}
      <details class="fold in-full" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
        <summary>
          in full<span class="unseen">: {title}</span>
        </summary>
        {children}
      </details>
    </>
  );
}

/** Lays open what is folded within. */
export function unfold(within: Element | null | undefined): void {
  const fold = within?.querySelector<HTMLDetailsElement>(FOLDS);
  if (fold) fold.open = true;
}

/** On paper nothing of it is folded; on the screen it is again afterwards. */
export function useUnfoldedOnPaper(): void {
  useEffect(() => {
    const opened: HTMLDetailsElement[] = [];
    const before = (): void => {
      for (const fold of document.querySelectorAll<HTMLDetailsElement>(`${FOLDS}:not([open])`)) {
        fold.open = true;
        opened.push(fold);
      }
    };
    const after = (): void => {
      for (const fold of opened.splice(0)) fold.open = false;
    };
    addEventListener('beforeprint', before);
    addEventListener('afterprint', after);
    return () => {
      removeEventListener('beforeprint', before);
      removeEventListener('afterprint', after);
    };
  }, []);
}
