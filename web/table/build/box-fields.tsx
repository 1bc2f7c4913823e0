import { KNOWN_THREADS } from '../../../core/table.ts';
import type { Field } from '../../fields/field-lists.ts';
import { Input } from '../../fields/input.tsx';
import { adaptersIn, addAdapter, addTube, BOX, box, complete, takeOut, tick, tubesIn } from './box.ts';

const LIST = 'thread-names';
const MOST = 24;

const thread = (key: string, label: string): Field => ({ key, label, kind: 'text', brought: true });
const mm = (key: string, label: string): Field => ({ key, label, kind: 'number', unit: 'mm', brought: true });
const sex = (key: string, label: string): Field => ({
  key,
  label,
  kind: 'choice',
  choices: [
    ['male', 'male'],
    ['female', 'female'],
  ],
  brought: true,
});

const RING = [
  thread('name', 'Name'),
  thread('ends/0/thread', 'Thread on one side'),
  sex('ends/0/sex', 'That side is'),
  thread('ends/1/thread', 'Thread on the other'),
  sex('ends/1/sex', 'The other side is'),
  mm('lengthMm', 'From seat to seat'),
  mm('clearMm', 'Opening'),
];
const TUBE = [thread('thread', 'Thread'), mm('lengthMm', 'From seat to seat'), mm('reachMm', 'Turns out by'), mm('clearMm', 'Opening')];
const CAMERA = [
  thread('camera/thread', "Thread of the camera's ring"),
  sex('camera/sex', "The camera's ring is"),
  mm('camera/fromSensorMm', 'Its seat before the sensor'),
];

const usual: Record<string, string> = { 'camera/thread': 'T' };

const Fields = ({ list, root = '' }: { list: readonly Field[]; root?: string }) => (
  <div class="fields">
    {list.map((field) => (
      <Input
        key={field.key}
        field={field}
        path={`${root}/${field.key}`}
        sheet={BOX}
        standing={usual[field.key]}
        list={field.key.endsWith('thread') ? LIST : undefined}
      />
    ))}
  </div>
);

/** The ring that the camera ends in. */
export const CameraFields = () => (
  <>
    <datalist id={LIST}>
      {KNOWN_THREADS.map(({ label, use }) => (
        <option key={label} value={label}>
          {use}
        </option>
      ))}
    </datalist>
    <Fields list={CAMERA} />
  </>
);

/** What is owned: rings and tubes, each with its numbers. */
export function BoxFields() {
  const [rings, tubes] = [adaptersIn(), tubesIn()];
  const { ownedOnly = false, preferOwned = false } = box.value.value;
  return (
    <>
      {rings.map((ring, i) => (
        // A ring has no name of its own: its place in the list is what it is.
        <fieldset class="ring" key={i}>
          <legend>Your ring {i + 1}</legend>
          <Fields list={RING} root={`/adapters/${i}`} />
          {!complete('adapters', ring) && <p class="hint">It counts once both threads are told, and which is male or female.</p>}
          <button type="button" class="plain" onClick={() => takeOut('adapters', i)}>
            Take your ring {i + 1} out
          </button>
        </fieldset>
      ))}
      {tubes.map((tube, i) => (
        <fieldset class="ring" key={i}>
          <legend>Your tube {i + 1}</legend>
          <Fields list={TUBE} root={`/tubes/${i}`} />
          {!complete('tubes', tube) && <p class="hint">It counts once its thread and its length are told.</p>}
          <button type="button" class="plain" onClick={() => takeOut('tubes', i)}>
            Take your tube {i + 1} out
          </button>
        </fieldset>
      ))}
      <p class="choices">
        {rings.length < MOST && (
          <button type="button" class="plain" onClick={addAdapter}>
            Add a ring that you have
          </button>
        )}
        {tubes.length < MOST && (
          <button type="button" class="plain" onClick={addTube}>
            Add a tube that you have
          </button>
        )}
      </p>
      <label class="tick">
        <input type="checkbox" checked={preferOwned} onChange={({ currentTarget }) => tick('preferOwned', currentTarget.checked)} />
        Rather more pieces than more to buy
      </label>
      <label class="tick">
        <input type="checkbox" checked={ownedOnly} onChange={({ currentTarget }) => tick('ownedOnly', currentTarget.checked)} />
        Only what I have
      </label>
    </>
  );
}
