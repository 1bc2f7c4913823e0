import { numberTyped } from '../state/json.ts';
import { Complaint } from './complaint.tsx';
import type { Field } from './field-lists.ts';
import { inputId } from './names.ts';
import { Quantity } from './quantity.tsx';
import { PAIRING, type Sheet } from './sheet.ts';
import { Typed } from './typed.tsx';

/** What stands where a setting is left out. */
const STANDING: Record<string, string> = { '/litThreshold': '0.5', '/wavelengthNm': '550', '/sharp/relativeContrast': '0.8' };
/** The same for a choice. */
const USUAL: Record<string, string> = {
  '/depth/convention': 'wave term and pixel (usual)',
  '/sharp/focus': 'in one frame (usual)',
  '/sharp/spectrum': 'white, as the eye weighs it (usual)',
};

/** One labelled input of any kind. */
export function Input({
  field,
  path,
  list,
  standing = STANDING[path],
  sheet = PAIRING,
}: {
  field: Field;
  path: string;
  list?: string;
  standing?: string | undefined;
  sheet?: Sheet;
}) {
  if (field.kind === 'quantity') return <Quantity field={field} path={path} sheet={sheet} />;
  const here = sheet.at(path);
  const found = sheet.found(path);
  const id = inputId(path, sheet.mark);
  const wrong = found.length > 0 ? `${id}-wrong` : undefined;
  const text = here === undefined ? '' : String(here);
  const numeric = field.kind === 'number' || field.kind === 'whole';
  return (
    <div class="field">
      <label for={id}>{field.label}</label>
      <div class="quantity">
        {field.kind === 'choice' || field.kind === 'truth' ? (
          <Choice field={field} path={path} id={id} text={text} wrong={wrong} sheet={sheet} />
        ) : (
          <Typed
            id={id}
            class={numeric ? '' : 'words'}
            value={text}
            numeric={numeric}
            list={list}
            placeholder={standing}
            wrong={wrong}
            onType={(typed) => change(sheet, path, numeric ? numberTyped(typed) : typed === '' ? undefined : typed)}
            onDone={sheet.done}
          />
        )}
        {numeric && <span class="unit">{field.unit}</span>}
      </div>
      <Complaint id={`${id}-wrong`} found={found} />
    </div>
  );
}

/** A zoom's range is a pair: either end makes it one, and without both it goes. */
function change(sheet: Sheet, path: string, value: unknown): void {
  const range = path.match(/^(.*\/focalLengthRangeMm)\/([01])$/);
  if (!range) {
    sheet.edit(path, value);
    return;
  }
  const [, whole = '', end] = range;
  const pair = sheet.at(whole);
  const [low, high] = Array.isArray(pair) ? pair : [];
  const next = end === '0' ? [value ?? '', high ?? ''] : [low ?? '', value ?? ''];
  sheet.edit(whole, next.every((x) => x === '') ? undefined : next);
}

interface ChoiceProps {
  field: Field;
  path: string;
  id: string;
  text: string;
  wrong: string | undefined;
  sheet: Sheet;
}

function Choice({ field, path, id, text, wrong, sheet }: ChoiceProps) {
  const truth = field.kind === 'truth';
  const choices = truth
    ? ([
        ['true', 'yes'],
        ['false', 'no'],
      ] as const)
    : (field.choices ?? []);
  const needed = path === '/relay/kind';
  return (
    <select
      id={id}
      value={text}
      aria-invalid={wrong ? true : undefined}
      aria-describedby={wrong}
      onChange={({ currentTarget: { value } }) => {
        sheet.edit(path, value === '' ? undefined : truth ? value === 'true' : value);
        sheet.done();
      }}
    >
      {!needed && <option value="">{USUAL[path] ?? 'not given'}</option>}
      {choices.map(([value, words]) => (
        <option key={value} value={value}>
          {words}
        </option>
      ))}
    </select>
  );
}
