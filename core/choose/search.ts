import { Gap } from '../figure.ts';
import type { Glassworks } from '../pairing/glassworks.ts';
import { glassRelay } from '../pairing/leaves.ts';
import { type FigureId, planFor } from '../pairing/registry.ts';
import { type Asked, type Place, pairingAt, priceOf } from './asked.ts';
import { Best } from './best.ts';
import { BETTER } from './better.ts';
import { COVERING, NEEDED } from './covering.ts';
import { Frontier } from './frontier.ts';
import { type Limit, type LimitName, limitsOf, marginOf, meets } from './limits.ts';
import { type Value, valueBench } from './values.ts';

/** One pairing that was considered. */
export interface Candidate {
  readonly place: Place;
  /** Where it comes in the order of the search: ties are told in this order. */
  readonly turn: number;
  /** What it is sorted by, less before more; Infinity, and so last, where that is not known. */
  readonly key: number;
  /** The infinity spaces at which its two parts meet every limit, where only one of them is told. */
  readonly spacesMm?: readonly number[];
}

/** One that falls short. */
export interface Short extends Candidate {
  readonly missing: number;
  /** The margin by which it falls shortest. */
  readonly worst: number;
}

/** One that meets every limit, with the figures of the frontier so that more is better. */
export interface Standing extends Candidate {
  readonly row: readonly number[];
}

export interface Found {
  readonly considered: number;
  /** Of these, how many contradict themselves and are no pairings. */
  readonly impossible: number;
  readonly feasible: number;
  /** Of the feasible, how many have a part to be bought whose price is not known. */
  readonly unpriced: number;
  /** The first of the feasible, sorted. */
  readonly best: readonly Candidate[];
  readonly frontier: readonly Standing[];
  /**
   * The nearest misses: those that fall short in the fewest limits, and by the least. Of an objective and a relay the
   * nearest spacing, and only where they are feasible at none.
   */
  readonly near: readonly Short[];
  readonly stopped: Stopped;
}

/**
 * How many pairings each limit stops, alone or with others; a limit that stops none is left out. What hangs on a
 * relay's glass is counted only where the glass was looked through.
 */
export type Stopped = Partial<Record<LimitName | 'price', number>>;

/** How far a search has come. */
export interface Progress {
  readonly done: number;
  readonly of: number;
}

/** Pairings without glass between two reports of progress. */
const STRIDE = 512;
const MOST_NEAR = 12;

/**
 * Considers every pairing that is asked for and keeps what is to be told of them; the rest is counted and let
 * go. Yields as it goes, after every pairing whose glass was traced, so that whoever asked may stop it.
 *
 * What hangs on a relay's glass costs some ten milliseconds a pairing: it is traced only where nothing else has
 * decided the matter, which changes nothing of what is found.
 */
