import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Pairing } from '../../core/index.ts';
import { onClipboard } from '../share/share.tsx';
import { openView, settle } from '../state/address.ts';
import { linkTo } from '../state/link.ts';
import { inWords } from './parts-line.tsx';

/** What can be done with a pairing that is told: each one step. */
export function Ways({ pairing, children }: { pairing: Pairing; children?: ComponentChildren }) {
  const [said, setSaid] = useState('');
  const name = inWords(pairing);
  const link = `${location.origin}${location.pathname}${linkTo(pairing)}`;
  return (
    <p class="ways">
      <button type="button" class="lead" aria-label={`Open as the pairing: ${name}`} onClick={() => openAs(pairing)}>
        Open as the pairing
      </button>
      <button
        type="button"
        class="lead"
        aria-label={`Copy the link of ${name}`}
        onClick={async () => setSaid((await onClipboard(link)) ? 'Copied.' : link)}
      >
        Copy its link
      </button>
      {children}
      <span role="status" class="copied">
        {said}
      </span>
    </p>
  );
}

/** It becomes the pairing that all other views are about; the way back leads to this list. */
function openAs(pairing: Pairing): void {
  settle(pairing);
  openView('pairing');
}
