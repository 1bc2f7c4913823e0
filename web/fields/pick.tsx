import { RELAY_KINDS } from '../../core/index.ts';
import type { Listed } from '../state/catalogue.ts';

/** What a pick needs to know of a part. */
export interface Named {
  name?: string | undefined;
  kind?: string;
}

const KIND_WORDS: Record<string, string> = {
  supplementary: 'Close-up lenses',
  'camera-lens': 'Camera lenses',
  'tube-lens': 'Tube lenses',
};

/** A part from the catalogue. It stands for itself only as long as nothing of it is changed. */
export function Pick({
  label,
  part,
  list,
  onPick,
}: {
  label: string;
  part: object;
  list: readonly Listed<Named>[] | 'asking' | 'unreachable';
  onPick(part: Named): void;
}) {
  if (list === 'unreachable') return <p class="hint">The catalogue did not answer: type the part below.</p>;
  const parts = list === 'asking' ? [] : list;
  const now = parts.find((entry) => sorted(entry.part) === sorted(part))?.id ?? '';
  const name = (part as Named).name;
  const groups = RELAY_KINDS.map((kind) => [kind, parts.filter((entry) => entry.part.kind === kind)] as const);
  const option = (entry: Listed<Named>) => (
    <option key={entry.id} value={entry.id}>
      {entry.part.name ?? entry.id}
    </option>
  );
  return (
    <select
      class="pick"
      aria-label={label}
      value={now}
      onChange={({ currentTarget: { value } }) => {
        const found = parts.find((entry) => entry.id === value);
        if (found) onPick(structuredClone(found.part));
      }}
    >
      {now === '' && <option value="">{name ? `${name}, your own` : 'your own, as below'}</option>}
      {parts.some((entry) => entry.part.kind)
        ? groups.map(([kind, of]) => (
            <optgroup key={kind} label={KIND_WORDS[kind] ?? kind}>
              {of.map(option)}
            </optgroup>
          ))
        : parts.map(option)}
    </select>
  );
}

/** Equal parts as equal text, whatever the order of their names. */
const sorted = (x: unknown): string =>
  JSON.stringify(x, (_, value) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).toSorted(([a], [b]) => a.localeCompare(b)))
      : value,
  );