export function* searching(asked: Asked, works?: Glassworks): Generator<Progress, Found, undefined> {
  const limits = limitsOf(asked.want);
  const { sort, frontier: axes } = asked;
  const ranked = [...axes, ...(sort.by === 'price' ? [] : [sort.by])];
  const wanted = [...new Set([...limits.map(({ figure }) => figure), ...ranked, ...(ranked.some((id) => COVERING.has(id)) ? NEEDED : [])])];
  const traced = new Set(wanted.filter(hangsOnGlass));
  const whole = valueBench(wanted, works);
  const plainIds = wanted.filter((id) => !traced.has(id));
  const plain = valueBench(plainIds, works);
  const plainLimits = limits.filter(({ figure }) => !traced.has(figure));

  const best = new Best<Candidate>(asked.most, before);
  const near = new Best<Short>(MOST_NEAR, nearer);
  const frontier = new Frontier<Standing>();
  const of = asked.objectives.length * asked.relays.length * asked.infinitySpacesMm.length;
  const counts = { considered: 0, impossible: 0, feasible: 0, unpriced: 0 };
  const take = (candidate: Standing): void => {
    best.add(candidate);
    if (candidate.row.every((x) => !Number.isNaN(x))) frontier.add(candidate);
  };
  const stopped: Stopped = {};
  const stop = (by: keyof Stopped): void => {
    stopped[by] = (stopped[by] ?? 0) + 1;
  };
  const count = (asked: readonly Limit[], ids: readonly FigureId[], values: readonly Value[], tooDear: boolean): void => {
    if (tooDear) stop('price');
    for (const limit of asked) if (!isMet(limit, values[ids.indexOf(limit.figure)] as Value)) stop(limit.name);
  };

  for (let o = 0; o < asked.objectives.length; o++)
    for (let r = 0; r < asked.relays.length; r++) {
      const price = priceOf(asked.objectives[o] as Asked['objectives'][number], asked.relays[r] as Asked['relays'][number]);
      const tooDear = asked.want.maxPrice !== undefined && price.known > asked.want.maxPrice;
      const overBudget = asked.want.maxPrice ? (asked.want.maxPrice - price.known) / asked.want.maxPrice : -price.known;
      const paid = price.missing.length > 0 ? Gap.unknown('/price') : price.known;
      const hasGlass = asked.relays[r]?.part.glass !== undefined && traced.size > 0;
      let nearest: Short | undefined;
      const doing: Standing[] = [];
      const feasibleBefore = counts.feasible;
      for (let s = 0; s < asked.infinitySpacesMm.length; s++) {
        const turn = counts.considered++;
        if (turn % STRIDE === 0) yield { done: turn, of };
        const place: Place = [o, r, s];
        const pairing = pairingAt(asked, place);
        const judge = (shortOf: Shortfall, key: number): Short => ({ place, turn, key, ...shortOf });
        const priced = tooDear ? { missing: 1, worst: overBudget } : NONE;
        if (hasGlass) {
          plain.put(pairing);
          const values = plain.read();
          if (!values) {
            counts.impossible++;
            continue;
          }
          const already = shortfall(plainLimits, plainIds, values, priced);
          // It cannot come nearer than this, nor before it: where that is too far, its glass need not be looked through.
          if (!near.wants(judge(already, Number.NEGATIVE_INFINITY))) {
            count(plainLimits, plainIds, values, tooDear);
            continue;
          }
        }
        whole.put(pairing);
        const values = whole.read();
        if (hasGlass) yield { done: turn + 1, of };
        if (!values) {
          counts.impossible++;
          continue;
        }
        const valueIn = (id: FigureId): Value => values[wanted.indexOf(id)] as Value;
        // A bound for want of a circle is no value to rank by.
        const figureOf = (id: FigureId): Value =>
          COVERING.has(id) ? (NEEDED.map(valueIn).find((value) => value instanceof Gap) ?? valueIn(id)) : valueIn(id);
        const key = keyOf(sort.by === 'price' ? paid : figureOf(sort.by), sort.first);
        const short = shortfall(limits, wanted, values, priced);
        if (short.missing > 0) {
          count(limits, wanted, values, tooDear);
          const miss = judge(short, key);
          if (!nearest || nearer(miss, nearest) < 0) nearest = miss;
          continue;
        }
        counts.feasible++;
        if (price.missing.length > 0) counts.unpriced++;
        const candidate: Standing = { place, turn, key, row: axes.map((id) => upward(id, figureOf(id))) };
        if (asked.eachPairOnce) doing.push(candidate);
        else take(candidate);
      }
      const first = doing.toSorted(before)[0];
      if (first) take({ ...first, spacesMm: doing.map(({ place: [, , s] }) => asked.infinitySpacesMm[s] as number) });
      if (nearest && counts.feasible === feasibleBefore) near.add(nearest);
    }
  yield { done: of, of };
  return { ...counts, best: best.kept, frontier: frontier.members.toSorted(before), near: near.kept, stopped };
}

/** Whether a figure can only be told of a relay with glass by looking through it. */
const hangsOnGlass = (id: FigureId): boolean => planFor([id]).graph.place.has(glassRelay);

interface Shortfall {
  readonly missing: number;
  readonly worst: number;
}
const NONE: Shortfall = { missing: 0, worst: Number.POSITIVE_INFINITY };

/** What is not known meets no limit, and falls short of it by all of it. */
function shortfall(limits: readonly Limit[], ids: readonly FigureId[], values: readonly Value[], { missing, worst }: Shortfall): Shortfall {
  for (const limit of limits) {
    const value = values[ids.indexOf(limit.figure)] as Value;
    if (isMet(limit, value)) continue;
    missing++;
    worst = Math.min(worst, typeof value === 'number' ? marginOf(limit, value) : -1);
  }
  return { missing, worst };
}

const isMet = (limit: Limit, value: Value): boolean => typeof value === 'number' && meets(limit, value);

const keyOf = (value: Value, first: Asked['sort']['first']): number =>
  typeof value !== 'number' ? Number.POSITIVE_INFINITY : first === 'least' ? value : -value;

/** A figure so that more of it is better; NaN where there is none. */
const upward = (id: FigureId, value: Value): number => (value instanceof Gap ? Number.NaN : BETTER[id] === 'less' ? -value : value);

/** Sorted; what is equal stays in the order of the search. */
export const before = (a: Candidate, b: Candidate): number => (a.key === b.key ? a.turn - b.turn : a.key < b.key ? -1 : 1);
const nearer = (a: Short, b: Short): number => a.missing - b.missing || b.worst - a.worst || before(a, b);
