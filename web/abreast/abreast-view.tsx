import { computed } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import { MOST_ABREAST } from '../../core/index.ts';
import { Curve } from '../charts/curve.tsx';
import { abreast, layAbreast, saidOf, tooMany } from '../state/abreast.ts';
import { fault } from '../state/address.ts';
import { answered } from '../state/draft.ts';
import '../styles/fields-abreast.css';
import '../styles/abreast-table.css';
import '../styles/abreast.css';
import { compared, failed, followAbreast, rows, underWay, upToDate } from './compared.ts';
import { contrastAbreast, lightAbreast } from './curves.ts';
import { Depth } from './depth.tsx';
import { Entries } from './entries.tsx';
import { FieldsPlate } from './fields-plate.tsx';
import { FigureTable } from './figure-table.tsx';
import { How } from './how.tsx';
import { engraved } from './named.ts';
import '../styles/progress.css';

const light = computed(() => lightAbreast(compared.value));
const contrast = computed(() => contrastAbreast(compared.value));

/** The view of pairings side by side: what each is best and worst at, drawings, the table, how it was compared. */
export function AbreastView() {
  useEffect(() => followAbreast(), []);
  const all = compared.value;
  const stale = !upToDate.value;
  return (
    <>
      <section class="answer" aria-label="What each is best and worst at">
        {fault.value && (
          <p class="notice" role="alert">
            This link’s own pairing could not be shown: {fault.value.replace(/\.$/, '')}. What is laid abreast is not touched by that.
          </p>
        )}
        <Few />
        <Entries />
        <Progress />
        <LayHere />
      </section>
      {all.length > 1 && (
        <>
          <section class={stale ? 'following' : undefined} aria-labelledby="seen-title" aria-busy={stale}>
            <h2 id="seen-title">What each sees, and how well</h2>
            <FieldsPlate all={all} />
            <div class="abreast-charts">
              <Over id="abreast-light" now={light.value} title="The same light in numbers" />
              <Over id="abreast-contrast" now={contrast.value} title="The same contrast in numbers" />
            </div>
          </section>
          <section class={stale ? 'following' : undefined} aria-labelledby="table-title" aria-busy={stale}>
            <h2 id="table-title">In figures</h2>
            <Depth />
            <FigureTable all={all} rows={rows.value} />
          </section>
          <How />
        </>
      )}
    </>
  );
}

function Over({ id, now, title }: { id: string; now: ReturnType<typeof lightAbreast>; title: string }) {
  return <Curve id={id} says={now.says} drawing={now.drawing} table={{ title, columns: now.columns, rows: now.rows }} />;
}

/** Said while there is nothing to compare yet. */
function Few() {
  const count = abreast.value.length;
  if (tooMany.value > 0)
    return (
      <p class="notice" role="status">
        The link holds {tooMany.value} more than the {MOST_ABREAST} that can lie abreast: those are left out.
      </p>
    );
  if (count > 1) return null;
  return (
    <p class="sentence">
      {count === 0
        ? 'Nothing lies abreast yet. Lay the present pairing here, change a part or a distance of it, and lay it once more: from two on they are compared.'
        : 'One lies here. Change a part or a distance of the present pairing and lay it beside this one: from two on they are compared.'}
    </p>
  );
}

/** Shorter waits than this are not worth a word, ms. */
const PATIENCE_MS = 700;

function Progress() {
  const busy = underWay.value !== undefined;
  const [long, setLong] = useState(false);
  useEffect(() => {
    setLong(false);
    if (!busy) return;
    const soon = setTimeout(() => setLong(true), PATIENCE_MS);
    return () => clearTimeout(soon);
  }, [busy]);
  if (failed.value)
    return (
      <p class="notice" role="alert">
        They could not be compared: {failed.value}. Load the page again to try once more; the link stays as it is.
      </p>
    );
  const now = underWay.value;
  if (!long || !now) return null;
  return (
    <p class="progress" role="status">
      <progress value={now.done} max={now.of} aria-label="How far the comparison is" />
      {now.done} of {now.of} worked out: each pairing, then each pair. Relays with glass are traced anew for every doubt.
    </p>
  );
}

/** Lays the pairing that the other views are about. */
function LayHere() {
  const [said, setSaid] = useState('');
  const full = abreast.value.length >= MOST_ABREAST;
  return (
    <p class="lay-here">
      <button
        type="button"
        class="plain"
        disabled={full}
        onClick={() => {
          const place = layAbreast(answered.peek().pairing);
          setSaid(saidOf(place));
        }}
      >
        Lay the present pairing here
      </button>
      <span class="parts-line">{engraved(answered.value.pairing).join(' · ')}</span>
      <span role="status">{full ? `${MOST_ABREAST} lie here, and there is room for no more: take one away first.` : said}</span>
    </p>
  );
}
