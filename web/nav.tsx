import { openView } from './state/address.ts';
import { answered } from './state/draft.ts';
import { wholeLink } from './state/link.ts';
import { searchOf, VIEW_NAMES, VIEWS, type View, view } from './state/view.ts';

/** The views in the head. */
const HEAD = VIEWS.slice(0, -1);

/** The views, as links: each keeps the pairing. */
export const Nav = () => (
  <nav class="views" aria-label="Views">
    <ul>
      {HEAD.map((name) => (
        <li key={name}>
          <ViewLink name={name} />
        </li>
      ))}
    </ul>
  </nav>
);

/** A view as a link. A plain click changes the view in place. */
export const ViewLink = ({ name }: { name: View }) => (
  <a
    href={`${location.pathname}${searchOf(name)}${wholeLink(answered.value.pairing)}`}
    aria-current={view.value === name ? 'page' : undefined}
    onClick={(event) => {
      if (event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
      event.preventDefault();
      openView(name);
    }}
  >
    {VIEW_NAMES[name]}
  </a>
);
