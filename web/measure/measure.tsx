import { type Assumption, earned, minutesFor, nameOf, short, swingOf } from '../../core/index.ts';
import { Lead } from '../fields/lead.tsx';
import { fieldAt } from '../fields/names.ts';
import { answered, report } from '../state/draft.ts';
import '../styles/measure.css';
import { howTo } from './how.ts';
import { swingInWords } from './words.ts';

/** Less than this, of 1, hardly moves the answer. */
const MATTERS = 0.001;

/** The guesses, the weightiest first: what each does to the answer, and how it is found out. */
export function Measure() {
  const { assumptions } = report.value;
  const weighty = assumptions.filter((a) => a.matters >= MATTERS);
  const light = assumptions.filter((a) => a.matters < MATTERS);
  const most = weighty[0]?.matters ?? 1;
  return (
    <div class="measure">
      <h2>What to measure first</h2>
      {weighty.length > 0 && <p class="key">The longer its line, the more a guess moves the answer.</p>}
      {weighty.length > 0 && (
        <ol>
          {weighty.map((a) => (
            <Guess key={a.path} guess={a} most={most} />
          ))}
        </ol>
      )}
      {light.length > 0 && (
        <p class="light">
          {weighty.length > 0 ? 'The rest hardly moves the answer' : 'None of these moves the answer much'}:{' '}
          {light.map((a, i) => (
            <span key={a.path}>
              {i === 0 ? '' : i === light.length - 1 ? ' and ' : ', '}
              <Lead path={a.path}>{nameOf(a.path)}</Lead> <Taken guess={a} />
            </span>
          ))}
          .
        </p>
      )}
    </div>
  );
}

/** @param most what the weightiest of them moves: its line is the whole length */
function Guess({ guess, most }: { guess: Assumption; most: number }) {
  const { path, why, matters } = guess;
  const swing = swingOf(answered.value, path);
  const how = howTo(path);
  return (
    <li>
      <div>
        <p class="what">
          {nameOf(path)}, <Taken guess={guess} />
        </p>
        <div class="weight" aria-hidden="true">
          <div style={{ width: `${Math.max(1, (100 * matters) / most)}%` }} />
        </div>
        {swing && <p>{swingInWords(swing, fieldAt(path)?.unit)}</p>}
        <p class="why">A guess: {why}.</p>
      </div>
      <div>
        {how && (
          <>
            <p>{how.how}</p>
            <p class="takes">
              Takes {how.takes}; about {minutesFor(path)}. <Lead path={path}>Put in what you find</Lead>
            </p>
          </>
        )}
      </div>
    </li>
  );
}

/** The value that is taken and its ±. */
function Taken({ guess: { path, value, plusMinus } }: { guess: Assumption }) {
  const number = plusMinus > 0 ? `${earned(value, value - plusMinus, value + plusMinus)} ± ${short(plusMinus, 2)}` : short(value);
  return <span class="guess">{[number, fieldAt(path)?.unit].filter(Boolean).join(' ')}</span>;
}
