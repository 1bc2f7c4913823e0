import {
  BOUNDS,
  type Objective,
  objectiveSchema,
  type PartKind,
  type Relay,
  relaySchema,
  type Sensor,
  sensorSchema,
} from '../../../core/index.ts';

/** The columns of the table: what a field of a part is written as, and under which names. */

const SHAPES = { objective: objectiveSchema.shape, relay: relaySchema.shape, sensor: sensorSchema.shape } as const satisfies Record<
  PartKind,
  object
>;

type Field = keyof Objective | keyof Relay | keyof Sensor;
type Quantified = keyof typeof BOUNDS;

/** How a field that is no quantity is written: text as it stands, one of some words, yes or no, a whole number, two numbers, JSON. */
const PLAIN = {
  name: 'text',
  mountThread: 'text',
  correction: 'word',
  kind: 'word',
  maleThread: 'text',
  femaleThread: 'text',
  flatField: 'yes',
  tubeLensCorrectsColour: 'yes',
  reversed: 'yes',
  colourFilter: 'yes',
  columns: 'number',
  rows: 'number',
  focalLengthRangeMm: 'range',
  glass: 'json',
} as const satisfies Record<Exclude<Field, Quantified>, string>;

export type Way = 'quantity' | (typeof PLAIN)[keyof typeof PLAIN];

export interface Column {
  /** The part's field. */
  field: Field;
  way: Way;
  /** What stands in the head: for a quantity the number first, then its ±, its origin, and what is marked. */
  heads: readonly string[];
}

export const QUANTITY_ENDS = ['plusMinus', 'origin', 'marked'] as const;
const HEADS: Record<Way, (name: string) => string[]> = {
  quantity: (name) => [name, `${name} ±`, `${name} origin`, `${name} marked`],
  range: (name) => [`${name} from`, `${name} to`],
  text: (name) => [name],
  word: (name) => [name],
  yes: (name) => [name],
  number: (name) => [name],
  json: (name) => [name],
};

const fields = [...new Set(Object.values(SHAPES).flatMap((shape) => Object.keys(shape) as Field[]))];

/** Every field that a part of any kind has, its name first; a relay's own kind stands under another name than the part's. */
export const COLUMNS: readonly Column[] = fields.map((field) => {
  const way = Object.hasOwn(BOUNDS, field) ? 'quantity' : PLAIN[field as keyof typeof PLAIN];
  return { field, way, heads: HEADS[way](field === 'kind' ? 'relayKind' : field) };
});

/** What is said of every part, before its fields. */
export const STORY = ['id', 'kind', 'owned', 'price', 'notes'] as const;

export const ALL_HEADS: readonly string[] = [...STORY, ...COLUMNS.flatMap(({ heads }) => heads)];
