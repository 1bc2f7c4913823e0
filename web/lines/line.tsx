import { useEffect, useRef, useState } from 'preact/hooks';
import '../styles/lines.css';
import { commit, settle } from '../state/address.ts';
import { catalogue } from '../state/catalogue.ts';
import { draft, take } from '../state/draft.ts';
import { withAt } from '../state/json.ts';
import { type Kind, lineOf, partIn } from './kinds.ts';
import { fetchPiece, piece } from './later-piece.ts';
import type { Ground, Option } from './piece.ts';
import { stepTo } from './step.ts';

/** How long half-typed text is left in peace, ms. */
const PATIENCE_MS = 800;

/** Lines of more letters are set smaller, so that they show whole. */
const LONG = 28;

/** One part as it is engraved: typed in place, or taken from the list under it; every number of it in a fold. */
export function Line({ kind }: { kind: Kind }) {
  const [line, setLine] = useState<{ text: string; part: string } | undefined>(undefined);
  const [said, setSaid] = useState('');
  const [open, setOpen] = useState<'no' | 'fitting' | 'all'>('no');
  const [active, setActive] = useState(-1);
  const ground = useRef<Ground>({ part: {}, line: '' });
  const waiting = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const root = useRef<HTMLElement>(null);
  const field = useRef<HTMLInputElement>(null);
  useEffect(fetchPiece, []);

  const id = `engraved-${kind.name}`;
  // What was typed stands as long as the part is what it made of it: a pick or a changed field ends it.
  const typed = line?.part === JSON.stringify(partIn(kind)) ? line.text : undefined;
  const wrong = typed === undefined ? '' : said;
  const there = typeof piece.value === 'object' ? piece.value : undefined;
  const unreachable = catalogue.value === 'unreachable';
  const understand = (text: string) => there?.understood(kind.name, text, ground.current);
  const offered = (how: 'fitting' | 'all') =>
    there?.offerFor({
      typed: how === 'all' ? undefined : typed,
      reading: typed ? understand(typed)?.reading : undefined,
      parts: typeof catalogue.value === 'string' ? [] : catalogue.value[kind.shelf],
      present: partIn(kind),
      engraved: kind.engraved,
    });
  const offer = open === 'no' ? undefined : offered(open);
  const options = offer && there ? there.optionsIn(offer) : [];

  const place = (part: object): object => withAt(draft.value, `/${kind.name}`, part);
  const close = (): void => {
    setOpen('no');
    setActive(-1);
  };
  /** The text as it stands, without a look at what it means. */
  const keep = (text: string): void => {
    if (typed === undefined) ground.current = { part: partIn(kind), line: lineOf(kind) };
    setLine({ text, part: JSON.stringify(partIn(kind)) });
  };
  /** Whether the text makes a part: the answer follows at once, a complaint only after a while. */
  const type = (text: string): boolean => {
    keep(text);
    clearTimeout(waiting.current);
    const { part, complaint } = understand(text) ?? UNHEARD;
    if (part) take(place(part));
    setLine({ text, part: JSON.stringify(partIn(kind)) });
    setOpen('fitting');
    setActive(-1);
    if (complaint === '') setSaid('');
    else waiting.current = setTimeout(() => setSaid(complaint), PATIENCE_MS);
    return part !== undefined;
  };
  const leave = (): void => {
    clearTimeout(waiting.current);
    const complaint = typed === undefined ? '' : (understand(typed) ?? UNHEARD).complaint;
    setSaid(complaint);
    if (complaint === '') setLine(undefined);
    close();
    commit();
  };
  useEffect(() => {
    // Whoever was faster than what reads the line is heard now.
    if (!there || typed === undefined) return;
    type(typed);
    if (document.activeElement !== field.current) leave();
  }, [there]);
  const giveUp = (): void => {
    clearTimeout(waiting.current);
    if (typed !== undefined) take(place(ground.current.part));
    setLine(undefined);
    close();
  };
  const choose = ({ part, text }: Option): void => {
    if (text !== undefined && !type(text)) return;
    if (part) settle(place(structuredClone(part)));
    clearTimeout(waiting.current);
    setLine(undefined);
    close();
    commit();
  };
  const show = (how: 'fitting' | 'all'): void => {
    fetchPiece();
    setOpen(how);
  };
  const move = (by: 1 | -1): void => {
    if (open !== 'no') {
      setActive(stepTo(active, by, options.length));
      return;
    }
    show('fitting');
    const all = offered('fitting');
    const now = all && there ? there.optionsIn(all) : [];
    setActive(
      now.length === 0
        ? -1
        : by < 0
          ? now.length - 1
          : Math.max(
              0,
              now.findIndex((option) => option.present),
            ),
    );
  };
  const press = (event: KeyboardEvent): void => {
    // Enter and arrows belong to the candidates of an input method while it composes.
    if (event.isComposing) return;
    const { key } = event;
    if (key === 'ArrowDown' || key === 'ArrowUp') {
      if (event.altKey && key === 'ArrowUp') close();
      else if (event.altKey) show('fitting');
      else move(key === 'ArrowDown' ? 1 : -1);
      event.preventDefault();
    } else if (key === 'Enter') {
      const option = options[active];
      if (option) choose(option);
      else leave();
    } else if (key === 'Escape' && (open !== 'no' || typed !== undefined)) {
      giveUp();
      event.preventDefault();
    } else if (/^(Arrow|Home|End)/.test(key)) setActive(-1);
  };
  const outside = useRef(leave);
  outside.current = leave;
  useEffect(() => {
    if (open === 'no') return undefined;
    const pressed = (event: PointerEvent): void => {
      if (!root.current?.contains(event.target as Node)) outside.current();
    };
    addEventListener('pointerdown', pressed);
    return () => removeEventListener('pointerdown', pressed);
  }, [open]);

  const text = typed ?? lineOf(kind);
  const listed = options.length > 0;
  const { name } = partIn(kind) as { name?: unknown };
  return (
    <>
      <section class="line" aria-labelledby={`part-${kind.name}`} ref={root}>
        <h2 id={`part-${kind.name}`}>{kind.title}</h2>
        <div class="engraved">
          <input
            placeholder={`such as ${kind.example}`}
            ref={field}
            id={id}
            class={text.length > LONG ? 'long' : ''}
            type="text"
            role="combobox"
            aria-label={`${kind.title}, as engraved`}
            aria-autocomplete="list"
            aria-expanded={listed}
            aria-controls={listed ? `${id}-list` : undefined}
            aria-activedescendant={listed && active >= 0 ? `${id}-list-${active}` : undefined}
            aria-invalid={wrong ? true : undefined}
            aria-describedby={`${id}-hint`}
            autocomplete="off"
            autocapitalize="off"
            spellcheck={false}
            maxLength={160}
            value={text}
            onInput={(event) => (event.isComposing ? keep : type)(event.currentTarget.value)}
            onCompositionEnd={({ currentTarget }) => type(currentTarget.value)}
            onKeyDown={press}
            onBlur={leave}
          />
          <button
            type="button"
            class="marker"
            tabIndex={-1}
            aria-label={`${kind.title}s to pick from`}
            aria-expanded={open !== 'no'}
            onMouseDown={(event) => event.preventDefault()}
            onClick={() => {
              // Where there is no mouse the cursor would call up a keyboard over the list.
              if (matchMedia('(pointer: fine)').matches) field.current?.focus();
              if (open === 'no') show('all');
              else close();
            }}
          >
            <svg viewBox="0 0 14 14" aria-hidden="true">
              <path d="M2 5 7 10 12 5" />
            </svg>
          </button>
          {offer && there && (
            <there.Popup
              id={`${id}-list`}
              label={`${kind.title}s`}
              offer={offer}
              active={active}
              lacks={unreachable ? LACKS.unreachable : catalogue.value === 'asking' ? LACKS.asking : LACKS.none}
              onTake={choose}
            />
          )}
        </div>
        <p class={wrong ? 'complaint' : 'hint'} id={`${id}-hint`}>
          {wrong || (unreachable ? LACKS.unreachable : typeof name === 'string' && name ? name : 'your own')}
        </p>
      </section>
      <details class="numbers">
        <summary>
          every number<span class="unseen"> of the {kind.title.toLowerCase()}</span>
        </summary>
        {there ? (
          <there.Numbers of={kind.name} />
        ) : (
          piece.value === 'missing' && <p class="hint">Could not be fetched: load the page again.</p>
        )}
      </details>
    </>
  );
}

const LACKS = {
  unreachable: 'The catalogue did not answer: type what is engraved.',
  asking: 'The catalogue is being asked.',
  none: 'Nothing in the catalogue is called so.',
};

/** While what reads a line is not there. */
const UNHEARD = { part: undefined, complaint: 'What reads this line is still to be fetched. If it does not come, load the page again.' };
