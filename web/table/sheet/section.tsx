import { computed, signal } from '@preact/signals';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { TABLE_GROUP_NAMES, tableCautions } from '../../../core/table.ts';
import { Typed } from '../../fields/typed.tsx';
import { linkHere } from '../../share/copying.ts';
import { saveFile } from '../../share/save-file.ts';
import { answered, report } from '../../state/draft.ts';
import '../../styles/sheet.css';
import { RigOnSheet } from '../build/rig-plate.tsx';
import { ELSEWHERE, SECTIONS } from '../sections.ts';
import { tabled } from '../tabled.ts';
import { sheetContents } from './contents.ts';
import { fitToPage } from './fit.ts';
import { KINDS, type Kind, sheetAs, sheetName } from './save.ts';
import { SheetPage } from './sheet-page.tsx';

/** What the person calls it. */
const title = signal('');

/** The day where the reader is, as ISO 8601 writes it. */
const today = (): string => {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
};

const contents = computed(() =>
  sheetContents({
    evaluation: answered.value,
    report: report.value,
    table: tabled.value,
    sections: [...SECTIONS, ELSEWHERE].flatMap(({ title, onSheet }) => (onSheet ? [{ title, taken: onSheet() }] : [])),
    cautions: TABLE_GROUP_NAMES.flatMap((group) => tableCautions(tabled.value, group)),
    title: title.value.trim(),
    on: today(),
    link: linkHere(),
  }),
);

const SAVE: Record<Kind, string> = { html: 'Save as a page', md: 'Save as text', json: 'Save as data' };

/** One page for the table: to print, or to keep. */
export function SheetSection() {
  const here = useRef<HTMLDivElement>(null);
  const [said, setSaid] = useState('');
  const now = contents.value;
  useLayoutEffect(() => {
    const sheet = here.current?.firstElementChild;
    if (now && sheet instanceof HTMLElement) fitToPage(sheet);
  }, [now]);
  const save = (kind: Kind): void => {
    const sheet = here.current?.firstElementChild;
    if (!sheet) return;
    const name = sheetName(answered.value, kind);
    saveFile(
      name,
      KINDS[kind],
      sheetAs(kind, { contents: contents.value, evaluation: answered.value, report: report.value, table: tabled.value, sheet }),
    );
    setSaid(`Saved as ${name}.`);
  };
  return (
    <>
      <div class="field sheet-title">
        <label for="sheet-title">What it is called</label>
        <Typed
          id="sheet-title"
          class="words"
          numeric={false}
          value={title.value}
          placeholder={contents.value.title}
          onType={(text) => {
            title.value = text;
          }}
          onDone={() => {}}
        />
      </div>
      <p class="choices sheet-ways">
        <button type="button" class="plain" onClick={printSheet}>
          Print the sheet
        </button>
        {(Object.keys(KINDS) as Kind[]).map((kind) => (
          <button key={kind} type="button" class="plain" onClick={() => save(kind)}>
            {SAVE[kind]}
          </button>
        ))}
        <span role="status">{said}</span>
      </p>
      <div ref={here}>
        <SheetPage contents={now} drawing={<RigOnSheet />} />
      </div>
    </>
  );
}

/** Prints the sheet alone; the browser's own print command prints the view. */
function printSheet(): void {
  const { dataset } = document.documentElement;
  dataset.print = 'sheet';
  addEventListener('afterprint', () => delete dataset.print, { once: true });
  print();
}
