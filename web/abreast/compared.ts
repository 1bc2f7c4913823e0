import { computed, effect, signal } from '@preact/signals';
import { forOneSubject, judgedUnlike, type Pairing, praiseOf, rowsOf } from '../../core/index.ts';
import { abreast } from '../state/abreast.ts';
import { said } from '../state/words.ts';
import type { Answered, Asked, Differences, Each, Worked } from './compare-task.ts';

/** A pairing that is compared: as it was laid, where it lies, and what came of it. */
export interface Compared extends Worked {
  readonly pairing: Pairing;
  readonly place: number;
}

interface Found {
  /** The text of what was asked. */
  readonly of: string;
  readonly laid: readonly { pairing: Pairing; place: number }[];
  readonly each: readonly Each[];
  readonly differences: Differences | undefined;
}

/** How far the comparison is that runs; undefined while none does. */
export const underWay = signal<{ done: number; of: number } | undefined>(undefined);
/** Why there can be none. */
export const failed = signal('');
const found = signal<Found | undefined>(undefined);

/** What lies abreast and can be read, with one subject for all. */
export const question = computed(() => {
  const laid = abreast.value.flatMap(({ pairing }, place) => (pairing ? [{ pairing, place }] : []));
  return { laid, one: forOneSubject(laid.map(({ pairing }) => pairing)), unlike: judgedUnlike(laid.map(({ pairing }) => pairing)) };
});

/** Whether what stands compared is what lies abreast now. */
export const upToDate = computed(() => found.value?.of === keyOf(question.value.one.pairings));

/** Those of the last comparison that could be worked out. */
export const compared = computed((): readonly Compared[] =>
  (found.value?.each ?? []).flatMap((worked, i) => (worked.problems ? [] : [{ ...worked, ...(found.value as Found).laid[i] } as Compared])),
);

/** What is wrong with what lies abreast, by its place: it cannot be read, or contradicts itself. */
export const faults = computed((): readonly { place: number; fault: string }[] => {
  const { laid = [], each = [] } = (upToDate.value && found.value) || {};
  const contradictions = each.flatMap(({ problems }, i) => {
    const [first, place] = [problems?.[0], laid[i]?.place];
    return first && place !== undefined ? [{ place, fault: said(first).replace(/\.$/, '') }] : [];
  });
  const unread = abreast.value.flatMap(({ fault }, place) => (fault === undefined ? [] : [{ place, fault }]));
  return [...unread, ...contradictions].toSorted((a, b) => a.place - b.place);
});

/** The rows of the table; undefined until every pair has been worked out, or where there is none. */
export const rows = computed(() => {
  const differences = found.value?.differences;
  if (!differences || compared.value.length < 2) return undefined;
  return rowsOf({
    answers: compared.value.map(({ answers }) => answers),
    difference: (from, of) => differences[from]?.[of - from - 1] as Differences[number][number],
  });
});

export const sentences = computed(() => rows.value && praiseOf(rows.value));

const keyOf = (pairings: readonly Pairing[]): string => JSON.stringify(pairings);

/** Compares what lies abreast, as long as a view shows it. Returns what ends it. */
export function followAbreast(): () => void {
  let worker: Worker | undefined;
  let last = 0;
  const begin = (asked: Omit<Asked, 'id'>, laid: Found['laid']): void => {
    const id = ++last;
    failed.value = '';
    try {
      worker ??= new Worker(new URL('./compare.worker.ts', import.meta.url), { type: 'module' });
    } catch {
      failed.value = 'this browser lets no work be done beside the page';
      return;
    }
    underWay.value = { done: 0, of: 1 };
    let each: readonly Each[] = [];
    const of = keyOf(asked.pairings);
    worker.onmessage = ({ data }: MessageEvent<Answered>) => {
      if (data.id !== last || id !== last) return;
      if ('done' in data) {
        underWay.value = { done: data.done, of: data.of };
        return;
      }
      if ('each' in data) {
        each = data.each;
        // What stands stays until there is as much of the new.
        if (!found.peek()?.differences || each.length < 2) found.value = { of, laid, each, differences: undefined };
        return;
      }
      underWay.value = undefined;
      if ('failed' in data) failed.value = data.failed;
      else found.value = { of, laid, each, differences: data.differences };
    };
    // Code that cannot be fetched or run says so here.
    worker.onerror = () => {
      if (id !== last) return;
      underWay.value = undefined;
      worker?.terminate();
      worker = undefined;
      failed.value = 'what compares them could not be fetched';
    };
    worker.postMessage({ ...asked, id } satisfies Asked);
  };
  const stop = effect(() => {
    const { laid, one } = question.value;
    if (laid.length === 0) {
      last++;
      underWay.value = undefined;
      found.value = undefined;
    } else if (found.peek()?.of !== keyOf(one.pairings) || !found.peek()?.differences) begin({ pairings: one.pairings }, laid);
    // The same pairings at other places: what could not be read was taken away.
    else found.value = { ...(found.peek() as Found), laid };
  });
  return () => {
    stop();
    worker?.terminate();
    underWay.value = undefined;
  };
}
