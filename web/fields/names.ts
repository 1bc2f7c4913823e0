import { DEPTH, type Field, LIGHT, OBJECTIVE, RELAY, SENSOR, SHARP, SPACING, STOP, SUBJECT } from './field-lists.ts';

/** The lists of a relay's glass, by what is called what in them. */
const LISTED: Record<string, readonly [label: string, unit: string]> = {
  radiiMm: ['radius of surface', 'mm'],
  thicknessesMm: ['thickness behind surface', 'mm'],
  glasses: ['glass behind surface', ''],
  semiAperturesMm: ['clear half-height of surface', 'mm'],
};

/** What a path into the relay's glass leads to: the whole of it, one lens's list, one entry. */
function glassField(key: string): Field {
  const second = key.startsWith('glass/second');
  const [list = '', place] = key.replace(/^glass(\/second)?\/?/, '').split('/');
  const [label, unit] = LISTED[list] ?? [];
  const lens = second ? 'second lens, ' : '';
  if (!label || place === undefined)
    return { key, label: list === 'gapMm' ? 'Gap to the second lens' : `${lens || 'its '}glass`, kind: 'text' };
  return { key, label: `${lens}${label} ${Number(place) + 1}`, kind: list === 'glasses' ? 'text' : 'number', ...(unit ? { unit } : {}) };
}

const PLACES: Record<string, readonly Field[]> = { objective: OBJECTIVE, relay: RELAY, sensor: SENSOR };

export let brought: (path: string) => Field | undefined = () => undefined;

/** A view that is fetched later brings the inputs that it has beside the pairing's. */
export const bringFields = (lookup: typeof brought): void => {
  brought = lookup;
};

/** The field that a path leads to; the path of a quantity's ± leads to the quantity. */
export function fieldAt(path: string): Field | undefined {
  const [first = '', ...rest] = path.slice(1).split('/');
  const place = PLACES[first];
  if (first === 'relay' && rest[0] === 'glass') return glassField(rest.join('/'));
  if (place) return place.find((f) => matches(f, rest.join('/')));
  if (first === 'stops') return STOP.find((f) => f.key === rest[1]);
  return [...SPACING, ...LIGHT, ...SUBJECT, ...DEPTH, ...SHARP].find((f) => matches(f, path.slice(1))) ?? brought(path);
}

const matches = (field: Field, key: string): boolean => key === field.key || key.startsWith(`${field.key}/`);

/** The path of the input that a path leads to, without what lies inside the input. */
export function inputPath(path: string): string {
  const field = fieldAt(path);
  if (!field) return path;
  const at = path.indexOf(field.key);
  return path.slice(0, at + field.key.length);
}

/** What a path is called beside its part: 'the relay: clear opening of the front rim'. */
export function calledAt(path: string): string {
  const label = fieldAt(path)?.label ?? path;
  const [first = '', second = ''] = path.slice(1).split('/');
  const part = { objective: 'objective', relay: 'relay', sensor: 'camera', subject: 'subject' }[first];
  if (first === 'stops') return `ring ${Number(second) + 1}, ${lower(label)}`;
  return part ? `${part}, ${lower(label)}` : lower(label);
}

/** A label in the middle of a sentence. */
export const lower = (text: string): string => (/^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text);

/** The DOM id of the input at a path; `mark` tells one sheet from another. */
export const inputId = (path: string, mark = ''): string => `in${mark}${path.replaceAll('/', '-')}`;
