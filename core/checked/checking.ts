import type { Check, Known, Law, OnTable, ToldId } from './check.ts';
import { type Judged, judge, judging } from './judge.ts';
import { SOURCES } from './sources.ts';
import { LAWS, SUBJECTS, type Subject } from './subjects.ts';

/** One of a check's numbers, and where its figure can be looked at. */
export interface Answered extends Judged {
  readonly figure?: ToldId;
  readonly rig?: () => OnTable;
}

/** A check or a law, worked out. */
export interface Entry {
  /** A check's id; '' of a law. */
  readonly id: string;
  readonly claim: string;
  /** Where the numbers come from, in neutral words. */
  readonly source: string;
  readonly known: Known | 'by definition';
  readonly how: string;
  readonly values: readonly Answered[];
}

export interface Answers {
  readonly title: string;
  /** True of what a source prints, false of laws. */
  readonly published: boolean;
  readonly entries: readonly Entry[];
}

export interface Progress {
  readonly done: number;
  readonly of: number;
}

const LAWS_TITLE = 'Laws that hold exactly';
const LAW_SOURCE = 'plain geometry or a definition';

const askedOf = (subjects: readonly Subject[], laws: readonly Law[]): number =>
  laws.length + subjects.reduce((sum, { checks }) => checks.reduce((n, { values }) => n + values.length, sum), 0);

/** All that is to be worked out: printed numbers, and laws of several pairs each. */
export const asked = (): number => askedOf(SUBJECTS, LAWS);

/**
 * Works out every check, one step after the other: whoever runs it may stop between two steps. What goes
 * wrong is in the answers and not thrown.
 */
export function* checking(subjects: readonly Subject[] = SUBJECTS, laws: readonly Law[] = LAWS): Generator<Progress, readonly Answers[]> {
  const of = askedOf(subjects, laws);
  let done = 0;
  const told: Answers[] = [];
  for (const { title, checks } of subjects) {
    const entries: Entry[] = [];
    for (const check of checks) {
      const values: Answered[] = [];
      for (const value of check.values) {
        const { figure, rig } = value;
        values.push({ ...judge(value), ...(figure ? { figure } : {}), ...(rig ? { rig } : {}) });
        yield { done: ++done, of };
      }
      entries.push(entryOf(check, values));
    }
    told.push({ title, published: true, entries });
  }
  const entries: Entry[] = [];
  for (const law of laws) {
    const values: Answered[] = [];
    for (const value of judging(law)) {
      values.push(value);
      yield { done, of };
    }
    done++;
    entries.push({ id: '', claim: law.law, source: LAW_SOURCE, known: 'by definition', how: '', values });
  }
  return [...told, { title: LAWS_TITLE, published: false, entries }];
}

const entryOf = ({ id, claim, source, known, how }: Check, values: readonly Answered[]): Entry => ({
  id,
  claim,
  source: SOURCES[source],
  known,
  how,
  values,
});
