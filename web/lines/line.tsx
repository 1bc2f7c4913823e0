import { useEffect, useRef, useState } from 'preact/hooks';
import { commit, settle } from '../state/address.ts';
import { catalogue } from '../state/catalogue.ts';
import { draft, take } from '../state/draft.ts';
import { withAt } from '../state/json.ts';
import { Combobox } from './combobox.tsx';
import { type Kind, lineOf, partIn } from './kinds.ts';
import { fetchPiece, piece } from './later-piece.ts';
import type { Ground, Option } from './piece.ts';
import { stepTo } from './step.ts';

/** How long half-typed text is left in peace, ms. */
const PATIENCE_MS = 800;

/** One part as it is engraved: typed in place, or taken from the list under it; every number of it in a fold. */
export function Line({ kind }: { kind: Kind }) {
  const [line, setLine] = useState<{ text: string; part: string } | undefined>(undefined);
  const [said, setSaid] = useState('');
  const [open, setOpen] = useState<'no' | 'fitting' | 'all'>('no');
  const [active, setActive] = useState(-1);
  const ground = useRef<Ground>({ part: {}, line: '' });
  const waiting = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const root = useRef<HTMLElement>(null);
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
  const list = offer && there ? { offer, options: there.optionsIn(offer), List: there.Popup } : undefined;
  const options = list?.options ?? [];

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
    if (document.activeElement?.id !== id) leave();
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

  const { name } = partIn(kind) as { name?: unknown };
  return (
    <>
      <section class="line" aria-labelledby={`part-${kind.name}`} ref={root}>
        <h2 id={`part-${kind.name}`}>{kind.title}</h2>
        <Combobox
          id={id}
          label={`${kind.title}, as engraved`}
          example={kind.example}
          text={typed ?? lineOf(kind)}
          wrong={wrong !== ''}
          open={open !== 'no'}
          offered={list}
          listed={`${kind.title}s`}
          opens={`${kind.title}s to pick from`}
          lacks={unreachable ? LACKS.unreachable : catalogue.value === 'asking' ? LACKS.asking : LACKS.none}
          active={active}
          onText={(text, composing) => (composing ? keep : type)(text)}
          onArrow={(by, alt) => {
            if (!alt) move(by);
            else if (by < 0) close();
            else show('fitting');
          }}
          onEnter={() => {
            const option = options[active];
            if (option) choose(option);
            else leave();
          }}
          onEscape={() => {
            const some = open !== 'no' || typed !== undefined;
            if (some) giveUp();
            return some;
          }}
          onAlong={() => setActive(-1)}
          onLeave={leave}
          onMarker={() => (open === 'no' ? show('all') : close())}
          onTake={choose}
        />
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
