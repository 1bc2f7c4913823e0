import { useState } from 'preact/hooks';
import { commit } from '../state/address.ts';

interface Props {
  id?: string | undefined;
  class?: string;
  label?: string;
  /** What stands there, as text. */
  value: string;
  placeholder?: string | undefined;
  wrong?: string | undefined;
  numeric?: boolean;
  /** The id of a list of what is usual here. */
  list?: string | undefined;
  /** Characters that it is wide. */
  size?: number | undefined;
  onType(text: string): void;
  /** It was left, or Enter pressed: by default a step of the pairing's history. */
  onDone?: () => void;
}

/** A line to type in: keeps what is typed as it is typed, and is done on leaving and on Enter. */
export function Typed({ id, label, value, placeholder, wrong, numeric = true, list, size, onType, onDone = commit, ...rest }: Props) {
  const [typing, setTyping] = useState<string | undefined>(undefined);
  return (
    <input
      id={id}
      class={rest.class}
      type="text"
      inputMode={numeric ? 'decimal' : 'text'}
      autocomplete="off"
      spellcheck={false}
      maxLength={120}
      aria-label={label}
      aria-invalid={wrong ? true : undefined}
      aria-describedby={wrong}
      placeholder={placeholder}
      list={list}
      style={size === undefined ? undefined : { width: `${size}ch` }}
      value={typing ?? value}
      onInput={({ currentTarget }) => {
        setTyping(currentTarget.value);
        onType(currentTarget.value);
      }}
      onKeyDown={(event) => {
        if (event.key === 'Enter') onDone();
      }}
      onBlur={() => {
        setTyping(undefined);
        onDone();
      }}
    />
  );
}
