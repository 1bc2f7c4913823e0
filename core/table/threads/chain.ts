import type { Piece } from './adapter.ts';
import { type NoChain, nearest } from './nearest.ts';
import type { Stock, Way } from './stock.ts';
import { type End, endKey, mateOf, mates } from './thread.ts';

/** A piece as it stands in a chain: its end toward the objective first. */
export interface Link {
  readonly piece: Piece;
  readonly front: End;
  readonly rear: End;
}

/** What joins two ends. */
export interface Chain {
  readonly links: readonly Link[];
  /** From the first end's seat to the last one's. */
  readonly lengthMm: number;
  /** How many pieces are not owned. */
  readonly toBuy: number;
}

export interface Preference {
  /** Fewest pieces to buy before fewest pieces. */
  readonly preferOwned?: boolean;
}

/** Longer chains are no use on a table: they sag. */
export const MOST_LINKS = 8;

interface Label extends Chain {
  readonly cost: readonly number[];
  readonly end: End;
  /** Places in the list of pieces: what is owned is there once, what is bought as often as it is needed. */
  readonly used: readonly number[];
  /** Places and ways round, for an order among equals that does not depend on luck. */
  readonly told: string;
}

const costOf = ({ links, toBuy, lengthMm }: Chain, { preferOwned }: Preference): readonly number[] =>
  preferOwned ? [toBuy, links.length, lengthMm] : [links.length, toBuy, lengthMm];

/**
 * The best chain of pieces from one end to another, both given as they stand free: fewest pieces, then fewest to
 * buy, then the shortest. No chain joins what does not mate.
 *
 * @param without pieces that are used elsewhere
 */
export function shortestChain(
  from: End,
  to: End,
  stock: Stock,
  preference: Preference = {},
  without: ReadonlySet<Piece> = new Set(),
): Chain | NoChain {
  const settled = new Map<string, Label[]>();
  const waiting = new Map<string, Label[]>();
  const beaten = (label: Label, key: string): boolean =>
    (settled.get(key) ?? []).some((old) => doesAsMuch(old, label)) ||
    (waiting.get(key) ?? []).some((old) => before(old, label) && doesAsMuch(old, label));
  const push = (label: Label): void => {
    const key = endKey(label.end);
    if (beaten(label, key)) return;
    const kept = (waiting.get(key) ?? []).filter((old) => !doesAsMuch(label, old) || before(old, label));
    waiting.set(key, [...kept, label]);
  };
  // It is taken before any other is there: what it costs is never asked.
  push({ links: [], lengthMm: 0, toBuy: 0, cost: [], end: from, used: [], told: '' });
  for (;;) {
    const label = takeLeast(waiting);
    if (!label) return nearest(from, to, stock.pieces);
    if (mates(label.end, to)) return { links: label.links, lengthMm: label.lengthMm, toBuy: label.toBuy };
    const key = endKey(label.end);
    settled.set(key, [...(settled.get(key) ?? []), label]);
    if (label.links.length === MOST_LINKS) continue;
    for (const way of stock.byFront.get(endKey(mateOf(label.end))) ?? []) {
      // Where it leads others have been with no more: it is not worth making.
      if ((settled.get(way.rearKey) ?? []).some((old) => doesAsMuch(old, label))) continue;
      const next = extended(label, way, without, preference);
      if (next) push(next);
    }
  }
}

/** Whether one at the same end, cheaper or first, can do all that the other can: it has left as much in the box, and so is no longer. */
const doesAsMuch = (a: Label, b: Label): boolean => a.used.every((i) => b.used.includes(i));

function extended(
  label: Label,
  { alike, front, rear, turned }: Way,
  without: ReadonlySet<Piece>,
  preference: Preference,
): Label | undefined {
  const free = alike.find(({ piece, place }) => !label.used.includes(place) && !without.has(piece));
  if (!free) return undefined;
  const { piece, place } = free;
  const chain = {
    links: [...label.links, { piece, front, rear }],
    lengthMm: label.lengthMm + piece.lengthMm,
    toBuy: label.toBuy + (piece.owned ? 0 : 1),
  };
  return {
    ...chain,
    cost: costOf(chain, preference),
    end: rear,
    used: piece.owned ? [...label.used, place] : label.used,
    told: label.told + String.fromCharCode(2 * place + turned),
  };
}

function takeLeast(waiting: Map<string, Label[]>): Label | undefined {
  let least: Label | undefined;
  for (const labels of waiting.values()) for (const label of labels) if (!least || before(label, least)) least = label;
  if (!least) return undefined;
  const key = endKey(least.end);
  waiting.set(
    key,
    (waiting.get(key) ?? []).filter((label) => label !== least),
  );
  return least;
}

/** Lengths are sums in any order: closer than this they are equal, mm. */
const EQUAL = 1e-9;

function before(a: Label, b: Label): boolean {
  for (let i = 0; i < 3; i++) {
    const apart = (a.cost[i] as number) - (b.cost[i] as number);
    if (Math.abs(apart) > EQUAL) return apart < 0;
  }
  return a.told < b.told;
}
