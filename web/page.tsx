import { Later, whole } from './later.tsx';
import { Nav } from './nav.tsx';
import { PairingView } from './pairing-view.tsx';
import { Share } from './share/share.tsx';
import { arriving } from './state/address.ts';
import { told } from './state/draft.ts';
import { view } from './state/view.ts';

const glass = () => import('./glass/glass-view.tsx').then((piece) => piece.GlassView);
const abreast = () => import('./abreast/abreast-view.tsx').then((piece) => piece.AbreastView);
const table = () => import('./table/table-view.tsx').then((piece) => piece.TableView);
const drawer = () => import('./drawer/drawer-view.tsx').then((piece) => piece.DrawerView);
const subject = () => import('./subject/subject-view.tsx').then((piece) => piece.SubjectView);
const checked = () => import('./checked/checked-view.tsx').then((piece) => piece.CheckedView);
const foot = () => import('./foot.tsx').then((piece) => piece.Foot);
const LATER = { glass, subject, abreast, table, checked };

/** The head with the views, the view that is open, the foot. */
export function Page() {
  return (
    <>
      <header class="head">
        <h1>Pupilwalk</h1>
        <p>an objective, a relay, a camera, and what they do together</p>
        <Nav />
        <Share />
      </header>
      <main class={told.value.length > 0 ? 'before-error' : undefined}>
        {view.value === 'drawer' ? (
          <Later key="drawer" load={drawer} what="This view" last />
        ) : arriving.value !== 'no' ? (
          <Arriving />
        ) : view.value === 'pairing' ? (
          <PairingView />
        ) : (
          <Later key={view.value} load={LATER[view.value]} what="This view" last />
        )}
      </main>
      {whole.value && <Later load={foot} what="The foot of the page" />}
    </>
  );
}

/** In the place of a pairing whose glass cannot be traced yet. */
function Arriving() {
  return (
    <section class="answer" aria-label="The answer">
      <p class="sentence stale" aria-live="polite">
        {arriving.value === 'fetching'
          ? 'This relay comes with its glass: what traces it is being fetched.'
          : 'This relay comes with its glass, and what traces it could not be fetched. Load the page again to try once more; the link stays as it is.'}
      </p>
    </section>
  );
}
