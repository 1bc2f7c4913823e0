import { useState } from 'preact/hooks';
import type { Want } from '../../core/choosing.ts';
import { Cautions } from '../cautions.tsx';
import { asksOf } from './blanks.ts';
import type { Miss } from './choose-task.ts';
import { type Entry, spacingsOf } from './entries.ts';
import { LimitTable } from './limit-table.tsx';
import { inWords, PartsLine } from './parts-line.tsx';
import { missSaid, priceSaid, wouldSaid } from './told.ts';
import { Ways } from './ways.tsx';
import { OtherRelays } from './window-of.tsx';

const FIRST = 5;

/** What comes near, each with what it misses and by how much. */
export function Almost({ misses, want }: { misses: readonly Entry<Miss>[]; want: Want }) {
  const [more, setMore] = useState(false);
  if (misses.length === 0) return null;
  return (
    <section aria-labelledby="almost-title">
      <h2 id="almost-title">Almost</h2>
      <ul class="chosen-list">
        {misses.slice(0, more ? undefined : FIRST).map((entry, place) => (
          <Missed key={entry.key} entry={entry} place={place + 1} want={want} />
        ))}
      </ul>
      {!more && misses.length > FIRST && (
        <p class="choices more">
          <button type="button" class="plain" onClick={() => setMore(true)}>
            Show {misses.length - FIRST} more
          </button>
        </p>
      )}
    </section>
  );
}

function Missed({ entry, place, want }: { entry: Entry<Miss>; place: number; want: Want }) {
  const { head } = entry;
  const would = wouldSaid(head);
  return (
    <li class="chosen missed">
      <div>
        <PartsLine pairing={head.pairing} at={spacingsOf(entry)} />
        <p class="why">
          {missSaid(head.missing)} {would} {priceSaid(head)}
        </p>
        <Cautions lines={head.cautions} />
        <Ways pairing={head.pairing} />
        <details class="fold">
          <summary>How each wish fares</summary>
          <LimitTable limits={head.limits.filter(asksOf)} title={`How each wish fares with ${inWords(head.pairing)}`} />
        </details>
        <OtherRelays pairing={head.pairing} want={want} id={`almost-${place}`} />
      </div>
    </li>
  );
}
