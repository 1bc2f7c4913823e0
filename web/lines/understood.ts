import { isWhole, type Reading, readObjective, readRelay, readSensor } from '../../core/engravings.ts';
import { amount, type QuantityInput } from '../../core/index.ts';
import type { Kind } from './kinds.ts';

const READ: Record<Kind['name'], (text: string) => Reading<object>> = { objective: readObjective, relay: readRelay, sensor: readSensor };

/** What stood there before it was typed over. */
export interface Ground {
  part: object;
  /** As its line showed it. */
  line: string;
}

export interface Understood {
  reading: Reading<object>;
  /** The part that the text means; undefined where it leaves something open. */
  part: object | undefined;
  /** What is open or could not be read, in words; '' where it said everything and nothing too much. */
  complaint: string;
}

export function understood(name: Kind['name'], text: string, ground: Ground): Understood {
  const reading = READ[name](text);
  const part = isWhole(reading) ? retyped(name, ground.part, reading.part, READ[name](ground.line).part) : undefined;
  return { reading, part, complaint: unheard(reading) };
}

function unheard({ unread, needs, asks }: Reading<object>): string {
  const open = [...needs, ...asks.map(({ question }) => question)];
  return [
    ...(unread.length > 0 ? [`Could not read ${unread.map((one) => `‘${one.slice(0, 40)}’`).join(', ')}.`] : []),
    ...(open.length > 0 ? [`Still needed: ${open.join('; ')}.`] : []),
    ...(asks.length > 0 ? ['The list has the choices.'] : []),
  ].join(' ');
}

/** What makes a part the same part: while these stay, a changed line keeps all that cannot be engraved. */
const IDENTITY = {
  objective: ['magnification', 'na', 'referenceFocalLengthMm'],
  relay: ['kind', 'focalLengthMm', 'powerDioptre'],
  sensor: ['widthMm', 'heightMm'],
} as const;

/**
 * The part that a typed line means, on the ground of the part that stood there before.
 * @param shown what the line said of it then: what was in the line and is not any more goes with it
 */
function retyped(kind: keyof typeof IDENTITY, before: object, read: object, shown: object): object {
  const was = shown as Given;
  const is = read as Given;
  if (!IDENTITY[kind].every((name) => plain(was[name]) === plain(is[name]))) return read;
  const kept = Object.entries(before).filter(([name]) => was[name] === undefined || is[name] !== undefined);
  const changed = Object.entries(is).filter(([name, value]) => plain(was[name]) !== plain(value));
  return Object.fromEntries([...kept, ...changed]);
}

type Given = Record<string, QuantityInput | string | undefined>;

const plain = (x: QuantityInput | string | undefined): unknown =>
  typeof x === 'object' && 'value' in x ? amount(x) : typeof x === 'object' ? JSON.stringify(x) : x;
