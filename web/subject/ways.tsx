import { useState } from 'preact/hooks';
import type { Pairing } from '../../core/index.ts';
import { onClipboard } from '../share/copying.ts';
import { layAbreast, saidOf } from '../state/abreast.ts';
import { openView, settle } from '../state/address.ts';
import { further, linkTo, written } from '../state/link.ts';
import { fetchWorks, hasGlass, worksNow } from '../state/works.ts';
import { inWords } from './parts-line.tsx';

/** What can be done with a pairing that is told: each one step. */
export function Ways({ pairing }: { pairing: Pairing }) {
  const [said, setSaid] = useState('');
  const name = inWords(pairing);
  const link = `${location.origin}${location.pathname}${linkTo(pairing)}`;
  const lies = further.value.split('.').includes(written(pairing));
  return (
    <p class="ways">
      <button type="button" class="lead" aria-label={`Open as the pairing: ${name}`} onClick={() => openAs(pairing)}>
        Open as the pairing
      </button>
      {lies ? (
        <button type="button" class="lead" aria-label={`See it abreast: ${name}`} onClick={() => openView('abreast')}>
          See it abreast
        </button>
      ) : (
        <button type="button" class="lead" aria-label={`Lay it abreast: ${name}`} onClick={() => setSaid(saidOf(layAbreast(pairing)))}>
          Lay it abreast
        </button>
      )}
      <button
        type="button"
        class="lead"
        aria-label={`Copy its link: ${name}`}
        onClick={async () => setSaid((await onClipboard(link)) ? 'Copied.' : link)}
      >
        Copy its link
      </button>
      <span role="status" class="copied">
        {said}
      </span>
    </p>
  );
}

/** It becomes the pairing that all other views are about; the way back leads to this list. */
async function openAs(pairing: Pairing): Promise<void> {
  // What traces its glass is fetched first, so that it is one step: without it the view says what it waits for.
  if (hasGlass(pairing) && !worksNow()) await fetchWorks().catch(() => undefined);
  settle(pairing);
  openView('pairing');
}
