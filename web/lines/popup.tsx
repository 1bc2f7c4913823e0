import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { type Offer, type Option, optionsIn } from './offer.ts';

interface Props {
  id: string;
  label: string;
  offer: Offer;
  /** The place of the option that the arrows stand on, -1 for none. */
  active: number;
  /** Said where there is no list. */
  lacks: string;
  onTake(option: Option): void;
}

const ROOM_ENOUGH = 260;
const MARGIN = 10;

/** What is offered beside a line, under it or over it, wherever the window has room. */
export function Popup({ id, label, offer, active, lacks, onTake }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState<{ above: boolean; room: number } | undefined>(undefined);
  useLayoutEffect(() => {
    const line = box.current?.parentElement?.getBoundingClientRect();
    if (!line) return;
    const high = visualViewport?.height ?? innerHeight;
    const below = high - line.bottom - MARGIN;
    const over = line.top - MARGIN;
    const above = below < ROOM_ENOUGH && over > below;
    setPlace({ above, room: Math.max(ROOM_ENOUGH / 2, above ? over : below) });
  }, []);
  const first = active < 0 ? optionsIn(offer).findIndex((option) => option.present) : active;
  useLayoutEffect(() => {
    const list = document.getElementById(id);
    const at = document.getElementById(`${id}-${first}`);
    if (!place || !list || !at) return;
    // Only the list scrolls, not the page; a group's heading stays over it.
    const top = at.offsetTop - (active < 0 ? list.clientHeight / 3 : 34);
    const bottom = at.offsetTop + at.offsetHeight - list.clientHeight + 4;
    list.scrollTop = active < 0 ? top : Math.min(Math.max(list.scrollTop, bottom), Math.max(0, top));
  }, [id, first, active, place]);
  let count = 0;
  return (
    // Pressing here must not take the cursor out of the line.
    // biome-ignore lint/a11y/noStaticElementInteractions: what can be pressed is the options
    <div
      class={`offer${place?.above ? ' above' : ''}`}
      ref={box}
      style={{ maxHeight: `${Math.min(place?.room ?? 0, 480)}px` }}
      onMouseDown={(event) => event.preventDefault()}
    >
      {offer.read && (
        <p class="read">
          <i>read as:</i> {offer.read}
        </p>
      )}
      {offer.groups.length === 0 ? (
        <p class="read">{lacks}</p>
      ) : (
        <div role="listbox" id={id} aria-label={label}>
          {offer.groups.map((group, g) => (
            // biome-ignore lint/a11y/useSemanticElements: a listbox's group is no fieldset
            <div role="group" aria-labelledby={`${id}-group-${g}`} class={group.asks ? 'asks' : ''} key={group.label}>
              <p id={`${id}-group-${g}`} role="presentation">
                {group.label}
              </p>
              {group.options.map((option) => {
                const at = count++;
                return <One key={option.id} id={`${id}-${at}`} option={option} active={at === active} onTake={onTake} />;
              })}
            </div>
          ))}
        </div>
      )}
    </div>
  );
}

function One({ id, option, active, onTake }: { id: string; option: Option; active: boolean; onTake(option: Option): void }) {
  return (
    // The keys are the line's, which the cursor never leaves.
    // biome-ignore lint/a11y/useKeyWithClickEvents lint/a11y/useFocusableInteractive: a combobox keeps the focus
    <div role="option" id={id} class={active ? 'active' : ''} aria-selected={option.present} onClick={() => onTake(option)}>
      <span>{option.words}</span>
      {option.small && <small>{option.small}</small>}
    </div>
  );
}
