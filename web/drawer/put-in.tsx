import { useEffect, useState } from 'preact/hooks';
import type { PartKind } from '../../core/index.ts';
import { Combobox } from '../lines/combobox.tsx';
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
  useEffect(fetchPiece, []);

  const id = `put-in-${kind}`;
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
  const list = offer && there ? { offer, options: there.optionsIn(offer), List: there.Popup } : undefined;
  const options = list?.options ?? [];

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
  return (
    <div class="put-in">
      <label for={id}>
        Put in {kind === 'objective' ? 'an' : 'a'} {OF[kind]}, as it is engraved or by the catalogue’s name
      </label>
      <div class="typed">
        <Combobox
          id={id}
          example={LINES[kind].example}
          text={text}
          wrong={said !== ''}
          open={open}
          offered={list}
          listed={`${LINES[kind].title}s of the catalogue`}
          opens={`${LINES[kind].title}s of the catalogue`}
          lacks={
            typeof now === 'object' ? 'Nothing in the catalogue is called so.' : 'The catalogue did not answer: type what is engraved.'
          }
          active={active}
          onText={(typed) => {
            setText(typed);
            setSaid('');
            setOpen(true);
            setActive(-1);
          }}
          onArrow={(by) => (open ? setActive(stepTo(active, by, options.length)) : setOpen(true))}
          onEnter={() => {
            const option = options[active];
            if (option) take(option);
            else settle();
          }}
          onEscape={() => {
            if (open) close();
            return open;
          }}
          onAlong={() => setActive(-1)}
          onLeave={close}
          onMarker={() => (open ? close() : setOpen(true))}
          onTake={take}
        />
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
