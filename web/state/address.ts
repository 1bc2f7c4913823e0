import { batch, effect, signal } from '@preact/signals';
import { answered, draft, judge, problems, take, tell, told } from './draft.ts';
import { follow, linkTo } from './link.ts';
import { OPENING } from './opening.ts';

/** Why the link that was followed could not be shown; '' where all is well. */
export const fault = signal('');

/** What the current entry of the history stood for before the edit that is under way. */
let committed = { link: '', draft: null as object | null };

interface Kept {
  draft?: object;
}

const write = (how: 'pushState' | 'replaceState', link: string, kept: object | null): void => {
  try {
    history[how]({ draft: kept } satisfies { draft: object | null }, '', link);
  } catch {
    // Some browsers refuse when they are asked too often: the next change brings the address up to date.
  }
};

/** The address follows each change; a commit (leaving a field, Enter, a pick) makes it one step of history. */
export function followAddress(): void {
  arrive();
  addEventListener('popstate', arrive);
  addEventListener('hashchange', arrive);
  effect(() => {
    const link = linkTo(answered.value.pairing);
    const kept = draft.value;
    if (fault.value === '') write('replaceState', link, kept);
  });
}

/** One committed change is one entry: the one before it gets its own link back. */
export function commit(): void {
  tell();
  const link = linkTo(answered.value.pairing);
  if (link === committed.link) return;
  if (fault.peek() === '') write('replaceState', committed.link, committed.draft);
  write('pushState', link, draft.value);
  committed = { link, draft: draft.value };
  fault.value = '';
}

/** Edits and commits in one. */
export function settle(next: object): void {
  take(next);
  commit();
}

function arrive(): void {
  if (location.hash === linkTo(answered.peek().pairing) && committed.link === location.hash && problems.peek().length === 0) return;
  const found = location.hash.length < 2 ? { pairing: OPENING.pairing } : follow(location.hash);
  if (found.pairing) show(found.pairing, (history.state as Kept | null)?.draft);
  else {
    batch(() => {
      fault.value = found.fault ?? '';
      take(OPENING.pairing);
    });
    committed = { link: location.hash, draft: null };
  }
}

/** A pairing from the address; what was typed there and gave no answer comes back with it. */
function show(pairing: object, typed?: object | null): void {
  batch(() => {
    fault.value = '';
    told.value = [];
    take(pairing);
    if (typed && judge(typed).problems) {
      take(typed);
      tell();
    }
  });
  committed = { link: linkTo(answered.peek().pairing), draft: draft.peek() };
}
