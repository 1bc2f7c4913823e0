import { batch, computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { PartKind } from '../../core/index.ts';
import type { Sheet } from '../fields/sheet.ts';
import { type Catalogue, catalogue } from '../state/catalogue.ts';
import { at, complained, edited, followed, isChanged, type Slip, saidAgainst, standingIn } from './slip.ts';

/** A slip that lies open, and what became of the last thing that was done with it. */
export interface Laid {
  key: string;
  kind: PartKind;
  slip: Signal<Slip>;
  /** The id under which it lies in the drawer. */
  id: ReadonlySignal<string | undefined>;
  said: Signal<string>;
  /** Out of sight, because something typed on it is not kept. */
  folded: Signal<boolean>;
  /** Whether the server is being asked. */
  busy: Signal<boolean>;
}

/** They outlive the view: what was typed is there again when it is opened anew. */
export const laid = signal<readonly Laid[]>([]);

let count = 0;

/** Lays a slip open, unless its part lies open already. */
export function layOut(fresh: Slip, said = ''): Laid {
  const there = laid.peek().find(({ id }) => id.peek() !== undefined && id.peek() === fresh.standing?.id);
  if (there) {
    there.folded.value = false;
    return there;
  }
  const slip = signal(fresh);
  const id = computed(() => slip.value.standing?.id);
  const one = { key: `slip${++count}`, kind: fresh.kind, slip, id, said: signal(said), folded: signal(false), busy: signal(false) };
  laid.value = [...laid.peek(), one];
  return one;
}

/** With it goes what was typed on it. */
export function putAside(one: Laid): void {
  laid.value = laid.peek().filter((other) => other !== one);
}

/** Puts it aside or, where something typed is not kept, only out of sight; and back. */
export function fold(one: Laid): void {
  if (isChanged(one.slip.peek())) one.folded.value = !one.folded.peek();
  else putAside(one);
}

/** The slip's fields as inputs stand on it. */
export const sheetOf = ({ key, slip, said }: Laid): Sheet => ({
  mark: `-${key}`,
  at: (path) => at(slip.value, path),
  edit: (path, value) =>
    batch(() => {
      slip.value = edited(slip.peek(), path, value);
      said.value = '';
    }),
  found: (path) => saidAgainst(slip.value, path),
  done: () => {
    slip.value = complained(slip.peek(), false);
  },
  taken: () => undefined,
});

/** Each look into the drawer reaches the slips that lie open. */
function meet(now: Catalogue): void {
  if (now.last || now.drawer?.state !== 'open') return;
  batch(() => {
    for (const one of laid.peek()) {
      const next = followed(one.slip.peek(), standingIn(now, one.kind));
      if (next) one.slip.value = next;
      else putAside(one);
    }
  });
}

/** While there is something typed that is not kept the browser asks before it forgets it. */
const unkept = computed(() => laid.value.some(({ slip }) => isChanged(slip.value)));
const warn = (event: BeforeUnloadEvent): void => event.preventDefault();

/** Once for the page: slips outlive the view. */
effect(() => {
  const now = catalogue.value;
  if (typeof now === 'object') meet(now);
});
effect(() => {
  if (unkept.value) addEventListener('beforeunload', warn);
  else removeEventListener('beforeunload', warn);
});
