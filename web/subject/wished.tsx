import { amount, type Sensor, short } from '../../core/index.ts';
import { engravedSensor } from '../fields/engrave.ts';
import { catalogue } from '../state/catalogue.ts';
import { answered } from '../state/draft.ts';
import { FROM, type From } from '../state/wish.ts';
import { choose, clauses, settleWish, type, wish, wishFault, wishTold } from '../state/wishing.ts';
import { Blank, blankId, wrongId } from './blank.tsx';
import { complaintOf } from './blanks.ts';
import { BLANKS, blanksIn, type Clause, FURTHER, STANDING } from './clauses.ts';
import { Spaces } from './spaces.tsx';

const FROM_WORDS: Readonly<Record<'objectives' | 'relays', Readonly<Record<From, string>>>> = {
  objectives: { all: 'all objectives', owned: 'the objectives that I own', pairing: 'the objective of the pairing' },
  relays: { all: 'all relays', owned: 'the relays that I own', pairing: 'the relay of the pairing' },
};

/** The wish, a sentence whose blanks are the inputs. Only what is filled in counts. */
export function Wished() {
  const open = FURTHER.filter(({ name }) => clauses.value.includes(name));
  return (
    <section class="wished" aria-label="What is wished for">
      {wishFault.value && (
        <p class="notice" role="alert">
          The wish in this link could not be read: {wishFault.value}. What stands here is the subject of the pairing.
        </p>
      )}
      <p class="wish">
        I want to photograph <Words clause={STANDING[0] as Clause} />
        {open.map((clause) => (
          <span key={clause.name}>
            {', '}
            <Words clause={clause} />{' '}
            <button type="button" class="lead out" aria-label={`Leave out: ${clause.name}`} onClick={() => leaveOut(clause)}>
              leave out
            </button>
          </span>
        ))}
        .
      </p>
      <Wrong />
      <Further />
      <p class="wish from">
        It is taken with <Camera />, through <Parts of="objectives" /> and <Parts of="relays" />, with an infinity space of <Spaces />.
      </p>
    </section>
  );
}

const Words = ({ clause }: { clause: Clause }) => (
  <>
    {clause.words.map((piece, i) =>
      typeof piece === 'string' ? (
        `${i > 0 ? ' ' : ''}${piece}`
      ) : (
        <>
          {' '}
          <Blank key={piece.path} blank={piece} />
        </>
      ),
    )}
  </>
);

function Wrong() {
  if (wishTold.value.length === 0) return null;
  return (
    <div class="notice" role="status">
      <p>The list still answers what stood here before:</p>
      <ul>
        {wishTold.value.map((problem) => (
          <li key={problem.path} id={wrongId(problem.path)}>
            {BLANKS.find(({ path }) => path === problem.path)?.label ?? problem.path}: {complaintOf(problem)}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** What else may be said, in the words that put it in. */
function Further() {
  const left = FURTHER.filter(({ name }) => !clauses.value.includes(name));
  if (left.length === 0) return null;
  return (
    <p class="further">
      More may be asked:{' '}
      {left.map((clause, i) => (
        <>
          {i > 0 && ', '}
          <button key={clause.name} type="button" class="lead" onClick={() => putIn(clause)}>
            {clause.add}
          </button>
        </>
      ))}
      .
    </p>
  );
}

/** Puts a part into the sentence, with the cursor in its first blank. */
function putIn(clause: Clause): void {
  clauses.value = [...clauses.peek(), clause.name];
  const first = blanksIn(clause)[0];
  requestAnimationFrame(() => {
    if (first) document.getElementById(blankId(first.path))?.focus();
  });
}

function leaveOut(clause: Clause): void {
  clauses.value = clauses.peek().filter((name) => name !== clause.name);
  type(Object.fromEntries(blanksIn(clause).map(({ path }) => [path, ''])));
  settleWish();
}

const sizeOf = ({ widthMm, heightMm }: Sensor): string => `${short(amount(widthMm), 4)} x ${short(amount(heightMm), 4)} mm`;

function Camera() {
  const shelf = catalogue.value;
  const listed = typeof shelf === 'string' ? [] : shelf.sensors;
  const own = wish.value.sensor;
  const text = own && JSON.stringify(own);
  const known = listed.findIndex(({ part }) => JSON.stringify(part) === text);
  return (
    <select
      aria-label="Camera"
      value={text === undefined ? '' : known >= 0 ? String(known) : 'here'}
      onChange={({ currentTarget: { value } }) => {
        const sensor = listed[Number(value)]?.part;
        if (value === '') choose({ sensor: undefined });
        else if (sensor) choose({ sensor });
      }}
    >
      <option value="">the pairing’s camera, {sizeOf(answered.value.pairing.sensor)}</option>
      {own && known < 0 && <option value="here">{own.name ?? engravedSensor(own)}</option>}
      {listed.map(({ id, part }, i) => (
        <option key={id} value={i}>
          {part.name ?? engravedSensor(part)}
        </option>
      ))}
    </select>
  );
}

function Parts({ of }: { of: 'objectives' | 'relays' }) {
  return (
    <select
      aria-label={of === 'objectives' ? 'Objectives' : 'Relays'}
      value={wish.value[of]}
      onChange={({ currentTarget: { value } }) => {
        const from = FROM.find((name) => name === value);
        if (from) choose({ [of]: from });
      }}
    >
      {FROM.map((from) => (
        <option key={from} value={from}>
          {FROM_WORDS[of][from]}
        </option>
      ))}
    </select>
  );
}
