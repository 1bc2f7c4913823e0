import { useRef, useState } from 'preact/hooks';
import { type Objective, type Reading, type Relay, readObjective, readRelay, readSensor, type Sensor } from '../../core/index.ts';
import { commit, settle } from '../state/address.ts';
import { type Catalogue, catalogue, type Listed } from '../state/catalogue.ts';
import { answered, draft, take } from '../state/draft.ts';
import { withAt } from '../state/json.ts';
import { view } from '../state/view.ts';
import { engravedObjective, engravedRelay, engravedSensor, impliedBy, retyped } from './engrave.ts';
import { Input } from './input.tsx';
import { Lead } from './lead.tsx';
import { type Field, OBJECTIVE, RELAY, SENSOR } from './names.ts';
import { type Named, Pick } from './pick.tsx';

interface Kind {
  name: 'objective' | 'relay' | 'sensor';
  title: string;
  example: string;
  shelf: keyof Catalogue;
  fields: readonly Field[];
  read(text: string): Reading<unknown>;
  engraved(part: never): string;
}

export const PARTS: readonly Kind[] = [
  {
    name: 'objective',
    title: 'Objective',
    example: '10x/0.25 ∞/0.17 200',
    shelf: 'objectives',
    fields: OBJECTIVE,
    read: readObjective,
    engraved: (part: Objective) => engravedObjective(part),
  },
  {
    name: 'relay',
    title: 'Relay',
    example: '5 D 58 mm, or 200 mm f/4',
    shelf: 'relays',
    fields: RELAY,
    read: readRelay,
    engraved: (part: Relay) => engravedRelay(part, impliedBy(answered.value).focalLengthMm),
  },
  {
    name: 'sensor',
    title: 'Camera',
    example: '36 x 24 4.35',
    shelf: 'sensors',
    fields: SENSOR,
    read: readSensor,
    engraved: (part: Sensor) => engravedSensor(part),
  },
];

/** One part: picked, or typed as it is engraved, and every number of it below in a fold. */
export function Part({ kind }: { kind: Kind }) {
  const title = `part-${kind.name}`;
  return (
    <section class="part" aria-labelledby={title}>
      <h2 id={title}>{kind.title}</h2>
      <Pick label={`${kind.title} from the catalogue`} part={partIn(kind)} list={listOf(kind)} onPick={(part) => place(kind, part)} />
      <Engraved kind={kind} />
      <details class="fold">
        <summary>Every number of the {kind.title.toLowerCase()}</summary>
        <div class="fields">
          {kind.fields.map((field) => (
            <Input key={field.key} field={field} path={`/${kind.name}/${field.key}`} />
          ))}
        </div>
        {kind.name === 'relay' && view.value === 'pairing' && (
          <p class="beside">
            <Lead path="/relay/glass">{answered.value.pairing.relay.glass ? 'Its glass, traced' : 'Its glass, if it is known'}</Lead>
          </p>
        )}
      </details>
    </section>
  );
}

const partIn = (kind: Kind): object => (draft.value as Record<string, object>)[kind.name] ?? {};
const place = (kind: Kind, part: object): void => settle(withAt(draft.value, `/${kind.name}`, part));
const listOf = (kind: Kind): readonly Listed<Named>[] | 'asking' | 'unreachable' =>
  typeof catalogue.value === 'string' ? catalogue.value : catalogue.value[kind.shelf];

function Engraved({ kind }: { kind: Kind }) {
  const [line, setLine] = useState<{ text: string; part: string } | undefined>(undefined);
  const [said, setSaid] = useState('');
  const before = useRef<object>({});
  const implication = useRef<object>({});
  const waiting = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const id = `engraved-${kind.name}`;
  // What was typed stands as long as the part is what it made of it: a pick or a changed field ends it.
  const typed = line?.part === JSON.stringify(partIn(kind)) ? line.text : undefined;
  const wrong = typed === undefined ? '' : said;
  const shown = kind.engraved(answered.value.pairing[kind.name] as never);

  const type = (text: string): void => {
    if (typed === undefined) {
      before.current = partIn(kind);
      implication.current = impliedBy(answered.value);
    }
    clearTimeout(waiting.current);
    const reading = kind.read(text);
    if (reading.needs.length === 0) {
      const implied = kind.name === 'relay' ? implication.current : {};
      take(withAt(draft.value, `/${kind.name}`, retyped(kind.name, before.current, reading.part as object, implied)));
    }
    setLine({ text, part: JSON.stringify(partIn(kind)) });
    const complaint = unheard(reading);
    if (complaint === '') setSaid('');
    else waiting.current = setTimeout(() => setSaid(complaint), 800);
  };
  const leave = (): void => {
    clearTimeout(waiting.current);
    const complaint = typed === undefined ? '' : unheard(kind.read(typed));
    setSaid(complaint);
    if (complaint === '') setLine(undefined);
    commit();
  };
  return (
    <div class="engraved">
      <label for={id}>or typed as engraved</label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        spellcheck={false}
        maxLength={160}
        value={typed ?? shown}
        aria-invalid={wrong ? true : undefined}
        aria-describedby={`${id}-hint`}
        onInput={({ currentTarget }) => type(currentTarget.value)}
        onKeyDown={(event) => event.key === 'Enter' && leave()}
        onBlur={leave}
      />
      <p class={wrong ? 'complaint' : 'hint'} id={`${id}-hint`}>
        {wrong || `such as ${kind.example}`}
      </p>
    </div>
  );
}

/** What a line left open, in words; '' where it said everything and nothing too much. */
function unheard({ unread, needs }: Reading<unknown>): string {
  return [
    ...(unread.length > 0 ? [`Could not read ${unread.map((piece) => `‘${piece.slice(0, 40)}’`).join(', ')}.`] : []),
    ...(needs.length > 0 ? [`Still needed: ${needs.join('; ')}.`] : []),
  ].join(' ');
}
