import { useState } from 'preact/hooks';
import { openView } from './state/address.ts';
import { answered } from './state/draft.ts';
import { further, written } from './state/link.ts';

/** Lays the pairing beside others, or leads to where it lies. What lays it is fetched when it is asked for. */
export function Lay() {
  const { pairing } = answered.value;
  const text = written(pairing);
  const lies = further.value.split('.').includes(text);
  const [said, setSaid] = useState({ of: '', words: '' });
  const say = (words: string): void => setSaid({ of: text, words });
  const lay = (): void => {
    import('./state/abreast.ts').then(
      ({ layAbreast, saidOf }) => say(saidOf(layAbreast(pairing))),
      () => say('What lays it abreast could not be fetched: load the page again.'),
    );
  };
  return (
    <p class="lay">
      {lies ? (
        <button type="button" class="lead" onClick={() => openView('abreast')}>
          See it abreast
        </button>
      ) : (
        <button type="button" class="lead" onClick={lay}>
          Lay it abreast
        </button>
      )}{' '}
      <span role="status">{said.of === text && said.words}</span>
    </p>
  );
}
