import '../styles/offer.css';
import '../styles/lines.css';
import { useRef } from 'preact/hooks';
import type { Offer, Option } from './offer.ts';
import type { Popup } from './popup.tsx';

/** Lines of more letters are set smaller, so that they show whole. */
const LONG = 28;

interface Props {
  id: string;
  /** What it is called where no label stands beside it. */
  label?: string;
  example: string;
  text: string;
  wrong: boolean;
  /** Whether the list is asked for, and what is on it where what makes it is there. */
  open: boolean;
  offered: { offer: Offer; options: readonly Option[]; List: typeof Popup } | undefined;
  /** What the list and the button that opens it are called. */
  listed: string;
  opens: string;
  /** Said where nothing is on the list. */
  lacks: string;
  /** The place of the option that the arrows stand on, -1 for none. */
  active: number;
  /** `composing` while an input method has the text. */
  onText(text: string, composing: boolean): void;
  onArrow(by: 1 | -1, alt: boolean): void;
  onEnter(): void;
  /** @returns whether there was anything to give up */
  onEscape(): boolean;
  /** The cursor goes through the text. */
  onAlong(): void;
  onLeave(): void;
  /** The button beside the line. */
  onMarker(): void;
  onTake(option: Option): void;
}

/** A line to type in, with a list under it to take from: the focus stays in the line. */
export function Combobox(props: Props) {
  const { id, text, active, offered, onText } = props;
  const field = useRef<HTMLInputElement>(null);
  const listed = offered !== undefined && offered.options.length > 0;
  const press = (event: KeyboardEvent): void => {
    // Enter and arrows belong to the candidates of an input method while it composes.
    if (event.isComposing) return;
    const { key } = event;
    if (key === 'ArrowDown' || key === 'ArrowUp') {
      props.onArrow(key === 'ArrowDown' ? 1 : -1, event.altKey);
      event.preventDefault();
    } else if (key === 'Enter') props.onEnter();
    else if (key === 'Escape') {
      if (props.onEscape()) event.preventDefault();
    } else if (/^(Arrow|Home|End)/.test(key)) props.onAlong();
  };
  return (
    <div class="engraved">
      <input
        placeholder={`such as ${props.example}`}
        ref={field}
        id={id}
        class={text.length > LONG ? 'long' : ''}
        type="text"
        role="combobox"
        aria-label={props.label}
        aria-autocomplete="list"
        aria-expanded={listed}
        aria-controls={listed ? `${id}-list` : undefined}
        aria-activedescendant={listed && active >= 0 ? `${id}-list-${active}` : undefined}
        aria-invalid={props.wrong ? true : undefined}
        aria-describedby={`${id}-hint`}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        maxLength={160}
        value={text}
        onInput={({ currentTarget, isComposing }) => onText(currentTarget.value, isComposing)}
        onCompositionEnd={({ currentTarget }) => onText(currentTarget.value, false)}
        onKeyDown={press}
        onBlur={props.onLeave}
      />
      <button
        type="button"
        class="marker"
        tabIndex={-1}
        aria-label={props.opens}
        aria-expanded={props.open}
        onMouseDown={(event) => event.preventDefault()}
        onClick={() => {
          // Where there is no mouse the cursor would call up a keyboard over the list.
          if (matchMedia('(pointer: fine)').matches) field.current?.focus();
          props.onMarker();
        }}
      >
        <svg viewBox="0 0 14 14" aria-hidden="true">
          <path d="M2 5 7 10 12 5" />
        </svg>
      </button>
      {offered && (
        <offered.List
          id={`${id}-list`}
          label={props.listed}
          offer={offered.offer}
          active={active}
          lacks={props.lacks}
          onTake={props.onTake}
        />
      )}
    </div>
  );
}
