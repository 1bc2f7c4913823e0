import { steps, valueAt } from '../../core/index.ts';

type Branch = Record<string, unknown>;

/** `root` with the value at a JSON Pointer replaced, or left out where it is undefined. Objects on the way are made. */
export function withAt<T>(root: T, path: string, value: unknown): T {
  const copy = structuredClone(root);
  const keys = steps(path);
  const last = keys.pop();
  if (last === undefined) return value as T;
  let here = copy as Branch;
  for (const key of keys) {
    if (typeof here[key] !== 'object' || here[key] === null) here[key] = {};
    here = here[key] as Branch;
  }
  if (value !== undefined) here[last] = value;
  else if (Array.isArray(here)) here.splice(Number(last), 1);
  else delete here[last];
  return pruned(copy, keys);
}

/** An object emptied by a removal goes with it: no subject is left of a subject without sizes. */
function pruned<T>(root: T, keys: string[]): T {
  const here = valueAt(root, keys);
  if (keys.length === 0 || typeof here !== 'object' || here === null || Array.isArray(here) || Object.keys(here).length > 0) return root;
  const parent = valueAt(root, keys.slice(0, -1));
  if (Array.isArray(parent)) return root;
  delete (parent as Branch)[keys.at(-1) as string];
  return root;
}

const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** What was typed for a number: the number, undefined for nothing, the text itself where it is no number. */
export function numberTyped(text: string): number | string | undefined {
  const trimmed = text.trim();
  if (trimmed === '') return undefined;
  const plain = trimmed.replace(',', '.').replace(/^[−–]/, '-');
  const value = Number(plain);
  return PLAIN.test(plain) && Number.isFinite(value) ? value : trimmed;
}
