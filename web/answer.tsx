import { type Assumption, nameOf, short } from '../core/index.ts';
import { Lead } from './fields/lead.tsx';
import { calledAt, fieldAt } from './fields/names.ts';
import { fault } from './state/address.ts';
import { report, told } from './state/draft.ts';
import { complaint } from './state/words.ts';

/** The answer in words, what it rests on, and what to mind. */
export function Answer() {
  const { sentence, assumptions, cautions } = report.value;
  const wrong = told.value;
  return (
    <section class="answer" aria-label="The answer">
      {fault.value && (
        <p class="notice" role="alert">
          This link could not be shown: {fault.value.replace(/\.$/, '')}. What stands here is the opening example.
        </p>
      )}
      <p class={`sentence${wrong.length > 0 ? ' stale' : ''}`} aria-live="polite">
        {sentence}
      </p>
      {wrong.length > 0 && (
        <div class="notice" role="status">
          <p>This is the answer as of before the error:</p>
          <ul>
            {wrong.map((problem) => (
              <li key={`${problem.path}${problem.code}`}>
                <Lead path={problem.path}>{calledAt(problem.path)}</Lead>: {complaint(problem)}
              </li>
            ))}
          </ul>
        </div>
      )}
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
