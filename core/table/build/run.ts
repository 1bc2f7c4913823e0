import type { Piece, Tube } from '../threads/adapter.ts';
import { type Chain, type Link, type NoChain, type Stock, shortestChain } from '../threads/chain.ts';
import { type End, mates, type Thread } from '../threads/thread.ts';
import { type Filling, filling, GOOD_ENOUGH } from './fill.ts';

/** A length and the interval that surely holds it, mm. */
export interface Wanted {
  readonly value: number;
  readonly low: number;
  readonly high: number;
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
  const rest = { value: wanted.value - rings, low: wanted.low - rings, high: wanted.high - rings };
  const tubes = filling(
    box.tubes.filter((tube) => !taken.has(tube) && mates(tube.ends[0], { ...rear, sex: 'male' })),
    rest,
    box.preferOwned,
  );
  return tubes && tubes.tubes.length > 0 ? [joined(before, tubes, after, front, rear)] : [];
}

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
const missed = ({ least, most }: Run, { low, high }: Wanted): number =>
  Math.round(Math.max(0, least - low - GOOD_ENOUGH, high - most - GOOD_ENOUGH));

function better(a: Run, b: Run, wanted: Wanted | undefined, preferOwned: boolean): boolean {
  const rank = (run: Run): readonly number[] => {
    const pieces = preferOwned ? [run.toBuy, run.links.length] : [run.links.length, run.toBuy];
    return [wanted ? missed(run, wanted) : 0, ...pieces, wanted ? Math.abs(run.lengthMm - wanted.value) : run.lengthMm];
  };
  const [first, second] = [rank(a), rank(b)];
  const i = first.findIndex((value, j) => Math.abs(value - (second[j] as number)) > 1e-9);
  return i >= 0 && (first[i] as number) < (second[i] as number);
}
