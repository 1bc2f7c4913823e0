import { useState } from 'preact/hooks';
import { letter, type Pairing } from '../../core/index.ts';
import { onClipboard } from '../share/copying.ts';
import { takeAway } from '../state/abreast.ts';
import { openView, settle } from '../state/address.ts';
import { linkTo } from '../state/link.ts';
import { type Compared, compared, faults, question, sentences, upToDate } from './compared.ts';
import { engraved } from './named.ts';

/** What lies abreast, each with its letter, its parts and what it is best and worst at; and what could not be read. */
export function Entries() {
  const bad = faults.value;
  const sound = question.value.laid.filter(({ place }) => bad.every((fault) => fault.place !== place));
  return (
    <>
      {bad.length > 0 && (
        <ul class="notice" role="alert">
          {bad.map(({ place, fault }) => (
            <li key={place}>
              What lies at place {place + 1} could not be shown: {fault}.{' '}
              <button type="button" class="lead" onClick={() => away(place)}>
                Take it away
              </button>
              .
            </li>
          ))}
        </ul>
      )}
      <ol class="entries">
        {sound.map(({ pairing, place }, i) => (
          <Entry
            key={place}
            name={letter(i)}
            pairing={pairing}
            place={place}
            worked={upToDate.value ? compared.value[i] : undefined}
            sentence={sound.length < 2 ? '' : upToDate.value ? sentences.value?.[i] : undefined}
          />
        ))}
      </ol>
    </>
  );
}

interface Props {
  name: string;
  pairing: Pairing;
  place: number;
  worked: Compared | undefined;
  /** Undefined while it is being worked out. */
  sentence: string | undefined;
}

function Entry({ name, pairing, place, worked, sentence }: Props) {
  const [copied, setCopied] = useState('');
  const link = `${location.origin}${location.pathname}${linkTo(pairing)}`;
  return (
    <li class="entry" data-entry={name}>
      <h2>{name}</h2>
      <div>
        <p class="parts-line">{engraved(pairing, worked).join(' · ')}</p>
        <p class={sentence === undefined ? 'says stale' : 'says'}>{sentence ?? 'Being compared.'}</p>
        <p class="ways">
          <button type="button" class="lead" aria-label={`Make ${name} the pairing`} onClick={() => make(pairing)}>
            Make it the pairing
          </button>
          <button
            type="button"
            class="lead"
            aria-label={`Copy the link of ${name}`}
            onClick={async () => setCopied((await onClipboard(link)) ? 'Copied.' : link)}
          >
            Copy its link
          </button>
          <button type="button" class="lead" aria-label={`Take ${name} away`} onClick={() => away(place)}>
            Take away
          </button>
          <span role="status" class="copied">
            {copied}
          </span>
        </p>
      </div>
    </li>
  );
}

/** What had the focus goes with it: that passes to what lays another. */
function away(place: number): void {
  takeAway(place);
  requestAnimationFrame(() => document.querySelector<HTMLElement>('.lay-here button')?.focus());
}

/** What lies here becomes the pairing that all other views are about. */
function make(pairing: Pairing): void {
  settle(pairing);
  openView('pairing');
}
