import { briefOf } from '../core/index.ts';
import { Cautions } from './cautions.tsx';
import { Lead } from './fields/lead.tsx';
import { calledAt } from './fields/names.ts';
import { Lay } from './lay.tsx';
import { Rests } from './rests.tsx';
import { Brief, Spoken } from './spoken.tsx';
import { fault } from './state/address.ts';
import { answered, awaited, report, told } from './state/draft.ts';
import { complaint } from './state/words.ts';

/** The answer in words, what it rests on, and what to mind. */
export function Answer() {
  const { sentence, coverage, assumptions, cautions } = report.value;
  const stale = told.value.length > 0 || awaited.value !== 'nothing';
  return (
    <section class="answer" aria-label="The answer">
      {fault.value && (
        <p class="notice" role="alert">
          This link could not be shown: {fault.value.replace(/\.$/, '')}. What stands here is the opening example.
        </p>
      )}
      <p class={`verdict${stale ? ' stale' : ''}`}>{briefOf(answered.value, coverage)}.</p>
      <p class={`sentence${stale ? ' stale' : ''}`}>{sentence}</p>
      <Spoken text={sentence} />
      <Brief />
      <Awaited />
      <Broken />
      <Rests assumptions={assumptions} />
      <Lay />
      <Cautions lines={cautions} />
    </section>
  );
}

/** What is wrong with what stands in the fields. */
export function Broken() {
  if (told.value.length === 0) return null;
  return (
    <div class="notice" role="status">
      <p>This still answers what stood here before:</p>
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
