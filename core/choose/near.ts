import { evaluate } from '../pairing/evaluate.ts';
import type { Glassworks } from '../pairing/glassworks.ts';
import type { Pairing } from '../pairing/schema.ts';
import { type Asked, pairingAt, priceOf } from './asked.ts';
import { readerOf } from './at-values.ts';
import { type LimitAnswer, limitAnswers } from './limit-answers.ts';
import { type Limit, limitsOf, meets } from './limits.ts';
import { another, type Variable } from './quantities.ts';
import type { Short } from './search.ts';
import { cautionsFor, type Ids, idsOf, partsAt, type ToldPrice, toldPrice } from './told.ts';
import { windowOf } from './windows.ts';

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

/** The smallest single change, as a share of the range looked at, that meets every limit; verified by working it out. */
function remedyOf(pairing: Pairing, limits: readonly Limit[], works?: Glassworks): Remedy | undefined {
  const read = readerOf(
    limits.map(({ figure }) => figure),
    works,
  );
  const meetsAll = (vary: Variable, x: number): boolean =>
    read(another(pairing, vary, x, works)).every((value, i) => typeof value === 'number' && meets(limits[i] as Limit, value));
  const found = TRIED.flatMap((path): (Remedy & { change: number })[] => {
    // Glass is looked through at every place: seconds for one answer.
    if (pairing.relay.glass && path !== '/relay/focalLengthMm') return [];
    const { window, now, from: low, to: high, limits: told } = windowOf({ pairing, vary: path, limits }, works);
    if (now === undefined || told.some(({ how }) => how === 'not known')) return [];
    const apart = ([a, b]: readonly [number, number]): number => Math.max(a - now, now - b);
    const nearest = window.toSorted((a, b) => apart(a) - apart(b))[0];
    if (!nearest) return [];
    const value = roundedInto(nearest, now);
    return meetsAll(path, value) ? [{ path, value, from: now, change: Math.abs(value - now) / (high - low) }] : [];
  });
  const least = found.toSorted((a, b) => a.change - b.change)[0];
  return least && { path: least.path, value: least.value, from: least.from };
}

/** The end of an interval that is nearer to `now`, to as few digits as leave it inside; its middle where it is too narrow for that. */
function roundedInto([a, b]: readonly [number, number], now: number): number {
  const [end, into] = now < a ? [a, 1] : [b, -1];
  for (let digits = 2; digits <= 6; digits++) {
    const unit = 10 ** (Math.floor(Math.log10(Math.abs(end) || 1)) - digits + 1);
    const x = Number(((into > 0 ? Math.ceil(end / unit) : Math.floor(end / unit)) * unit).toPrecision(digits + 1));
    // A little inside, so that a rounding does not decide it.
    if (x > a + 1e-9 * Math.abs(a) && x < b - 1e-9 * Math.abs(b)) return x;
  }
  return (a + b) / 2;
}
