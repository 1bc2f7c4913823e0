import type { PartKind } from '../../core/index.ts';
import { catalogue } from '../state/catalogue.ts';
import { answered } from '../state/draft.ts';
import { keepOfPairing, putBack, saidOf, type TakenOut, takenOut, useInPairing } from './acts.ts';
import { engraved } from './called.ts';
import { idOfRow, idOfSlip } from './focus.ts';
import { fold, type Laid, laid, layOut } from './laid.ts';
import { PutIn } from './put-in.tsx';
import { laidOut, type Standing, standingIn } from './slip.ts';
import { SlipOf } from './slip-of.tsx';
import { firstWords, measuredIn, OF } from './told.ts';

const TITLES: Record<PartKind, string> = { objective: 'Objectives', relay: 'Relays', sensor: 'Cameras' };

/** The parts of one kind, line by line; under them what was taken out, what is new, and the way to put one in. */
export function KindList({ kind }: { kind: PartKind }) {
  const now = catalogue.value;
  const seen = typeof now === 'object' ? standingIn(now, kind) : [];
  // What was seen last may still have what has just been taken out, or again what was put back elsewhere.
  const isAgain = ({ standing: { id, version } }: TakenOut): boolean => seen.some((one) => one.id === id && one.version > version);
  const out = takenOut.value.filter((one) => one.standing.own.kind === kind && !isAgain(one));
  const lying = seen.filter(({ id }) => !out.some(({ standing }) => standing.id === id));
  const open = laid.value.filter((one) => one.kind === kind);
  const loose = open.filter(({ id }) => !lying.some((standing) => standing.id === id.value));
  const title = `${kind}s-of-own`;
  return (
    <section class="own" aria-labelledby={title}>
      <h2 id={title}>{TITLES[kind]}</h2>
      {lying.length > 0 && (
        <ul>
          {lying.map((standing) => (
            <Part key={standing.id} standing={standing} one={open.find(({ id }) => id.value === standing.id)} />
          ))}
        </ul>
      )}
      {out.map((one) => (
        <p class="taken-out" key={`${one.standing.id} ${one.standing.version}`}>
          <s>{one.standing.own.part.name}</s> is taken out.{' '}
          <button type="button" class="lead" id={idOfRow(one.standing.id)} onClick={() => putBack(one)}>
            Put back<span class="unseen"> {one.standing.own.part.name}</span>
          </button>
        </p>
      ))}
      <p role="status" class="said">
        {saidOf.value[kind]}
      </p>
      {loose.map((one) => (
        <div class="loose" key={one.key}>
          <SlipOf one={one} />
        </div>
      ))}
      <div class="ways-in">
        <PutIn kind={kind} />
        <p>
          <button type="button" class="lead" onClick={() => keepOfPairing(kind)}>
            Keep the {OF[kind]} of the pairing
          </button>{' '}
          <span class="hint">{answered.value.pairing[kind].name ?? engraved(kind, answered.value.pairing[kind])}</span>
        </p>
      </div>
    </section>
  );
}

/** One part as one printed line, and its slip under it where it lies open. */
function Part({ standing, one }: { standing: Standing; one: Laid | undefined }) {
  const { id, own } = standing;
  const { kind, part, owned, price, notes } = own;
  const open = one !== undefined && !one.folded.value;
  const measured = measuredIn(own);
  return (
    <li>
      <div class="printed">
        <button
          type="button"
          class="lead name"
          id={idOfRow(id)}
          aria-expanded={open}
          aria-controls={open ? idOfSlip(one.key) : undefined}
          onClick={() => (one ? fold(one) : layOut(laidOut(standing)))}
        >
          {part.name}
        </button>
        <span class="as-engraved">{engraved(kind, part)}</span>
        <span class="measured">{measured.length > 0 && `measured: ${measured.join('; ')}`}</span>
        <span class="whose">
          {owned ? 'owned' : <i>thought of</i>}
          {price !== undefined && `, price ${price}`}
        </span>
        <span class="note">{one?.folded.value ? 'what was typed is not kept yet' : notes && firstWords(notes)}</span>
        <button type="button" class="lead use" onClick={() => useInPairing(kind, part)}>
          Use<span class="unseen"> {part.name} in the pairing</span>
        </button>
      </div>
      {open && <SlipOf one={one} />}
    </li>
  );
}
