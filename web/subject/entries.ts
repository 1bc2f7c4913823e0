import type { Choice } from '../../core/choosing.ts';
import { amount, listed, type Pairing, short } from '../../core/index.ts';

/** Pairings of one objective with one relay at several spacings: one entry of the list. */
export interface Entry<One> {
  readonly key: string;
  /** The first of them, as the list is sorted. */
  readonly head: One;
  /** All of them, the first included. */
  readonly members: readonly One[];
}

interface Paired {
  readonly pairing: Pairing;
  /** The spacings at which its parts do, where they are told once. */
  readonly spacesMm?: readonly number[];
}

const keyOf = ({ pairing: { objective, relay } }: Paired): string => JSON.stringify([objective, relay]);

export const spaceOf = ({ pairing }: Paired): number => amount(pairing.infinitySpaceMm);

/** In the order in which each comes first. */
export function entriesOf<One extends Paired>(all: readonly One[]): Entry<One>[] {
  const found = new Map<string, One[]>();
  for (const one of all) {
    const key = keyOf(one);
    const members = found.get(key);
    if (members) members.push(one);
    else found.set(key, [one]);
  }
  return [...found].map(([key, members]) => ({ key, head: members[0] as One, members }));
}

/** The spacings of an entry, mm, the first of the list first. */
export const spacesOf = ({ members }: Entry<Paired>): number[] => [
  ...new Set([...members.map(spaceOf), ...members.flatMap(({ spacesMm = [] }) => spacesMm)]),
];

/** `at 60, 30 or 90 mm`. */
export const spacingsOf = (entry: Entry<Paired>): string =>
  `at ${listed(spacesOf(entry).map((space) => short(space, 4))).replace(/ and (?=[^ ]*$)/, ' or ')} mm`;

/** With which entry one is level in what the list is sorted by, by its place; and at which spacing, where that is not its first. */
export interface Level {
  readonly place: number;
  /** Level with it in all that is asked about. */
  readonly tie: boolean;
  readonly spaceMm?: number;
}

/** An entry's first pairing was held against the one before it in the list: which entry that belongs to. */
export function levelOf(choices: readonly Choice[], entries: readonly Entry<Choice>[], { head }: Entry<Choice>): Level | undefined {
  const before = choices[choices.indexOf(head) - 1];
  const tie = head.tieWithPrevious === true;
  if (!(head.levelWithPrevious || tie) || !before) return undefined;
  const place = entries.findIndex(({ members }) => members.includes(before));
  return { place, tie, ...(entries[place]?.head === before ? {} : { spaceMm: spaceOf(before) }) };
}

/** The entry that a choice belongs to, by its place. */
export const placeOf = (entries: readonly Entry<Choice>[], choice: Choice): number =>
  entries.findIndex(({ members }) => members.includes(choice));
