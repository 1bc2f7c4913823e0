import { batch, effect, signal, untracked } from '@preact/signals';
import { answered, awaited, draft, judge, problems, take, tell, told } from './draft.ts';
import { held } from './held.ts';
import { follow, further, parted, wholeLink } from './link.ts';
import { OPENING } from './opening.ts';
import { followView, searchOf, showView, type View, view } from './view.ts';
import { fetchWorks } from './works.ts';

/** Why the link that was followed could not be shown; '' where all is well. */
export const fault = signal('');

/** Whether the address holds a pairing that cannot be answered before what works with glass is there, or not at all. */
export const arriving = signal<'no' | 'fetching' | 'in vain'>('no');

/** What the current entry of the history stood for before the edit that is under way. */
let committed = { search: '', link: '', draft: null as object | null };
/** A commit that came while the answer was awaited. */
let owed = false;

interface Kept {
  draft?: object | null;
}

const write = (how: 'pushState' | 'replaceState', address: string, kept: object | null): void => {
  try {
    history[how]({ draft: kept } satisfies Kept, '', address);
  } catch {
    // Some browsers refuse when they are asked too often: the next change brings the address up to date.
  }
};

const addressOf = ({ search, link }: { search: string; link: string }): string => `${location.pathname}${search}${link}`;

/** The address follows each change; a commit (leaving a field, Enter, a pick) makes it one step of history. */
export function followAddress(): void {
  arrive();
  addEventListener('popstate', arrive);
  addEventListener('hashchange', arrive);
  effect(() => {
    // Browsers refuse an address that changes with every frame: it waits until the hand lets go.
    if (held.value !== undefined) return;
    const address = addressOf({ search: searchOf(view.value), link: wholeLink(answered.value.pairing) });
    const kept = draft.value;
    if (fault.value === '' && arriving.value === 'no') write('replaceState', address, kept);
  });
  effect(() => {
    if (awaited.value === 'nothing' && owed) untracked(commit);
  });
}

/** One committed change is one entry: the one before it gets its own link back. */
export function commit(): void {
  tell();
  owed = awaited.peek() === 'glass';
  const next = { search: searchOf(view.peek()), link: wholeLink(answered.peek().pairing), draft: draft.peek() };
  if (owed || (next.link === committed.link && next.search === committed.search)) return;
  if (fault.peek() === '') write('replaceState', addressOf(committed), committed.draft);
  write('pushState', addressOf(next), next.draft);
  committed = next;
  fault.value = '';
}

/** Edits and commits in one. */
export function settle(next: object): void {
  take(next);
  commit();
}

/** Another view of the same pairing: a step of history of its own. */
export function openView(name: View): void {
  commit();
  if (view.peek() === name) return;
  const search = searchOf(name);
  write('pushState', addressOf({ search, link: location.hash }), draft.peek());
  committed.search = search;
  showView(name);
}

/** Nothing of where one comes from may be written into the address that one has come to: all of it changes at once. */
const arrive = (): void => batch(arriveAtOnce);

function arriveAtOnce(): void {
  followView();
  const { hash } = location;
  committed.search = searchOf(view.peek());
  if (hash === wholeLink(answered.peek().pairing) && committed.link === hash && problems.peek().length === 0) {
    arriving.value = 'no';
    return;
  }
  owed = false;
  const [own, behind] = parted(hash);
  const found = hash.length < 2 ? { pairing: OPENING.pairing } : follow(own);
  if (found.waits) {
    // Nothing of another pairing stands in its place meanwhile.
    batch(() => {
      arriving.value = 'fetching';
      further.value = behind;
    });
    fetchWorks().then(
      () => location.hash === hash && arrive(),
      () => {
        if (location.hash === hash) arriving.value = 'in vain';
      },
    );
    return;
  }
  if (found.pairing) show(found.pairing, behind, (history.state as Kept | null)?.draft);
  else {
    batch(() => {
      arriving.value = 'no';
      further.value = behind;
      fault.value = found.fault ?? '';
      take(OPENING.pairing);
    });
    committed = { ...committed, link: location.hash, draft: null };
  }
}

/** A pairing from the address; what was typed there and gave no answer comes back with it. */
function show(pairing: object, behind: string, typed?: object | null): void {
  batch(() => {
    arriving.value = 'no';
    further.value = behind;
    fault.value = '';
    told.value = [];
    take(pairing);
    if (typed && !judge(typed).evaluation) {
      take(typed);
      tell();
    }
  });
  committed = { ...committed, link: wholeLink(answered.peek().pairing), draft: draft.peek() };
}
