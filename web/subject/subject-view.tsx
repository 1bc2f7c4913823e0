import { useEffect, useState } from 'preact/hooks';
import '../styles/found.css';
import '../styles/subject.css';
import { SORTS } from '../state/wish.ts';
import { choose, followWish, wish } from '../state/wishing.ts';
import { Answer } from './answer.tsx';
import { asksOf } from './blanks.ts';
import { entriesOf, levelOf } from './entries.ts';
import { Listed } from './listed.tsx';
import { Almost } from './missed.tsx';
import { OneMoreOpens } from './one-more.tsx';
import { Traded } from './scatter-plate.tsx';
import { followSearch, result, search } from './search.ts';
import { figureName, figuresFor } from './told.ts';
import { Wished } from './wished.tsx';

/** From the subject: a wish, the pairings that give it and why, what comes near, what is given up for what. */
export function SubjectView() {
  useEffect(() => {
    const ends = [followWish(), followSearch()];
    return () => {
      for (const end of ends) end();
    };
  }, []);
  return (
    <>
      <Wished />
      <Answer />
      <Results />
    </>
  );
}

/** So many entries are read at one go. */
const FIRST = 12;

function Results() {
  const [pointed, setPointed] = useState<number | undefined>(undefined);
  const [more, setMore] = useState(false);
  // Its room is kept, so that what stands below is not pushed down when it comes.
  if (!result.value) return search.value.state === 'running' ? <div class="found-waits" /> : null;
  const { asked, found } = result.value;
  const entries = entriesOf(found.choices);
  const misses = entriesOf(found.nearMisses);
  const limits = (found.choices[0]?.limits ?? []).filter(asksOf);
  const figures = figuresFor(limits, asked.sort.by, asked.frontier);
  const stale = search.value.state !== 'done';
  return (
    <div class={stale ? 'found stale' : 'found'} aria-busy={stale}>
      {entries.length > 0 && (
        <section aria-labelledby="list-title">
          <div class="headed">
            <h2 id="list-title">What gives it</h2>
            <Sorting />
          </div>
          <ol class="chosen-list">
            {entries.slice(0, more ? undefined : FIRST).map((entry, place) => (
              <Listed
                key={entry.key}
                entry={entry}
                place={place}
                level={levelOf(found.choices, entries, entry)}
                figures={figures}
                by={asked.sort.by}
                axes={asked.frontier.length}
                want={asked.want}
                onPoint={setPointed}
              />
            ))}
          </ol>
          {!more && entries.length > FIRST && (
            <p class="choices more">
              <button type="button" class="plain" onClick={() => setMore(true)}>
                {entries.length - FIRST === 1 ? 'Show one more' : `Show ${entries.length - FIRST} more`}
              </button>
            </p>
          )}
        </section>
      )}
      {entries.length > 0 && (
        <Traded choices={found.choices} entries={entries} axes={asked.frontier} frontier={found.frontier} pointed={pointed} />
      )}
      <Almost misses={misses} want={asked.want} />
      <OneMoreOpens />
    </div>
  );
}

/** By what the list is sorted, and which end comes first. */
function Sorting() {
  const { by, first } = wish.value.sort;
  return (
    <p class="sorting">
      <label>
        sorted by{' '}
        <select
          value={by}
          onChange={({ currentTarget: { value } }) => {
            const picked = SORTS.find((id) => id === value);
            if (picked) choose({ sort: { by: picked, first } });
          }}
        >
          {SORTS.map((id) => (
            <option key={id} value={id}>
              {figureName(id)}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span class="unseen">which end comes first</span>
        <select
          value={first}
          onChange={({ currentTarget: { value } }) => choose({ sort: { by, first: value === 'greatest' ? 'greatest' : 'least' } })}
        >
          <option value="least">least first</option>
          <option value="greatest">greatest first</option>
        </select>
      </label>
    </p>
  );
}
