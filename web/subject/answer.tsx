import { limitsOf, MOST_CONSIDERED, nameOfLimit } from '../../core/choosing.ts';
import { capital } from '../../core/index.ts';
import '../styles/progress.css';
import { openView } from '../state/address.ts';
import { wantThat } from '../state/wishing.ts';
import { type Lack, question } from './asked.ts';
import { asksOf } from './blanks.ts';
import { entriesOf, spacesOf } from './entries.ts';
import { excluding, loosened, looserSaid, loosers } from './loosen.ts';
import { inWords } from './parts-line.tsx';
import { again, cancel, result, search } from './search.ts';
import { answerOf, countsOf } from './told.ts';

/** How many pairings give the wish, what stops the rest, how far the search has come. */
export function Answer() {
  const lack = question.value;
  const now = search.value;
  const stale = now.state !== 'done';
  return (
    <section class="answer" aria-label="The answer">
      <p class={`sentence alone${stale ? ' stale' : ''}`} aria-live="polite">
        {typeof lack === 'string' ? LACKS[lack] : sentence()}
      </p>
      {(lack === 'no objective' || lack === 'no relay') && (
        <p>
          What you own stands in{' '}
          <button type="button" class="lead" onClick={() => openView('drawer')}>
            the drawer
          </button>
          : put a part in, and say that it is yours.
        </p>
      )}
      {/* One in the place of the other, so that the list below keeps still. */}
      <div class={stale ? 'tally stale' : 'tally'}>{now.state === 'running' && now.long ? <Progress {...now} /> : <Counted />}</div>
      {(now.state === 'stopped' || now.state === 'failed') && (
        <p class="choices">
          <button type="button" class="plain" onClick={again}>
            Search once more
          </button>
        </p>
      )}
      <Loosen />
    </section>
  );
}

const LACKS: Readonly<Record<Lack, string>> = {
  asking: 'The catalogue is being fetched.',
  unreachable:
    'The catalogue cannot be reached, so there is nothing to choose from: load the page again, or choose from the parts of the pairing.',
  'no objective': 'Nothing to choose from: no objective is marked as owned.',
  'no relay': 'Nothing to choose from: no relay is marked as owned.',
  'too many': `These parts make more than ${MOST_CONSIDERED} pairings: choose from what you own, or fewer infinity spaces.`,
};

function sentence(): string {
  const now = search.value;
  if (now.state === 'stopped')
    return `The search was stopped before it knew.${result.value ? ' What stands below is of the wish before.' : ''}`;
  if (now.state === 'failed') return `The search could not be worked out: ${now.why}.`;
  if (now.state === 'impossible') return 'This browser does not run the search in the background, so nothing can be told here.';
  if (!result.value) return 'The pairings are being tried.';
  const { asked, found } = result.value;
  return answerOf(found, limitsOf(asked.want).filter(asksOf).length + (asked.want.maxPrice === undefined ? 0 : 1));
}

function Progress({ done, of, told }: { done: number; of: number; told: number }) {
  return (
    <div class="progress">
      <progress max={of} value={done} aria-label="pairings tried" />
      <span>{done < of ? `${done} of ${of} pairings tried` : `all ${of} pairings tried, ${told} worked out whole`}</span>
      <button type="button" class="plain" onClick={cancel}>
        Stop the search
      </button>
    </div>
  );
}

function Counted() {
  if (!result.value) return null;
  const { found } = result.value;
  const entries = entriesOf(found.choices);
  const counts = countsOf(
    found,
    entries.length,
    entries.reduce((sum, entry) => sum + spacesOf(entry).length, 0),
  );
  return counts ? <p class="rests">{counts}</p> : null;
}

/** Where nothing gives the wish: what excludes what, and what to loosen first. */
function Loosen() {
  if (!result.value || result.value.found.feasible > 0) return null;
  const { asked, found } = result.value;
  const misses = entriesOf(found.nearMisses);
  const ways = loosers(misses);
  return (
    <div class="loosen">
      <p>{excluding(misses)}</p>
      {ways.length > 0 && (
        <ul>
          {ways.map((way) => {
            const next = loosened(asked.want, way);
            return (
              <li key={way.limit.name}>
                {capital(nameOfLimit(way.limit.name))}:{' '}
                {next ? (
                  <button type="button" class="lead" onClick={() => wantThat(next)}>
                    ask for {looserSaid(way)}
                  </button>
                ) : (
                  looserSaid(way)
                )}
                , then {inWords(way.entry.head.pairing)} gives it.
              </li>
            );
          })}
        </ul>
      )}
    </div>
  );
}
