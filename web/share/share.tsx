import '../styles/share.css';
import { useEffect, useState } from 'preact/hooks';
import { Later } from '../later.tsx';
import { linkHere, onClipboard } from './copying.ts';

const keep = () => import('./keep.tsx').then((piece) => piece.Keep);

/** Copies the pairing's link, and opens the other ways to keep a pairing or to bring one back. */
export function Share() {
  const [said, setSaid] = useState('');
  const [shown, setShown] = useState('');
  const [open, setOpen] = useState(false);
  useEffect(() => takeDropped(() => setOpen(true)), []);
  const copy = async (): Promise<void> => {
    const link = linkHere();
    const copied = await onClipboard(link);
    setShown(copied ? '' : link);
    setSaid(copied ? 'Copied.' : 'Copy it from here:');
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
      <button type="button" class="plain" aria-expanded={open} aria-controls="keep" onClick={() => setOpen(!open)}>
        File
      </button>
      <div id="keep" class="keep" hidden={!open}>
        {open && <Later load={keep} what="What keeps a pairing" />}
      </div>
    </div>
  );
}

/** A file let fall anywhere on the page is opened, and not shown in the page's place. */
function takeDropped(show: () => void): () => void {
  const over = (event: DragEvent): void => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
  };
  const drop = (event: DragEvent): void => {
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    event.preventDefault();
    show();
    import('./open.ts').then(
      ({ openFile }) => openFile(file),
      () => {},
    );
  };
  addEventListener('dragover', over);
  addEventListener('drop', drop);
  return () => {
    removeEventListener('dragover', over);
    removeEventListener('drop', drop);
  };
}
