import { ORIGINS, short } from '../../core/index.ts';
import { numberTyped } from '../state/json.ts';
import { Complaint } from './complaint.tsx';
import type { Field } from './field-lists.ts';
import { inputId } from './names.ts';
import { PAIRING, type Sheet } from './sheet.ts';
import { Typed } from './typed.tsx';
import { partsOf, type Whole, written } from './whole.ts';

const shown = (x: unknown): string => (x === undefined || x === null ? '' : typeof x === 'object' ? '' : String(x));

/** A number with its unit, its ± and where it comes from. What is assumed in its absence shows in italics. */
export function Quantity({ field, path, sheet = PAIRING }: { field: Field; path: string; sheet?: Sheet }) {
  const here = partsOf(sheet.at(path));
  const taken = sheet.taken(path);
  const found = sheet.found(path);
  const id = inputId(path, sheet.mark);
  const wrong = found.length > 0 ? `${id}-wrong` : undefined;
  const inSpread = found.some((p) => p.path.endsWith('/plusMinus'));
  const change = (part: Whole): void => sheet.edit(path, written({ ...here, ...part }));
  const origin = here.value === undefined ? taken?.origin : (here.origin ?? 'marked');
  const assumed = origin === 'assumed';
  return (
    <div class={`field${assumed ? ' assumed' : ''}`}>
      <label for={id}>{field.label}</label>
      <div class="quantity">
        <Typed
          id={id}
          value={shown(here.value)}
          placeholder={taken && here.value === undefined ? short(taken.value) : undefined}
          wrong={inSpread ? undefined : wrong}
          onType={(text) => change({ value: numberTyped(text) })}
          onDone={sheet.done}
        />
        <span class="unit">{field.unit}</span>
        {sheet.brief && here.value === undefined ? (
          taken && <span class="taken">{assumed ? 'a guess' : 'as usual'}</span>
        ) : (
          <>
            <span class="plus-minus" aria-hidden="true">
              ±
            </span>
            <Typed
              class="spread"
              label={`± of ${field.label}${field.unit ? `, in ${field.unit}` : ''}`}
              value={shown(here.plusMinus)}
              placeholder={taken && here.plusMinus === undefined && taken.plusMinus > 0 ? short(taken.plusMinus, 2) : undefined}
              wrong={inSpread ? wrong : undefined}
              onType={(text) => change({ plusMinus: numberTyped(text) })}
              onDone={sheet.done}
            />
            <select
              aria-label={`Where ${field.label} comes from`}
              value={shown(origin)}
              disabled={here.value === undefined}
              onChange={({ currentTarget }) => {
                change({ origin: currentTarget.value });
                sheet.done();
              }}
            >
              {here.value === undefined && !taken && <option value="">not given</option>}
              {ORIGINS.map((origin) => (
                <option key={origin} value={origin}>
                  {origin}
                </option>
              ))}
            </select>
          </>
        )}
      </div>
      <Complaint id={`${id}-wrong`} found={found} />
    </div>
  );
}
