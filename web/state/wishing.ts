import { batch, effect, signal, untracked } from '@preact/signals';
import type { Want } from '../../core/choosing.ts';
import type { Pairing, Problem } from '../../core/index.ts';
import { clausesIn, type Texts, textsFrom, wantFrom } from '../subject/blanks.ts';
import { commit } from './address.ts';
import { answered } from './draft.ts';
import { wishText } from './view.ts';
import { startOf, type Wish, wishIn, wishTo } from './wish.ts';

/** The wish that is answered: the last one that could be read. */
export const wish = signal<Wish>(startOf(answered.peek().pairing));
/** What stands in the blanks, whatever was typed. */
export const texts = signal<Texts>(textsFrom(wish.peek().want));
/** The further parts of the sentence that stand there, filled in or not. */
export const clauses = signal<readonly string[]>([]);
/** What is wrong with the blanks, once it is said: half-typed input is given time. */
export const wishTold = signal<readonly Problem[]>([]);
/** Why the address's wish could not be read; '' where all is well. */
export const wishFault = signal('');

let problems: readonly Problem[] = [];
/** What the address holds of this page's own making. */
let mine: string | undefined;
const PATIENCE_MS = 800;
let waiting: ReturnType<typeof setTimeout> | undefined;

/** Follows the address, and where it holds no wish the pairing, as long as the view is open. Returns what ends that. */
export function followWish(): () => void {
  mine = undefined;
  const stop = effect(() => {
    const text = wishText.value;
    const { pairing } = text === '' ? answered.value : answered.peek();
    untracked(() => {
      if (text !== mine || text === '') arriveAt(text, pairing);
    });
  });
  return () => {
    clearTimeout(waiting);
    stop();
  };
}

function arriveAt(text: string, pairing: Pairing): void {
  const found = text === '' ? { wish: startOf(pairing) } : wishIn(text);
  const next = found.wish ?? startOf(pairing);
  mine = text;
  clearTimeout(waiting);
  problems = [];
  batch(() => {
    wishFault.value = found.fault ?? '';
    wish.value = next;
    texts.value = textsFrom(next.want);
    clauses.value = clausesIn(texts.peek());
    wishTold.value = [];
  });
}

/** Takes another wish: the address follows at once, and a commit makes it a step of history. */
export function change(part: Partial<Wish>): void {
  const next = { ...wish.peek(), ...part };
  mine = wishTo(next);
  batch(() => {
    wishFault.value = '';
    wish.value = next;
    wishText.value = mine as string;
  });
}

/** The same as one step of history. */
export function choose(part: Partial<Wish>): void {
  change(part);
  commit();
}

/** Types into blanks: the wish follows where it can be read. */
export function type(typed: Texts): void {
  clearTimeout(waiting);
  const next = { ...texts.peek(), ...typed };
  const found = wantFrom(next);
  problems = found.problems ?? [];
  batch(() => {
    texts.value = next;
    if (found.want && JSON.stringify(found.want) !== JSON.stringify(wish.peek().want)) change({ want: found.want });
    wishTold.value = wishTold.peek().flatMap((old) => problems.find(({ path }) => path === old.path) ?? []);
  });
  if (problems.length > 0) waiting = setTimeout(tellWish, PATIENCE_MS);
}

function tellWish(): void {
  clearTimeout(waiting);
  wishTold.value = problems;
}

/** A blank was left, or Enter pressed: what is wrong is said, what was changed is a step of history. */
export function settleWish(): void {
  tellWish();
  commit();
}

/** What is wanted as a whole, as one step of history. */
export function wantThat(want: Want): void {
  batch(() => {
    texts.value = textsFrom(want);
    clauses.value = [...new Set([...clauses.peek(), ...clausesIn(texts.peek())])];
    problems = [];
    wishTold.value = [];
    change({ want });
  });
  commit();
}
