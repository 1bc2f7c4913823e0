import { listed } from '../../core/index.ts';
import { PickFile } from '../share/pick-file.tsx';
import { catalogue } from '../state/catalogue.ts';
import { type Came, opened, openParts, replaceFromLast } from './file.ts';
import { sayingAt } from './told.ts';

/** Lines of a file that are told one by one. */
const MOST_TOLD = 40;

/** Where the drawer lies, how it is carried elsewhere, and what came of a file. */
export function FileOf() {
  const now = catalogue.value;
  const drawer = typeof now === 'object' ? now.drawer : undefined;
  return (
    <section class="drawer-file" aria-labelledby="drawer-file">
      <h2 id="drawer-file">Its file</h2>
      {drawer && (
        <p>
          The drawer is one file that you can read and copy: <span class="path-of">{drawer.file}</span>
        </p>
      )}
      <p class="ways">
        {drawer?.state === 'open' && (
          <>
            <a class="lead" href="/api/parts/drawer.json" download="drawer.json">
              Save as JSON
            </a>
            <a class="lead" href="/api/parts/drawer.csv" download="drawer.csv">
              Save as a table, CSV
            </a>
          </>
        )}
        <PickFile
          words="Open a file of parts"
          label="A file of parts, JSON or CSV"
          accept=".json,.csv,application/json,text/csv"
          onPick={openParts}
        />
      </p>
      <div role="status">
        <WhatCame />
      </div>
    </section>
  );
}

function WhatCame() {
  const file = opened.value;
  if (!file) return null;
  if (file.state === 'reading') return <p>{file.name} is being read.</p>;
  if (file.state === 'fault')
    return (
      <p class="complaint">
        {file.name} could not be opened: {file.why}. The drawer is as it was.
      </p>
    );
  const { came, name, table } = file;
  const differ = came.refused.filter(({ problems }) => problems.some(({ code }) => code === 'idTaken'));
  const bad = came.refused.filter((row) => !differ.includes(row));
  return (
    <>
      <p>
        {name}: {cameInWords(came)}.
      </p>
      {differ.length > 0 && (
        <p class="differ">
          {differ.length === 1 ? 'One part lies' : `${differ.length} parts lie`} here with other contents and{' '}
          {differ.length === 1 ? 'stays' : 'stay'} as {differ.length === 1 ? 'it is' : 'they are'}:{' '}
          {listed(differ.slice(0, 5).map(({ id, line }) => `‘${id ?? line}’`))}
          {differ.length > 5 && ' and so on'}.{' '}
          <button type="button" class="lead" onClick={replaceFromLast}>
            Put the file’s in {differ.length === 1 ? 'its' : 'their'} place
          </button>
        </p>
      )}
      {bad.length > 0 && (
        <ul class="lines-told">
          {bad.slice(0, MOST_TOLD).map(({ line, problems }) => (
            <li key={line}>
              {table ? 'Line' : 'Part'} {line}: {problems.map(sayingAt).join(' ')}
            </li>
          ))}
          {bad.length > MOST_TOLD && <li>and {bad.length - MOST_TOLD} more.</li>}
        </ul>
      )}
    </>
  );
}

function cameInWords({ added, replaced, unchanged, refused }: Came): string {
  const told = [
    ...(added > 0 ? [`${added} put in`] : []),
    ...(replaced > 0 ? [`${replaced} in place of what lay here`] : []),
    ...(unchanged > 0 ? [`${unchanged} already here just the same`] : []),
    ...(refused.length > 0 ? [`${refused.length} left out`] : []),
  ];
  return told.length > 0 ? listed(told) : 'no part in it';
}
