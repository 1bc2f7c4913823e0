import { useEffect } from 'preact/hooks';
import { answered } from '../state/draft.ts';
import { phone } from '../state/screen.ts';
import '../styles/table.css';
import { engraved } from '../abreast/named.ts';
import { Folded, unfold, useUnfoldedOnPaper } from './folded.tsx';
import { ELSEWHERE, SECTIONS, type Section } from './sections.ts';
import { SheetSection } from './sheet/section.tsx';
import { settings } from './tabled.ts';

/** The sheet takes from all the others. */
const ALL: readonly Section[] = [
  ...SECTIONS,
  { id: 'sheet', title: 'The sheet', Body: SheetSection, inBrief: () => 'All of it on one page of A4, to print or to save.' },
  ELSEWHERE,
];

/** On the table: from a pairing to the last frame, one thing after the other. */
export function TableView() {
  useEffect(() => settings.follow(), []);
  useUnfoldedOnPaper();
  return (
    <>
      <section class="table-head" aria-label="What lies on the table">
        <p class="parts-line">{engraved(answered.value.pairing).join(' · ')}</p>
        {settings.fault.value && (
          <p class="notice" role="alert">
            What this address sets on the table could not be read: {settings.fault.value}. Everything is taken as usual.
          </p>
        )}
        <nav class="table-contents" aria-label="What is done on the table">
          <ol>
            {ALL.map(({ id, title }) => (
              <li key={id}>
                <button type="button" class="lead" onClick={() => goTo(id)}>
                  {title}
                </button>
              </li>
            ))}
          </ol>
        </nav>
      </section>
      {ALL.map((section) => (
        <Part key={section.id} section={section} />
      ))}
    </>
  );
}

/** Short enough to stand whole on a phone, or where one begins. */
const NEVER_FOLDED: ReadonlySet<string> = new Set(['build', 'saw']);

function Part({ section: { id, title, Body, onSheet, inBrief = () => onSheet?.().says[0] } }: { section: Section }) {
  const whole = (
    <div class="table-part">
      <Body />
    </div>
  );
  return (
    <section class="table-section" aria-labelledby={`table-${id}`}>
      <h2 id={`table-${id}`} tabIndex={-1}>
        {title}
      </h2>
      {phone.value && !NEVER_FOLDED.has(id) ? (
        <Folded title={title} says={inBrief()}>
          {whole}
        </Folded>
      ) : (
        whole
      )}
    </section>
  );
}

/** The address belongs to the pairing, so that places on the page are gone to without it. */
function goTo(id: string): void {
  const title = document.getElementById(`table-${id}`);
  const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
  unfold(title?.parentElement);
  title?.scrollIntoView({ block: 'start', behavior: calm ? 'auto' : 'smooth' });
  title?.focus({ preventScroll: true });
}
