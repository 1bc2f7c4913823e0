import { evaluate } from '../pairing/evaluate.ts';
import type { Glassworks } from '../pairing/glassworks.ts';
import type { Pairing } from '../pairing/schema.ts';
import { type Asked, pairingAt, priceOf } from './asked.ts';
import { readerOf, whyNot } from './at-values.ts';
import { type LimitAnswer, limitAnswers } from './limit-answers.ts';
import { type Limit, limitsOf, meets } from './limits.ts';
import { another, QUANTITIES, type Variable } from './quantities.ts';
import type { Short } from './search.ts';
import { cautionsFor, type Ids, idsOf, partsAt, type ToldPrice, toldPrice } from './told.ts';
import { presentOf } from './windows.ts';

/** A pairing that falls short: in what, and what would mend it. */
export interface NearMiss extends ToldPrice {
  pairing: Pairing;
  ids: Ids;
  missing: LimitAnswer[];
  /** The one change of the rig that would meet every limit, the least of those that would. */
  wouldMeetIf?: Remedy;
  cautions: string[];
}

export interface Remedy {
  /** JSON Pointer into the pairing. */
  path: Variable;
  value: number;
  from: number;
  /** The pairing so changed: of another focal length it is another lens, without glass or range. */
  pairing: Pairing;
}

export function nearMissOf(asked: Asked, { place }: Short, works?: Glassworks): NearMiss {
  const [objective, relay] = partsAt(asked, place);
  const price = priceOf(objective, relay);
  const evaluation = evaluate(pairingAt(asked, place), works);
  const missing = limitAnswers(asked.want, evaluation.answers, price).filter(({ meets: met }) => !met);
  // No change of the rig makes it cheaper.
  const remedy = missing.some(({ name }) => name === 'price') ? undefined : remedyOf(evaluation.pairing, limitsOf(asked.want), works);
  return {
    pairing: evaluation.pairing,
    ids: idsOf(objective, relay),
    missing,
    ...(remedy ? { wouldMeetIf: remedy } : {}),
    ...toldPrice(price),
    cautions: cautionsFor(asked, evaluation),
  };
}

/** What is tried, the easiest first: other tubes, another relay, a wider one. */
const TRIED: readonly Variable[] = ['/infinitySpaceMm', '/relay/focalLengthMm', '/relay/clearApertureMm'];

/** The smallest single change, as a share of the range looked at, that meets every limit. */
function remedyOf(pairing: Pairing, limits: readonly Limit[], works?: Glassworks): Remedy | undefined {
  const read = readerOf(
    limits.map(({ figure }) => figure),
    works,
  );
  const found = TRIED.flatMap((path): (Omit<Remedy, 'pairing'> & { change: number })[] => {
    // Glass would be looked through at every place: seconds for one answer.
    if (pairing.relay.glass && path !== '/relay/focalLengthMm') return [];
    const from = presentOf(pairing, path, works);
    if (from === undefined) return [];
    const meetsAll = (x: number): boolean => {
      const at = another(pairing, path, x, works);
      if (whyNot(at, works) !== undefined) return false;
      return read(at).every((value, i) => typeof value === 'number' && meets(limits[i] as Limit, value));
    };
    const value = nearestThat(meetsAll, QUANTITIES[path], from);
    const [low, high] = QUANTITIES[path].usual;
    return value === undefined ? [] : [{ path, value, from, change: Math.abs(value - from) / (high - low) }];
  });
  const least = found.toSorted((a, b) => a.change - b.change)[0];
  if (!least) return undefined;
  const { path, value, from } = least;
  return { path, value, from, pairing: another(pairing, path, value, works) };
}

/** Places that are tried over the range: a window narrower than the steps between them, some 2 %, may be passed over. */
const STEPS = 125;
const HALVINGS = 32;
/** So many digits of a border halving finds: a step over the range is 12 mm at most, of which it leaves 3e-9 mm. */
const BORDER_DIGITS = 8;

/**
 * The value nearest to `from` that is found to do, to as few digits as still do.
 * @param does worked out anew for each value, the one that is answered included
 */
function nearestThat(
  does: (x: number) => boolean,
  { usual: [low, high], steps }: (typeof QUANTITIES)[Variable],
  from: number,
): number | undefined {
  const place = (i: number): number => (steps === 'ratio' ? low * (high / low) ** (i / STEPS) : low + ((high - low) * i) / STEPS);
  const places = Array.from({ length: STEPS + 1 }, (_, i) => place(i)).toSorted((a, b) => Math.abs(a - from) - Math.abs(b - from));
  const first = places.find(does);
  if (first === undefined) return undefined;
  let inside = first;
  // What is nearer has been tried: the border is no farther than the last of those on this side.
  let outside = places.findLast((x) => Math.abs(x - from) < Math.abs(first - from) && x > from === first > from) ?? from;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (inside + outside) / 2;
    if (does(middle)) inside = middle;
    else outside = middle;
  }
  // Halving ends a hair beside the border, which may itself be a round number.
  const border = Number(inside.toPrecision(BORDER_DIGITS));
  return shortest(does, does(border) ? border : inside, from);
}

/** Rounding may make a change this much larger than it need be. */
const ROUNDING = 0.05;

/** `x` rounded away from `from`, to the fewest digits from two on with which it does and that hardly enlarge the change. */
function shortest(does: (x: number) => boolean, x: number, from: number): number {
  const away = x - from;
  for (let digits = 2; digits <= 6; digits++) {
    const unit = 10 ** (Math.floor(Math.log10(Math.abs(x) || 1)) - digits + 1);
    // As numbers 2.8 / 0.1 is a hair less than 28: what is whole stays.
    const units = Number((x / unit).toPrecision(12));
    const rounded = Number(((away > 0 ? Math.ceil(units) : Math.floor(units)) * unit).toPrecision(digits + 1));
    if (Math.abs(rounded - x) <= ROUNDING * Math.abs(away) && does(rounded)) return rounded;
  }
  return x;
}
