import { earned, nameOf, short } from '../../core/index.ts';
import { Awaited, Broken } from '../answer.tsx';
import { Lead } from '../fields/lead.tsx';
import { answered, awaited, told } from '../state/draft.ts';
import { adviceNow } from './advice-now.ts';
import { again, cancel, hasClass, type Search, search } from './search.ts';
import '../styles/progress.css';

const PUPIL = '/objective/exitPupilFromShoulderMm';

/** What to do with the glass, in words; how far the search for it has come. */
export function Says() {
  const now = search.value;
  const stale = told.value.length > 0 || awaited.value !== 'nothing';
  const said = sentenceOf(now);
  return (
    <section class="answer" aria-label="The answer">
      <p class={`sentence alone${stale || now?.state !== 'done' ? ' stale' : ''}`} aria-live="polite">
        <Told text={said} />
      </p>
      {now?.state === 'running' && <Progress done={now.done} of={now.of} what={now.what} />}
      {(now?.state === 'stopped' || now?.state === 'failed') && (
        <p class="choices">
          <button type="button" class="plain" onClick={again}>
            Search once more
          </button>
        </p>
      )}
      <Awaited />
      {now?.state === 'done' && <Rests />}
      <Broken />
    </section>
  );
}

function sentenceOf(now: Search | undefined): string {
  const evaluation = answered.value;
  if (!evaluation.pairing.relay.glass && !hasClass(evaluation))
    return 'The glass of this relay is not known: told surface by surface, it is traced, and its best place and way round are looked for.';
  switch (now?.state) {
    case undefined:
    case 'running':
      return evaluation.pairing.relay.glass
        ? 'Both ways round are being tried, place by place.'
        : 'Its glass is not known: lenses of its class are being tried, both ways round, place by place.';
    case 'done':
      return (adviceNow.value ?? now.found.band)?.sentence ?? '';
    case 'stopped':
      return 'The search was stopped before it knew which way round and which place is best.';
    case 'failed':
      return `The search could not be worked out: ${now.why}.`;
    case 'impossible':
      return 'This browser does not run the search in the background, so the best place is not looked for. How the glass stands now is worked out all the same.';
  }
}

function Progress({ done, of, what }: { done: number; of: number; what: string }) {
  return (
    <div class="progress">
      <progress max={of} value={done} aria-label={`${what} tried`} />
      <span>
        {done} of {of} {what}
      </span>
      <button type="button" class="plain" onClick={cancel}>
        Stop the search
      </button>
    </div>
  );
}

/** The best place is counted from the exit pupil, and that is hardly ever known. */
function Rests() {
  const pupil = answered.value.inputs.find((input) => input.path === PUPIL);
  if (pupil?.origin !== 'assumed' || pupil.plusMinus === 0) return null;
  return (
    <p class="rests">
      Rests on <Lead path={PUPIL}>{nameOf(PUPIL)}</Lead>{' '}
      <span class="guess">
        ({earned(pupil.value, pupil.value - pupil.plusMinus, pupil.value + pupil.plusMinus)} ± {short(pupil.plusMinus, 2)} mm)
      </span>
      .
    </p>
  );
}

/** The answer itself large; what goes with it, from the second sentence on, smaller. */
function Told({ text }: { text: string }) {
  const [, first = text, rest = ''] = text.match(/^(.+?\.) (?=\p{Lu})(.*)$/su) ?? [];
  return (
    <>
      {first}
      {rest && <span class="rest"> {rest}</span>}
    </>
  );
}
