import { useState } from 'preact/hooks';
import { answered } from './state/draft.ts';
import { linkTo } from './state/link.ts';
import { searchOf, view } from './state/view.ts';

/** Puts the pairing's link on the clipboard; where the browser will not, shows it to be copied by hand. */
export function CopyLink() {
  const [said, setSaid] = useState('');
  const [shown, setShown] = useState('');
  const copy = async (): Promise<void> => {
    const link = `${location.origin}${location.pathname}${searchOf(view.value)}${linkTo(answered.value.pairing)}`;
    try {
      await navigator.clipboard.writeText(link);
      setShown('');
      setSaid('Copied.');
    } catch {
      setShown(link);
      setSaid('Copy it from here:');
    }
  };
  return (
    <div class="copy">
      <span role="status">{said}</span>
      {shown && (
        <input type="text" readOnly value={shown} aria-label="Link to this pairing" onFocus={(event) => event.currentTarget.select()} />
      )}
      <button type="button" class="plain" onClick={copy}>
        Copy link
      </button>
    </div>
  );
}
