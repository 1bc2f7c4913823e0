import { useState } from 'preact/hooks';
import { answered, report } from '../state/draft.ts';
import { linkHere, onClipboard } from './copying.ts';
import { figuresAsText } from './figures-text.ts';
import { fileName, written } from './file.ts';
import { opened, openFile } from './open.ts';
import { PickFile } from './pick-file.tsx';
import { saveFile } from './save-file.ts';

/** The ways to keep a pairing beside its link, and to bring one back. */
export function Keep() {
  const [said, setSaid] = useState('');
  const [shown, setShown] = useState('');
  const say = (text: string): void => {
    opened.value = undefined;
    setSaid(text);
  };
  const copy = async (): Promise<void> => {
    const text = figuresAsText(answered.value, report.value, linkHere());
    const copied = await onClipboard(text);
    setShown(copied ? '' : text);
    say(copied ? 'The figures are copied.' : 'Copy them from here:');
  };
  const save = (): void => {
    const { pairing } = answered.value;
    saveFile(fileName(pairing), 'application/json', written(pairing, report.value));
    say(`Saved as ${fileName(pairing)}.`);
  };
  const file = opened.value;
  return (
    <>
      <p class="ways">
        <button type="button" class="lead" onClick={copy}>
          Copy the figures
        </button>
        <button type="button" class="lead" onClick={save}>
          Save
        </button>
        <PickFile
          words="Open"
          label="A pairing saved as a file"
          accept=".json,application/json"
          onPick={(chosen) => {
            setSaid('');
            return openFile(chosen);
          }}
        />
      </p>
      <p role="status">{file && !file.fault ? `Opened ${file.name}.` : said}</p>
      {file?.fault && (
        <p class="complaint" role="alert">
          {file.name} could not be opened: {file.fault}. What stood here stays.
        </p>
      )}
      {shown && (
        <textarea readOnly rows={6} value={shown} aria-label="The figures as text" onFocus={(event) => event.currentTarget.select()} />
      )}
    </>
  );
}
