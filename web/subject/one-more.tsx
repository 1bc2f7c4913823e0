import { useState } from 'preact/hooks';
import type { Opening } from '../../core/choosing.ts';
import { type Objective, type Relay, short } from '../../core/index.ts';
import { Cautions } from '../cautions.tsx';
import { engravedObjective, engravedRelay } from '../fields/engrave.ts';
import { openView } from '../state/address.ts';
import { question } from './asked.ts';
import { spaceOf } from './entries.ts';
import { counted, lookFor, ownedSaid, shiftsSaid } from './one-more-words.ts';
import { openings } from './search.ts';
import { Ways } from './ways.tsx';

const FIRST = 4;

/** What one part more would open, with what is owned: what it gains and loses, and what to look at when it arrives. */
export function OneMoreOpens() {
  const [more, setMore] = useState(false);
  const now = question.value;
  const found = openings.value;
  if (typeof now === 'string') return null;
  const told = found?.openings.slice(0, more ? undefined : FIRST) ?? [];
  return (
    <section aria-labelledby="more-title">
      <h2 id="more-title">What one more part would open</h2>
      {now.more === undefined ? (
        <p class="owning">
          Nothing is marked as owned yet. Say in{' '}
          <button type="button" class="lead" onClick={() => openView('drawer')}>
            the drawer
          </button>{' '}
          which parts are yours, and here stands what each part that you do not own would add to them.
        </p>
      ) : (
        <p class="owning" aria-live="polite">
          {found ? ownedSaid(found) : 'Each part that is not yours is being tried with those that are.'}
        </p>
      )}
      <ul class="chosen-list">
        {told.map((opening) => (
          <Opens key={opening.id ?? JSON.stringify(opening.part)} opening={opening} owning={found?.owned.best !== undefined} />
        ))}
      </ul>
      {found && !more && found.openings.length > FIRST && (
        <p class="choices more">
          <button type="button" class="plain" onClick={() => setMore(true)}>
            Show {found.openings.length - FIRST} more
          </button>
        </p>
      )}
    </section>
  );
}

const engraved = ({ kind, part }: Opening): string =>
  kind === 'objective' ? engravedObjective(part as Objective) : engravedRelay(part as Relay);

function Opens({ opening, owning }: { opening: Opening; owning: boolean }) {
  const { kind, part, price, opens, best, gains, loses, verify } = opening;
  const other = kind === 'objective' ? best.pairing.relay : best.pairing.objective;
  const beside = other.name ?? (kind === 'objective' ? engravedRelay(best.pairing.relay) : engravedObjective(best.pairing.objective));
  return (
    <li class="chosen missed">
      <div>
        <h3>{part.name ?? engraved(opening)}</h3>
        <p class="parts-line">To look for: {[engraved(opening), ...lookFor(opening)].join('; ')}</p>
        <p class="why">
          Opens {counted(opens, 'pairing')}, first of them with {beside}, yours, at {short(spaceOf(best), 4)} mm.{' '}
          {gains.length > 0 && `Gains: ${shiftsSaid(gains)}. `}
          {loses.length > 0 && `Loses: ${shiftsSaid(loses)}. `}
          {owning && gains.length + loses.length === 0 && 'Against the best of what you own nothing is surely better or worse. '}
          {price === undefined ? 'Its price is not known.' : `${short(price, 6)} to pay.`}
        </p>
        <Ways pairing={best.pairing} />
        <details class="fold">
          <summary>When it arrives</summary>
          <Cautions lines={verify} />
        </details>
      </div>
    </li>
  );
}
