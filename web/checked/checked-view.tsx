import { useEffect, useMemo, useRef } from 'preact/hooks';
import { type Answers, checkedSays, type Entry, EXACT, type Summary, summaryOf, USUAL } from '../../core/checked.ts';
import { Indices } from './indices.tsx';
import { Progress } from './progress.tsx';
import { followChecks, run } from './run.ts';
import { StripPlate } from './strip-plate.tsx';
import { Check, SubjectFold } from './subject.tsx';
import '../styles/held-against.css';
import '../styles/checked-drawings.css';
import '../styles/checked.css';

/** Checked against: what others print, beside what comes out here and now. */
export function CheckedView() {
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    // Whoever comes from the foot goes on reading here.
    if (document.activeElement?.closest('.foot')) title.current?.focus();
    return followChecks();
  }, []);
  const now = run.value;
  const answers = now.state === 'done' ? now.answers : undefined;
  const summary = useMemo(() => answers && summaryOf(answers), [answers]);
  return (
    <>
      <section class="answer checked-head" aria-labelledby="checked-title">
        <h2 id="checked-title" ref={title} tabIndex={-1}>
          Checked against
        </h2>
        <div aria-live="polite">{summary && <Says summary={summary} />}</div>
        {now.state !== 'done' && <Progress now={now} />}
      </section>
      {answers && summary && <All answers={answers} summary={summary} />}
    </>
  );
}

function Says({ summary }: { summary: Summary }) {
  const [first, ...rest] = checkedSays(summary);
  return (
    <>
      <p class={summary.failing.length > 0 ? 'verdict fails' : 'verdict'}>{first}</p>
      {rest.map((text) => (
        <p key={text} class="sentence">
          <Indices text={text} />
        </p>
      ))}
    </>
  );
}

function All({ answers, summary: { failing } }: { answers: readonly Answers[]; summary: Summary }) {
  const folds = useRef<HTMLElement>(null);
  useEffect(() => {
    const openAll = (): void => unfold(folds.current);
    addEventListener('beforeprint', openAll);
    return () => removeEventListener('beforeprint', openAll);
  }, []);
  return (
    <>
      {failing.length > 0 && (
        <section aria-labelledby="checked-failing">
          <h2 id="checked-failing">What does not agree</h2>
          {onlyFailing(failing.map(({ entry }) => entry)).map((entry, i) => (
            <Check key={entry.id + entry.claim} entry={entry} headed={i === 0} />
          ))}
        </section>
      )}
      <StripPlate answers={answers} />
      <section class="checked-all" aria-labelledby="checked-all" ref={folds}>
        <h2 id="checked-all">One by one</h2>
        <p>
          Where nothing else is said a number may be off by {USUAL}. A law follows from plain geometry or a definition; it may be off by{' '}
          {EXACT}.{' '}
          <button type="button" class="lead" onClick={() => unfold(folds.current)}>
            Open all of them
          </button>
        </p>
        {answers.map((subject, i) => (
          <SubjectFold key={subject.title} subject={subject} open={i === 0} />
        ))}
      </section>
    </>
  );
}

function unfold(within: HTMLElement | null): void {
  for (const fold of within?.querySelectorAll('details') ?? []) fold.open = true;
}

/** Each check once, with those of its numbers that fail. */
const onlyFailing = (entries: readonly Entry[]): Entry[] =>
  [...new Set(entries)].map((entry) => ({ ...entry, values: entry.values.filter(({ holds }) => !holds) }));
