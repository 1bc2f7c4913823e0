import type { ComponentChildren } from 'preact';
import { leadTo } from '../state/lead.ts';
import { fieldAt } from './names.ts';

/** Words that lead to an input. A button and not a link: the address belongs to the pairing. */
export function Lead({ path, children }: { path: string; children: ComponentChildren }) {
  if (!fieldAt(path)) return <>{children}</>;
  return (
    <button type="button" class="lead" onClick={() => leadTo(path)}>
      {children}
    </button>
  );
}
