import type { Piece, Tube } from '../threads/adapter.ts';
import { type Chain, type Link, shortestChain } from '../threads/chain.ts';
import { ringFor } from '../threads/miss.ts';
import { type NoChain, reachable } from '../threads/nearest.ts';
import type { Stock } from '../threads/stock.ts';
import { type End, mateOf, mates, type Thread } from '../threads/thread.ts';
import { type Filling, filling, GOOD_ENOUGH } from './fill.ts';
import type { Wanted } from './wanted.ts';

/** What goes on from either end where nothing closes the gap between. */
export interface Gapped {
  readonly before: readonly Link[];
  readonly after: readonly Link[];
  /** The ring that would close the gap. */
  readonly wouldDo: string;
}

/** Rings and tubes that join two ends and are as long as wanted, as nearly as they can be. */
export interface Run {
  readonly links: readonly Link[];
  readonly lengthMm: number;
  /** How far a focusing tube reaches; both as long as the run where there is none. */
  readonly least: number;
  readonly most: number;
  readonly toBuy: number;
}

export interface Box {
  /** What is owned and in use elsewhere on the rig. */
  readonly taken: ReadonlySet<Piece>;
  readonly rings: Stock;
  readonly tubes: readonly Tube[];
  readonly preferOwned: boolean;
}

/** Joins two ends; with a length wanted, by tubes of whatever thread a chain of rings leads to. */
export function runBetween(from: End, to: End, wanted: Wanted | undefined, box: Box): Run | NoChain {
  const direct = shortestChain(from, to, box.rings, box, box.taken);
  const found: Run[] = 'miss' in direct ? [] : [{ ...direct, least: direct.lengthMm, most: direct.lengthMm }];
  if (wanted) for (const [front, rear] of tubeEnds(box.tubes)) found.push(...withTubes(from, to, front, rear, wanted, box));
  const best = found.reduce<Run | undefined>((a, b) => (a && !better(b, a, wanted, box.preferOwned) ? a : b), undefined);
  return best ?? (direct as NoChain);
}

/** Both ways round of a tube of each thread. */
function tubeEnds(tubes: readonly Tube[]): readonly (readonly [End, End])[] {
  const seen = new Set<Thread>();
  return tubes.flatMap(({ ends: [a, b] }) => {
    if ([...seen].some((thread) => mates({ thread, sex: 'male' }, { thread: a.thread, sex: 'female' }))) return [];
    seen.add(a.thread);
    return [[a, b] as const, [b, a] as const];
  });
}

/** What a run takes out of the box. */
export const ownedIn = (links: readonly Link[]): readonly Piece[] => links.flatMap(({ piece }) => (piece.owned ? [piece] : []));

function withTubes(from: End, to: End, front: End, rear: End, wanted: Wanted, box: Box): Run[] {
  const before = shortestChain(from, front, box.rings, box, box.taken);
  if ('miss' in before) return [];
  const taken = new Set([...box.taken, ...ownedIn(before.links)]);
  const after = shortestChain(rear, to, box.rings, box, taken);
  if ('miss' in after) return [];
  const rings = before.lengthMm + after.lengthMm;
  const rest = less(wanted, rings);
  const tubes = filling(
    box.tubes.filter((tube) => !taken.has(tube) && mates(tube.ends[0], { ...rear, sex: 'male' })),
    rest,
    box.preferOwned,
  );
  return tubes && tubes.tubes.length > 0 ? [joined(before, tubes, after, front, rear)] : [];
}

const less = ({ value, low, high, ...more }: Wanted, by: number): Wanted => ({
  value: value - by,
  low: low - by,
  high: high - by,
  ...more,
});

function joined(before: Chain, tubes: Filling, after: Chain, front: End, rear: End): Run {
  const rings = before.lengthMm + after.lengthMm;
  return {
    links: [...before.links, ...tubes.tubes.map((piece) => ({ piece, front, rear })), ...after.links],
    lengthMm: rings + tubes.lengthMm,
    least: rings + tubes.least,
    most: rings + tubes.most,
    toBuy: before.toBuy + tubes.toBuy + after.toBuy,
  };
}

/** How far out of reach the wanted interval is, beyond what is good enough, in whole millimetres. */
const missed = ({ least, most }: Run, { low, high, within = GOOD_ENOUGH }: Wanted): number =>
  Math.round(Math.max(0, least - low - within, high - most - within));

/**
 * The pieces that go on from either end up to a gap that nothing closes: rings, and tubes where the first of the
 * gap's ends takes them, no longer than is wanted. Where nothing comes near, what is owned goes on as far as it can.
 */
export function gapped(from: End, to: End, { gap, near }: NoChain, wanted: Wanted | undefined, box: Box): Gapped {
  const free = box.rings.pieces.filter((piece) => piece.owned && !box.taken.has(piece));
  const [before, a] = firstOf(near ? [gap[0]] : reachable(from, free).toReversed(), from, (end) =>
    shortestChain(from, mateOf(end), box.rings, box, box.taken),
  );
  const taken = new Set([...box.taken, ...ownedIn(before)]);
  const [after, b] = firstOf(near ? [gap[1]] : reachable(to, free).toReversed(), to, (end) =>
    shortestChain(mateOf(end), to, box.rings, box, taken),
  );
  const front = mateOf(a);
  const tubes = wanted && tubesFor(a, less(wanted, lengthOf([...before, ...after])), box, taken);
  return {
    before: [...before, ...(tubes?.tubes ?? []).map((piece) => ({ piece, front, rear: a }))],
    after,
    wouldDo: ringFor(a, b),
  };
}

/** The first of some ends that a chain reaches, with that chain; no pieces and the end itself where none does. */
function firstOf(ends: readonly End[], own: End, chainTo: (end: End) => Chain | NoChain): readonly [readonly Link[], End] {
  for (const end of ends) {
    const chain = chainTo(end);
    if (!('miss' in chain)) return [chain.links, end];
  }
  return [[], own];
}

const lengthOf = (links: readonly Link[]): number => links.reduce((sum, { piece }) => sum + piece.lengthMm, 0);

function tubesFor(end: End, wanted: Wanted, box: Box, taken: ReadonlySet<Piece>): Filling | undefined {
  const fit = box.tubes.filter((tube) => !taken.has(tube) && tube.ends.some((one) => mates(one, end)));
  return filling(fit, wanted, box.preferOwned);
}

function better(a: Run, b: Run, wanted: Wanted | undefined, preferOwned: boolean): boolean {
  const rank = (run: Run): readonly number[] => {
    const pieces = preferOwned ? [run.toBuy, run.links.length] : [run.links.length, run.toBuy];
    return [wanted ? missed(run, wanted) : 0, ...pieces, wanted ? Math.abs(run.lengthMm - wanted.value) : run.lengthMm];
  };
  const [first, second] = [rank(a), rank(b)];
  const i = first.findIndex((value, j) => Math.abs(value - (second[j] as number)) > 1e-9);
  return i >= 0 && (first[i] as number) < (second[i] as number);
}
