import { batch, effect, type Signal, signal, untracked } from '@preact/signals';
import type { z } from 'zod';
import { type Problem, problemsOf } from '../../core/index.ts';
import { commit } from './address.ts';
import { firstOfEach } from './draft.ts';
import { read, written } from './link.ts';
import { said } from './words.ts';

/** Something that a view keeps in the address: what stands in its inputs, and the last of it that could be read. */
export interface Kept<T extends object> {
  /** Whatever was typed. */
  readonly draft: Signal<object>;
  readonly value: Signal<T>;
  /** What is wrong with the draft, once it is said: half-typed input is given time. */
  readonly told: Signal<readonly Problem[]>;
  /** Why what the address holds could not be read; '' where all is well. */
  readonly fault: Signal<string>;
  /** Follows the address as long as the view is open. Returns what ends that. */
  follow(): () => void;
  take(next: object): void;
  /** An input was left: what is wrong is said, what was changed is a step of history. */
  done(): void;
}

/** `1.` and the value as JSON in base64url: version 1 of what the address holds. */
const MARK = '1.';
const LONGEST = 20_000;

/** How a value stands in the address. */
export const keptAs = (value: object): string => MARK + written(value);

const PATIENCE_MS = 800;

/** @param text what the address holds; '' for `empty` */
export function kept<T extends object>(text: Signal<string>, schema: z.ZodType<T>, empty: T): Kept<T> {
  const draft = signal<object>(empty);
  const value = signal<T>(empty);
  const told = signal<readonly Problem[]>([]);
  const fault = signal('');
  let problems: readonly Problem[] = [];
  let waiting: ReturnType<typeof setTimeout> | undefined;
  /** What the address holds of this page's own making. */
  let mine: string | undefined;

  const textOf = (next: T): string => (JSON.stringify(next) === JSON.stringify(empty) ? '' : keptAs(next));
  const tell = (): void => {
    clearTimeout(waiting);
    told.value = problems;
  };

  const arrive = (held: string): void => {
    const found = held === '' ? { value: empty } : readIn(held, schema);
    mine = held;
    problems = [];
    clearTimeout(waiting);
    batch(() => {
      fault.value = found.fault ?? '';
      value.value = found.value ?? empty;
      draft.value = value.peek();
      told.value = [];
    });
  };

  return {
    draft,
    value,
    told,
    fault,
    follow() {
      const stop = effect(() => {
        const held = text.value;
        untracked(() => {
          if (held !== mine) arrive(held);
        });
      });
      return () => {
        clearTimeout(waiting);
        stop();
      };
    },
    take(next) {
      clearTimeout(waiting);
      const parsed = schema.safeParse(next);
      problems = parsed.success ? [] : firstOfEach(problemsOf(parsed.error, next));
      batch(() => {
        draft.value = next;
        if (parsed.success) {
          value.value = parsed.data;
          fault.value = '';
          mine = textOf(parsed.data);
          text.value = mine;
        }
        told.value = told.peek().flatMap((old) => problems.find(({ path }) => path === old.path) ?? []);
      });
      if (problems.length > 0) waiting = setTimeout(tell, PATIENCE_MS);
    },
    done() {
      tell();
      commit();
    },
  };
}

/** What an address holds, or in words why it cannot be read. Anybody may have written it. Never throws. */
function readIn<T>(text: string, schema: z.ZodType<T>): { value: T; fault?: undefined } | { fault: string; value?: undefined } {
  if (!text.startsWith(MARK))
    return { fault: /^\d+\./.test(text) ? 'it comes from another version of this page' : 'it holds nothing of ours' };
  if (text.length > LONGEST) return { fault: 'it is far too long' };
  try {
    const held = read(text.slice(MARK.length));
    const parsed = schema.safeParse(held);
    if (parsed.success) return { value: parsed.data };
    const first = problemsOf(parsed.error, held)[0];
    return { fault: first ? said(first).replace(/\.$/, '') : 'what it holds could not be read' };
  } catch {
    return { fault: 'it is cut short or damaged' };
  }
}
