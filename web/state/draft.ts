import { batch, computed, signal } from '@preact/signals';
import { type Evaluation, evaluate, PairingError, type Problem, pairingSchema, problemsOf, reportOf } from '../../core/index.ts';
import { inputPath } from '../fields/names.ts';
import { withAt } from './json.ts';
import { OPENING } from './opening.ts';
import { fetchWorks, hasGlass, worksNow } from './works.ts';

/**
 * What stands in the fields, and the last answer that it gave. The draft may hold anything that a
 * person types, text in the place of a number included; the answer only ever follows a whole pairing.
 */
export const draft = signal<object>(OPENING.pairing);
export const answered = signal<Evaluation>(evaluate(OPENING.pairing));
export const report = computed(() => reportOf(answered.value));

/** What is wrong with the draft now. */
export const problems = signal<readonly Problem[]>([]);
/** What of it is said: half-typed input is given time. */
export const told = signal<readonly Problem[]>([]);

/** Whether the draft's answer waits for what works with glass, or cannot have it. */
export const awaited = signal<'nothing' | 'glass' | 'in vain'>('nothing');

const PATIENCE_MS = 800;
let waiting: ReturnType<typeof setTimeout> | undefined;

export type Judgement =
  | { evaluation: Evaluation; problems?: undefined; waits?: undefined }
  | { problems: Problem[]; evaluation?: undefined; waits?: undefined }
  /** It is a pairing as far as can be told before what works with glass is there. */
  | { waits: true; evaluation?: undefined; problems?: undefined };

/** A pairing from anywhere: worked out, or what is wrong with it. */
export function judge(candidate: unknown): Judgement {
  const parsed = pairingSchema.safeParse(candidate);
  if (!parsed.success) return { problems: problemsOf(parsed.error, candidate) };
  if (hasGlass(parsed.data) && !worksNow()) return { waits: true };
  try {
    return { evaluation: evaluate(parsed.data, worksNow()) };
  } catch (error) {
    if (error instanceof PairingError) return { problems: error.problems };
    throw error;
  }
}

/** Takes a new draft: the answer follows at once where there is one, a complaint only after a while. */
export function take(next: object, judged = judge(next)): void {
  clearTimeout(waiting);
  batch(() => {
    draft.value = next;
    awaited.value = judged.waits ? 'glass' : 'nothing';
    problems.value = firstOfEach(judged.problems ?? []);
    if (judged.evaluation) answered.value = judged.evaluation;
    told.value = told.value.flatMap((old) => problems.value.find((p) => p.path === old.path) ?? []);
  });
  if (judged.problems) waiting = setTimeout(tell, PATIENCE_MS);
  if (judged.waits) takeLater(next);
}

/** Takes a new draft only where it gives an answer: what is moved by hand stops at what cannot be. */
export function takeSound(next: object): void {
  const judged = judge(next);
  if (judged.evaluation) take(next, judged);
}

/** Takes the draft once more when what it waits for is there, unless another has taken its place. */
function takeLater(next: object): void {
  const stillStands = (): boolean => draft.peek() === next;
  fetchWorks().then(
    () => {
      if (stillStands()) take(next);
    },
    () => {
      if (stillStands()) awaited.value = 'in vain';
    },
  );
}

/** One complaint an input: a value out of bounds makes its ± wrong too, and that is no second error. */
export const firstOfEach = (found: readonly Problem[]): Problem[] =>
  found.filter((p, i) => found.findIndex((other) => inputPath(other.path) === inputPath(p.path)) === i);

/** Says now what is wrong. */
export function tell(): void {
  clearTimeout(waiting);
  told.value = problems.value;
}

/** Changes one value of the draft; undefined takes it out. */
export const edit = (path: string, value: unknown): void => take(withAt(draft.value, path, value));
