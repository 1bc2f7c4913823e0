import { type Assumption, nameOf, short } from '../core/index.ts';
import { Lead } from './fields/lead.tsx';
import { calledAt, fieldAt } from './fields/names.ts';
import { fault } from './state/address.ts';
import { awaited, report, told } from './state/draft.ts';
import { complaint } from './state/words.ts';

/** The answer in words, what it rests on, and what to mind. */
export function Answer() {
  const { sentence, assumptions, cautions } = report.value;
  const stale = told.value.length > 0 || awaited.value !== 'nothing';
  return (
    <section class="answer" aria-label="The answer">
      {fault.value && (
        <p class="notice" role="alert">
          This link could not be shown: {fault.value.replace(/\.$/, '')}. What stands here is the opening example.
        </p>
      )}
      <p class={`sentence${stale ? ' stale' : ''}`} aria-live="polite">
        {sentence}
      </p>
      <Awaited />
      <Broken />
      <Rests assumptions={assumptions} />
      {cautions.length > 0 && (
        <ul class="cautions">
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** What is wrong with what stands in the fields. */
export function Broken() {
  if (told.value.length === 0) return null;
  return (
    <div class="notice" role="status">
      <p>This is the answer as of before the error:</p>
      <ul>
        {told.value.map((problem) => (
          <li key={`${problem.path}${problem.code}`}>
            <Lead path={problem.path}>{calledAt(problem.path)}</Lead>: {complaint(problem)}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Said while the answer to a relay with glass is awaited, and when it cannot come. */
export function Awaited() {
  if (awaited.value === 'nothing') return null;
  return (
    <p class="notice" role="status">
      {awaited.value === 'glass'
        ? 'What traces the relay’s glass is being fetched: this is the answer as of before.'
        : 'What traces the relay’s glass could not be fetched: this is the answer as of before. Load the page again to try once more; what you put in stays.'}
    </p>
  );
}

const MATTERS = 0.001;
const MOST_NAMED = 3;

/** The guesses that the answer rests on, the weightiest first, each leading to its input. */
function Rests({ assumptions }: { assumptions: readonly Assumption[] }) {
  if (assumptions.length === 0) return <p class="rests">Rests on no guess: every number was marked or measured.</p>;
  const weighty = assumptions.filter((a) => a.matters >= MATTERS && fieldAt(a.path)).slice(0, MOST_NAMED);
  const n = assumptions.length;
  return (
    <p class="rests">
      Rests on {n === 1 ? 'one guess' : `${n} guesses`}
      {weighty.map((a, i) => (
        <span key={a.path}>
          {i === 0 ? '; ' : i === 1 ? ' matters most, then ' : ', then '}
          <Lead path={a.path}>{nameOf(a.path)}</Lead>
          {a.plusMinus > 0 && (
            <span class="guess">
              {' '}
              ({[`${short(a.value)} ± ${short(a.plusMinus, 2)}`, fieldAt(a.path)?.unit].filter(Boolean).join(' ')})
            </span>
          )}
        </span>
      ))}
      {weighty.length === 1 && n > 1 && ' matters most'}
      {weighty.length === 0 && (n === 1 ? ', which hardly moves the answer' : ', none of which moves the answer much')}.
    </p>
  );
}
