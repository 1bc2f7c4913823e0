import { listed, type OwnPart, type PartKind, type Problem, sameJson, short } from '../../core/index.ts';
import { type Field, OBJECTIVE, RELAY, SENSOR } from '../fields/field-lists.ts';
import { calledAt, lower } from '../fields/names.ts';
import { partsOf } from '../fields/whole.ts';
import { complaint } from '../state/words.ts';

/** A part of the drawer in words. */
export const FIELDS: Record<PartKind, readonly Field[]> = { objective: OBJECTIVE, relay: RELAY, sensor: SENSOR };

/** One value as it stands: `196 ± 2 mm measured, engraved 200`; '' where there is none. */
export function valueTold({ unit, choices }: Field, value: unknown): string {
  if (Array.isArray(value)) return `${value.join(' to ')}${unit ? ` ${unit}` : ''}`;
  const { value: here, plusMinus, origin, marked } = partsOf(value) as Record<string, unknown>;
  if (here === undefined) return '';
  if (typeof here === 'boolean') return here ? 'yes' : 'no';
  if (typeof here !== 'number') return choices?.find(([name]) => name === here)?.[1] ?? String(here);
  const spread = typeof plusMinus === 'number' ? ` ± ${short(plusMinus, 6)}` : '';
  const from = origin === undefined || origin === 'marked' ? '' : ` ${origin}`;
  const engraved = typeof marked === 'number' ? `, engraved ${short(marked, 6)}` : '';
  return `${short(here, 6)}${spread}${unit ? ` ${unit}` : ''}${from}${engraved}`;
}

/** What of it was measured: `focal length, as set 196 ± 2 mm`, in the order of the fields. */
export const measuredIn = ({ kind, part }: OwnPart): string[] =>
  FIELDS[kind].flatMap((field) => {
    const here = (part as Record<string, unknown>)[field.key];
    if (partsOf(here).origin !== 'measured') return [];
    return [`${lower(field.label)} ${valueTold(field, here).replace(' measured', '')}`];
  });

/** One thing in which two stands of a part differ; '' where one of them says nothing. */
export interface Difference {
  what: string;
  mine: string;
  theirs: string;
}

/** Where what was typed differs from what lies in the drawer, in the order of the fields. */
export function differences(kind: PartKind, mine: object, theirs: object): Difference[] {
  const rows: [what: string, Field | undefined, place: string][] = [
    ...pairedOf(FIELDS[kind]).map((field): [string, Field, string] => [field.label, field, field.key]),
    ...(kind === 'relay' ? [['Its glass', undefined, 'glass'] as [string, undefined, string]] : []),
  ];
  const story: [string, Field, string][] = STORY.map((field) => [field.label, field, field.key]);
  const partOf = (own: object): Record<string, unknown> => ((own as { part?: object }).part ?? {}) as Record<string, unknown>;
  const between = (a: Record<string, unknown>, b: Record<string, unknown>) => (row: [string, Field | undefined, string]) => {
    const [what, field, place] = row;
    if (sameJson(a[place], b[place])) return [];
    const tell = (value: unknown): string => (field ? valueTold(field, value) : value === undefined ? '' : 'listed');
    return [{ what, mine: tell(a[place]), theirs: tell(b[place]) }];
  };
  return [
    ...rows.flatMap(between(partOf(mine), partOf(theirs))),
    ...story.flatMap(between(mine as Record<string, unknown>, theirs as Record<string, unknown>)),
  ];
}

/** A zoom's two ends are one thing here. */
const pairedOf = (fields: readonly Field[]): Field[] =>
  fields.flatMap((field) => {
    if (field.key === 'focalLengthRangeMm/0') return [{ ...field, key: 'focalLengthRangeMm', label: 'Zoom, shortest and longest' }];
    return field.key.startsWith('focalLengthRangeMm/') ? [] : [field];
  });

/** What is told of a part besides its optics. */
export const PRICE: Field = { key: 'price', label: 'Price', kind: 'number' };
const STORY: readonly Field[] = [{ key: 'owned', label: 'Owned', kind: 'truth' }, PRICE, { key: 'notes', label: 'Notes', kind: 'text' }];

/** The first words of a note, on one line. */
export function firstWords(notes: string, most = 60): string {
  const line = notes.trim().replace(/\s+/g, ' ');
  return line.length <= most ? line : `${line.slice(0, most).replace(/\s\S*$/, '')} …`;
}

/** The kinds as the page calls them. */
export const OF: Record<PartKind, string> = { objective: 'objective', relay: 'relay', sensor: 'camera' };

/** What the server has against something, to follow 'Not kept: '. */
export function refusedInWords(kind: PartKind, problems: readonly Problem[]): string {
  const [first] = problems;
  if (!first) return 'the server gave no reason.';
  const { path, message, expected } = first;
  const what = path === '' ? 'it' : calledAt(path.replace(/^\/part(?=\/|$)/, `/${kind}`));
  return `${what} ${message}${expected ? `; what would do: ${expected}` : ''}.`;
}

/** A complaint about a row of a file, whose kind may not be known: with what it is about before it. */
export function sayingAt(problem: Problem): string {
  const key = problem.path.replace(/^\/part(\/|$)/, '');
  const kind = (Object.keys(FIELDS) as PartKind[]).find((of) =>
    FIELDS[of].some((field) => key === field.key || key.startsWith(`${field.key}/`)),
  );
  const path = key !== problem.path && kind ? `/${kind}/${key}` : problem.path;
  const what = key !== problem.path && kind ? lower(calledAt(path).replace(/^[a-z]+, /, '')) : (WORDS[problem.path] ?? '');
  const wrong = complaint({ ...problem, path });
  return what ? `${what}: ${wrong.charAt(0).toLowerCase()}${wrong.slice(1)}` : wrong;
}
const WORDS: Record<string, string> = { '/id': 'id', '/kind': 'kind', '/owned': 'owned', '/price': 'price', '/notes': 'notes' };

const NOUNS: Record<PartKind, readonly [one: string, many: string]> = {
  objective: ['objective', 'objectives'],
  relay: ['relay', 'relays'],
  sensor: ['camera', 'cameras'],
};

/** `3 objectives, 2 relays and 1 camera; 5 owned, 1 thought of`. */
export function counted(own: readonly OwnPart[]): string {
  const kinds = (Object.keys(NOUNS) as PartKind[]).flatMap((kind) => {
    const n = own.filter((one) => one.kind === kind).length;
    return n === 0 ? [] : [`${n} ${NOUNS[kind][n === 1 ? 0 : 1]}`];
  });
  const owned = own.filter((one) => one.owned).length;
  const rest = own.length - owned;
  return `${listed(kinds)}; ${owned} owned${rest > 0 ? `, ${rest} thought of` : ''}`;
}
