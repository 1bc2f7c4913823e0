import { inputId } from '../fields/names.ts';
import { settleWish, texts, type, wishTold } from '../state/wishing.ts';
import type { Blank as Told } from './clauses.ts';

/** The DOM id of a blank. */
export const blankId = (path: string): string => inputId(`/wish${path}`);
export const wrongId = (path: string): string => `${blankId(path)}-wrong`;

/** A number to be filled in in the middle of a sentence, with its unit. */
export function Blank({ blank: { path, label, unit } }: { blank: Told }) {
  const text = texts.value[path] ?? '';
  const wrong = wishTold.value.some((problem) => problem.path === path);
  return (
    <span class="blank">
      <input
        id={blankId(path)}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        spellcheck={false}
        maxLength={24}
        aria-label={`${label}${unit ? `, in ${unit}` : ''}`}
        aria-invalid={wrong ? true : undefined}
        aria-describedby={wrong ? wrongId(path) : undefined}
        style={{ width: `${Math.max(3, text.length + 1)}ch` }}
        value={text}
        onInput={({ currentTarget }) => type({ [path]: currentTarget.value })}
        onKeyDown={({ key }) => {
          if (key === 'Enter') settleWish();
        }}
        onBlur={settleWish}
      />
      {unit && `${unit === '°' || unit === '×' ? '' : ' '}${unit}`}
    </span>
  );
}
