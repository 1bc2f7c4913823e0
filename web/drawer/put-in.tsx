import { useEffect, useRef, useState } from 'preact/hooks';
import '../styles/lines.css';
import type { PartKind } from '../../core/index.ts';
import { fetchPiece, piece } from '../lines/later-piece.ts';
import type { Option } from '../lines/piece.ts';
import { stepTo } from '../lines/step.ts';
import { catalogue } from '../state/catalogue.ts';
import { engraved, LINES } from './called.ts';
import { bringTo } from './focus.ts';
import { layOut } from './laid.ts';
import { fresh } from './slip.ts';
import { OF } from './told.ts';

/** Nothing stood there before. */
const BLANK = { part: {}, line: '' };

/** A line to type a new part as it is engraved, or to take one from the catalogue and change it. */
export function PutIn({ kind }: { kind: PartKind }) {
  const [text, setText] = useState('');
  const [open, setOpen] = useState(false);
  const [active, setActive] = useState(-1);
  const [said, setSaid] = useState('');
  const field = useRef<HTMLInputElement>(null);
  useEffect(fetchPiece, []);

  const id = `put-in-${kind}`;
  const { example } = LINES[kind];
  const there = typeof piece.value === 'object' ? piece.value : undefined;
  const understood = text && there ? there.understood(kind, text, BLANK) : undefined;
  const now = catalogue.value;
  const parts = typeof now === 'object' ? now[LINES[kind].shelf].filter(({ own }) => own === undefined) : [];
  const offer =
    open && there
      ? there.offerFor({
          typed: text || undefined,
          reading: understood?.reading,
          parts,
          present: {},
          engraved: (part) => engraved(kind, part),
        })
      : undefined;
  const options = offer && there ? there.optionsIn(offer) : [];

  const close = (): void => {
    setOpen(false);
    setActive(-1);
  };
  const begin = (part: object, words: string): void => {
    const name = (part as { name?: string }).name ?? text.trim();
    const one = layOut(fresh(kind, { ...structuredClone(part), name: name || engraved(kind, part) }), words);
    setText('');
    setSaid('');
    close();
    bringTo(one.key, `/${kind}/name`);
  };
  const take = (option: Option): void => {
    if (option.part) begin(option.part, `As in the catalogue: put in what yours says or what you measured, then keep it.`);
    else if (option.text !== undefined) setText(option.text);
  };
  const settle = (): void => {
    if (!text) setSaid('Type what is engraved on it first, or take one from the list.');
    else if (understood?.part) begin(understood.part, 'As you typed it: add what you know, then keep it.');
    else setSaid(understood?.complaint ?? 'What reads this line is still to be fetched.');
  };
  const press = (event: KeyboardEvent): void => {
    if (event.isComposing) return;
    const { key } = event;
    if (key === 'ArrowDown' || key === 'ArrowUp') {
      event.preventDefault();
      if (open) setActive(stepTo(active, key === 'ArrowDown' ? 1 : -1, options.length));
      else setOpen(true);
    } else if (key === 'Enter') {
      const option = options[active];
      if (option) take(option);
      else settle();
    } else if (key === 'Escape' && open) {
      event.preventDefault();
      close();
    } else if (/^(Arrow|Home|End)/.test(key)) setActive(-1);
  };
  const listed = options.length > 0;
  return (
    <div class="put-in">
      <label for={id}>
        Put in {kind === 'objective' ? 'an' : 'a'} {OF[kind]}, as it is engraved or by the catalogue’s name
      </label>
      <div class="typed">
        <div class="engraved">
          <input
            ref={field}
            id={id}
            type="text"
            role="combobox"
            placeholder={`such as ${example}`}
            aria-autocomplete="list"
            aria-expanded={listed}
            aria-controls={listed ? `${id}-list` : undefined}
            aria-activedescendant={listed && active >= 0 ? `${id}-list-${active}` : undefined}
            aria-invalid={said ? true : undefined}
            aria-describedby={`${id}-hint`}
            autocomplete="off"
            autocapitalize="off"
            spellcheck={false}
            maxLength={160}
            value={text}
            onInput={({ currentTarget }) => {
              setText(currentTarget.value);
              setSaid('');
              setOpen(true);
              setActive(-1);
            }}
            onKeyDown={press}
            onBlur={close}
          />
          <button
            type="button"
            class="marker"
            tabIndex={-1}
            aria-label={`${LINES[kind].title}s of the catalogue`}
            aria-expanded={open}
            onMouseDown={(event) => event.preventDefault()}
            onClick={() => {
              if (matchMedia('(pointer: fine)').matches) field.current?.focus();
              if (open) close();
              else setOpen(true);
            }}
          >
            <svg viewBox="0 0 14 14" aria-hidden="true">
              <path d="M2 5 7 10 12 5" />
            </svg>
          </button>
          {offer && there && (
            <there.Popup
              id={`${id}-list`}
              label={`${LINES[kind].title}s of the catalogue`}
              offer={offer}
              active={active}
              lacks={
                typeof now === 'object' ? 'Nothing in the catalogue is called so.' : 'The catalogue did not answer: type what is engraved.'
              }
              onTake={take}
            />
          )}
        </div>
        <button type="button" class="plain" onClick={settle}>
          Put in<span class="unseen"> the {OF[kind]} that was typed</span>
        </button>
      </div>
      <p class={said ? 'complaint' : 'hint'} id={`${id}-hint`}>
        {said}
      </p>
    </div>
  );
}
