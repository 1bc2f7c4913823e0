import { openView } from './state/address.ts';
import { answered } from './state/draft.ts';
import { wholeLink } from './state/link.ts';
import { searchOf, VIEW_NAMES, VIEWS, view } from './state/view.ts';

/** The views, as links: each keeps the pairing. A plain click changes the view in place. */
export function Nav() {
  const pairing = wholeLink(answered.value.pairing);
  return (
    <nav class="views" aria-label="Views">
      <ul>
        {VIEWS.map((name) => (
          <li key={name}>
            <a
              href={`${location.pathname}${searchOf(name)}${pairing}`}
              aria-current={view.value === name ? 'page' : undefined}
              onClick={(event) => {
                if (event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
                event.preventDefault();
                openView(name);
              }}
            >
              {VIEW_NAMES[name]}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
