import type { ComponentChildren } from 'preact';
import { amount } from '../../core/index.ts';
import { settle } from '../state/address.ts';
import { answered, draft } from '../state/draft.ts';
import { withAt } from '../state/json.ts';
import { DEPTH, type Field, LIGHT, SPACING, STOP, SUBJECT } from './field-lists.ts';
import { Input } from './input.tsx';

const MOST_STOPS = 8;

const Fields = ({ list, root = '' }: { list: readonly Field[]; root?: string }) => (
  <div class="fields">
    {list.map((field) => (
      <Input key={field.key} field={field} path={`${root}/${field.key}`} />
    ))}
  </div>
);

/** What stands between the parts and how far apart, what is before them, and the light: every number of it, folded. */
export function Setting() {
  return (
    <div class="folds setting">
      <Fold title={`Rings and tubes${count(stopsIn().length)}`}>
        <Rings />
      </Fold>
      <Fold title="Spacing and focus">
        <Fields list={SPACING} />
      </Fold>
      <Fold title="Subject">
        <Fields list={SUBJECT} />
      </Fold>
      <Fold title="Light and depth">
        <Fields list={[...LIGHT, ...DEPTH]} />
      </Fold>
    </div>
  );
}

const Fold = ({ title, children }: { title: string; children: ComponentChildren }) => (
  <details class="fold">
    <summary>{title}</summary>
    {children}
  </details>
);

const count = (n: number): string => (n === 0 ? '' : ` (${n})`);
const stopsIn = (): unknown[] => {
  const { stops } = draft.value as { stops?: unknown };
  return Array.isArray(stops) ? stops : [];
};

function Rings() {
  const stops = stopsIn();
  const add = (where: 'fromShoulderMm' | 'fromSensorMm'): void => {
    const { infinitySpaceMm } = answered.value.pairing;
    const at = where === 'fromShoulderMm' ? Math.round(amount(infinitySpaceMm) / 2) : 20;
    settle(withAt(draft.value, '/stops', [...stops, { diameterMm: 40, [where]: at }]));
  };
  const remove = (i: number): void => {
    const left = stops.filter((_, j) => j !== i);
    settle(withAt(draft.value, '/stops', left.length > 0 ? left : undefined));
  };
  return (
    <>
      {stops.map((stop, i) => (
        // A ring has no name of its own: its place in the list is what it is.
        <fieldset class="ring" key={i}>
          <legend>Ring {i + 1}</legend>
          <Fields list={STOP.filter((field) => shownFor(stop, field.key))} root={`/stops/${i}`} />
          <button type="button" class="plain" onClick={() => remove(i)}>
            Take ring {i + 1} out
          </button>
        </fieldset>
      ))}
      {stops.length < MOST_STOPS ? (
        <p class="choices">
          <button type="button" class="plain" onClick={() => add('fromShoulderMm')}>
            Add a ring before the relay
          </button>
          <button type="button" class="plain" onClick={() => add('fromSensorMm')}>
            Add a tube behind the relay
          </button>
        </p>
      ) : (
        <p class="hint">Eight rings are the most that are worked out.</p>
      )}
    </>
  );
}

/** A ring stands on one side of the relay: the other side's field shows only where both or neither are given. */
function shownFor(stop: unknown, key: string): boolean {
  const has = (name: string): boolean => typeof stop === 'object' && stop !== null && Object.hasOwn(stop, name);
  if (key === 'fromShoulderMm') return has('fromShoulderMm') || !has('fromSensorMm');
  if (key === 'fromSensorMm') return has('fromSensorMm') || !has('fromShoulderMm');
  return true;
}
