import type { PartKind } from '../../core/index.ts';
import '../styles/ways-in.css';
import '../styles/drawer.css';
import { catalogue } from '../state/catalogue.ts';
import { FileOf } from './file-of.tsx';
import { KindList } from './kind-list.tsx';
import { standingIn } from './slip.ts';
import { counted } from './told.ts';

const KINDS: readonly PartKind[] = ['objective', 'relay', 'sensor'];

/** The user's own objectives, relays and cameras: a printed list, and the slip of each part in it. */
export function DrawerView() {
  return (
    <>
      <Says />
      {KINDS.map((kind) => (
        <KindList key={kind} kind={kind} />
      ))}
      <FileOf />
    </>
  );
}

/** What lies in the drawer, what it is for while nothing does, and what is wrong with it. */
function Says() {
  const now = catalogue.value;
  if (now === 'asking') return <Line>The drawer is being opened.</Line>;
  if (now === 'unreachable')
    return (
      <Line>
        The server does not answer, and the drawer is with it.
        <Rest>What you write here stays on the page until it does: keep it then.</Rest>
      </Line>
    );
  const { drawer, last } = now;
  const own = KINDS.flatMap((kind) => standingIn(now, kind));
  return (
    <section class="answer drawer-says" aria-label="The drawer">
      {drawer?.state === 'refused' && (
        <p class="notice" role="alert">
          The drawer is left alone: its file {drawer.file} {drawer.why}. Nothing is read from it and nothing written over it. Put it right
          or move it elsewhere; the catalogue works without it.
        </p>
      )}
      {own.length > 0 ? (
        <p class="verdict">{counted(own.map((standing) => standing.own))}.</p>
      ) : (
        drawer?.state !== 'refused' && (
          <p class="verdict">
            The drawer holds the objectives, relays and cameras that you own or think of, with what you measured beside what is engraved.
            Every view can then work with them, and the lines to pick from list them first.
            {drawer && <Rest>It is one file on the computer that the page comes from: {drawer.file}</Rest>}
          </p>
        )
      )}
      {last && (
        <p class="notice" role="status">
          The server does not answer: this is the drawer as it was last seen. What you write here stays on the page until it does.
        </p>
      )}
    </section>
  );
}

const Line = ({ children }: { children: preact.ComponentChildren }) => (
  <section class="answer drawer-says" aria-label="The drawer">
    <p class="verdict" aria-live="polite">
      {children}
    </p>
  </section>
);
const Rest = ({ children }: { children: preact.ComponentChildren }) => <span class="rest"> {children}</span>;
