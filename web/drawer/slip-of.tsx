import { useState } from 'preact/hooks';
import { Complaint } from '../fields/complaint.tsx';
import type { Field } from '../fields/field-lists.ts';
import { Input } from '../fields/input.tsx';
import { inputId } from '../fields/names.ts';
import { Radios } from '../fields/radios.tsx';
import type { Sheet } from '../fields/sheet.ts';
import { partsOf } from '../fields/whole.ts';
import { duplicate, keep, keepMine, takeOut, takeTheirs, useSlip } from './acts.ts';
import { bringTo, idOfRow, idOfSlip } from './focus.ts';
import { groupsFor, isStated } from './groups.ts';
import { type Laid, putAside, sheetOf } from './laid.ts';
import { isChanged } from './slip.ts';
import { differences, OF, PRICE } from './told.ts';

/** A part laid open: its numbers with their ± and where they come from, whose it is, what can be done with it. */
export function SlipOf({ one }: { one: Laid }) {
  const { kind, slip, said, busy, key } = one;
  const { standing, draft, base, meanwhile } = slip.value;
  const sheet = sheetOf(one);
  // As it was laid open: nothing that stands is moved by what is put in.
  const [{ usual, rest }] = useState(() => groupsFor(kind, base));
  const { part = {}, owned, notes } = draft as { part?: { name?: unknown; glass?: unknown }; owned: boolean; notes?: string };
  const name = typeof part.name === 'string' && part.name ? part.name : `a ${OF[kind]} without a name`;
  const changed = isChanged(slip.value);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would be read out with every input in it
    <div class="slip" role="group" id={idOfSlip(key)} tabIndex={-1} aria-label={name}>
      <div class="fields">
        {usual.map((field) => (
          <PartField key={field.key} field={field} path={`/${kind}/${field.key}`} sheet={sheet} />
        ))}
      </div>
      <details class="fold">
        <summary>
          the rest<span class="unseen"> of {name}</span>
        </summary>
        <div class="fields">
          {rest.map((field) => (
            <PartField key={field.key} field={field} path={`/${kind}/${field.key}`} sheet={sheet} />
          ))}
        </div>
      </details>
      {part.glass !== undefined && (
        <p class="hint">Its glass is kept with it as it is listed. To change it use it in the pairing, where The glass shows it.</p>
      )}
      <Complaint id={`${inputId('/relay/glass', sheet.mark)}-wrong`} found={sheet.found('/relay/glass')} />
      <div class="fields story">
        <Radios
          legend="It is"
          name={`${key}-owned`}
          options={{ owned: 'owned', thought: 'thought of' }}
          value={owned ? 'owned' : 'thought'}
          onChoose={(choice) => sheet.edit('/owned', choice === 'owned')}
        />
        <Input field={PRICE} path="/price" sheet={sheet} />
        <div class="field own-notes">
          <label for={inputId('/notes', sheet.mark)}>Notes</label>
          <textarea
            id={inputId('/notes', sheet.mark)}
            rows={2}
            maxLength={2000}
            value={notes ?? ''}
            onInput={({ currentTarget: { value } }) => sheet.edit('/notes', value === '' ? undefined : value)}
          />
          <Complaint id={`${inputId('/notes', sheet.mark)}-wrong`} found={sheet.found('/notes')} />
        </div>
      </div>
      {meanwhile && <Meanwhile one={one} />}
      {/* A complaint that comes on leaving an input must not move what is being pressed: the cursor stays where it is. */}
      <p class="choices" onMouseDown={(event) => event.preventDefault()}>
        {!meanwhile && (
          <button type="button" class="plain" aria-disabled={busy.value} onClick={() => keep(one)}>
            Keep
          </button>
        )}
        <button type="button" class="plain" onClick={() => useSlip(one)}>
          Use in the pairing
        </button>
        {standing && (
          <>
            <button type="button" class="plain" onClick={() => duplicate(one)}>
              Duplicate
            </button>
            <button type="button" class="plain" onClick={() => takeOut(standing)}>
              Take out
            </button>
          </>
        )}
        <button type="button" class="plain" onClick={() => letGo(one)}>
          {!standing ? 'Let it go' : changed ? 'Let the changes go' : 'Close'}
        </button>
      </p>
      <p role="status" class="said">
        {said.value || (standing && changed ? 'Not kept yet.' : '')}
      </p>
    </div>
  );
}

/** What was typed goes; the cursor to the part's line, where it has one. */
function letGo(one: Laid): void {
  putAside(one);
  const id = one.id.peek();
  if (id !== undefined) bringTo(idOfRow(id));
}

/** One input of the part, and what is engraved beside a number that was measured. */
function PartField({ field, path, sheet }: { field: Field; path: string; sheet: Sheet }) {
  const { origin, marked } = partsOf(sheet.at(path)) as { origin?: unknown; marked?: unknown };
  if (field.kind !== 'quantity' || origin !== 'measured' || !isStated(field.key, marked))
    return <Input field={field} path={path} sheet={sheet} />;
  const engraved = `${path}/marked`;
  const against = (ours: boolean): Sheet => ({ ...sheet, found: () => sheet.found(path).filter((p) => (p.path === engraved) === ours) });
  return (
    <div class="with-engraved">
      <Input field={field} path={path} sheet={against(false)} />
      <Input field={{ ...field, kind: 'number', label: `${field.label}, engraved` }} path={engraved} sheet={against(true)} />
    </div>
  );
}

/** Said where the part was changed or taken out elsewhere while it was changed here: both stands, and the choice. */
function Meanwhile({ one }: { one: Laid }) {
  const { kind, draft, meanwhile } = one.slip.value;
  const gone = meanwhile === 'taken out';
  const rows = gone || !meanwhile ? [] : differences(kind, draft, meanwhile.own);
  return (
    <div class="notice meanwhile" role="alert">
      <p>{gone ? 'This was taken out elsewhere while you changed it.' : 'This was changed elsewhere while you changed it.'}</p>
      {rows.length > 0 && (
        <table>
          <thead>
            <tr>
              <th scope="col">
                <span class="unseen">what differs</span>
              </th>
              <th scope="col">yours</th>
              <th scope="col">what stands now</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ what, mine, theirs }) => (
              <tr key={what}>
                <th scope="row">{what}</th>
                <td>{mine || 'nothing'}</td>
                <td>{theirs || 'nothing'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p class="choices">
        <button type="button" class="plain" onClick={() => keepMine(one)}>
          Keep mine
        </button>
        <button type="button" class="plain" onClick={() => takeTheirs(one)}>
          {gone ? 'Let it go' : 'Take theirs'}
        </button>
      </p>
    </div>
  );
}
