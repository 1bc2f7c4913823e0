import { type Field, OBJECTIVE, RELAY, SENSOR } from '../fields/field-lists.ts';
import { Input } from '../fields/input.tsx';
import { Lead } from '../fields/lead.tsx';
import { answered } from '../state/draft.ts';
import { view } from '../state/view.ts';
import type { Kind } from './kinds.ts';

const FIELDS: Record<Kind['name'], readonly Field[]> = { objective: OBJECTIVE, relay: RELAY, sensor: SENSOR };

/** Every number of one part, and from the relay the way to its glass. */
export function Numbers({ of }: { of: Kind['name'] }) {
  return (
    <>
      <p class="whose">Every number of the {of === 'sensor' ? 'camera' : of}</p>
      <div class="fields">
        {FIELDS[of].map((field) => (
          <Input key={field.key} field={field} path={`/${of}/${field.key}`} />
        ))}
      </div>
      {of === 'relay' && view.value === 'pairing' && (
        <p class="beside">
          <Lead path="/relay/glass">{answered.value.pairing.relay.glass ? 'Its glass, traced' : 'Its glass, if it is known'}</Lead>
        </p>
      )}
    </>
  );
}
