import { evaluate } from '../pairing/evaluate.ts';
import type { Glassworks } from '../pairing/glassworks.ts';
import type { Pairing } from '../pairing/schema.ts';
import { type Asked, pairingAt, priceOf } from './asked.ts';
import { type LimitAnswer, limitAnswers } from './limit-answers.ts';
import type { Short } from './search.ts';
import { cautionsFor, type Ids, idsOf, partsAt, type ToldPrice, toldPrice } from './told.ts';

/** A pairing that falls short: in what, and what would mend it. */
export interface NearMiss extends ToldPrice {
  pairing: Pairing;
  ids: Ids;
  missing: LimitAnswer[];
  /** The one change of the rig that would meet every limit, where there is one. */
  wouldMeetIf?: { path: string; value: number; from: number };
  cautions: string[];
}

export function nearMissOf(asked: Asked, { place }: Short, works?: Glassworks): NearMiss {
  const [objective, relay] = partsAt(asked, place);
  const price = priceOf(objective, relay);
  const evaluation = evaluate(pairingAt(asked, place), works);
  const missing = limitAnswers(asked.want, evaluation.answers, price).filter(({ meets }) => !meets);
  return {
    pairing: evaluation.pairing,
    ids: idsOf(objective, relay),
    missing,
    ...toldPrice(price),
    cautions: cautionsFor(asked, evaluation),
  };
}
