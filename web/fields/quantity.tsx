import { ORIGINS, short, valueAt } from '../../core/index.ts';
import { commit } from '../state/address.ts';
import { answered, draft, edit } from '../state/draft.ts';
import { numberTyped } from '../state/json.ts';
import { Complaint, toldAt } from './complaint.tsx';
import { type Field, inputId } from './names.ts';
import { Typed } from './typed.tsx';
import { partsOf, type Whole, written } from './whole.ts';

const shown = (x: unknown): string => (x === undefined || x === null ? '' : typeof x === 'object' ? '' : String(x));

/** A number with its unit, its ± and where it comes from. What is assumed in its absence shows in italics. */
export function Quantity({ field, path }: { field: Field; path: string }) {
  const here = partsOf(valueAt(draft.value, path.slice(1).split('/')));
  const taken = answered.value.inputs.find((input) => input.path === path);
  const found = toldAt(path);
  const wrong = found.length > 0 ? `${inputId(path)}-wrong` : undefined;
  const inSpread = found.some((p) => p.path.endsWith('/plusMinus'));
  const change = (part: Whole): void => edit(path, written({ ...here, ...part }));
  const origin = here.value === undefined ? taken?.origin : (here.origin ?? 'marked');
  const assumed = origin === 'assumed';
  return (
    <div class={`field${assumed ? ' assumed' : ''}`}>
      <label for={inputId(path)}>{field.label}</label>
      <div class="quantity">
        <Typed
          id={inputId(path)}
          value={shown(here.value)}
          placeholder={taken && here.value === undefined ? short(taken.value) : undefined}
          wrong={inSpread ? undefined : wrong}
          onType={(text) => change({ value: numberTyped(text) })}
        />
        <span class="unit">{field.unit}</span>
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
        />
        <select
          aria-label={`Where ${field.label} comes from`}
          value={shown(origin)}
          disabled={here.value === undefined}
          onChange={({ currentTarget }) => {
            change({ origin: currentTarget.value });
            commit();
          }}
        >
          {here.value === undefined && !taken && <option value="">not given</option>}
          {ORIGINS.map((origin) => (
            <option key={origin} value={origin}>
              {origin}
            </option>
          ))}
        </select>
      </div>
      <Complaint id={`${inputId(path)}-wrong`} found={found} />
    </div>
  );
}
