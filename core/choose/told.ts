import { numberIn } from '../pairing/answer.ts';
import { COVER_GLASS_CAUTION, cautionsOf } from '../pairing/cautions.ts';
import type { Evaluation } from '../pairing/evaluate.ts';
import { DEFAULTS, type Pairing } from '../pairing/schema.ts';
import type { Asked, Offered, Place, Price } from './asked.ts';
import { coverGlassCaution } from './cover-glass.ts';

/** What is told alike of a choice and of a near miss. */

export const partsAt = ({ objectives, relays }: Asked, [o, r]: Place) =>
  [objectives[o] as Offered<Pairing['objective']>, relays[r] as Offered<Pairing['relay']>] as const;

/** The ids of its parts, where a shelf knows them. */
export interface Ids {
  objective?: string;
  relay?: string;
}
export const idsOf = (objective: Offered<unknown>, relay: Offered<unknown>): Ids => ({
  ...(objective.id === undefined ? {} : { objective: objective.id }),
  ...(relay.id === undefined ? {} : { relay: relay.id }),
});

/** What is still to be paid, as far as it is known, and the parts whose price is not. */
export interface ToldPrice {
  price?: number;
  priceMissing?: ('objective' | 'relay')[];
}
export const toldPrice = ({ known, missing }: Price): ToldPrice => ({
  ...(known > 0 || missing.length === 0 ? { price: known } : {}),
  ...(missing.length > 0 ? { priceMissing: [...missing] } : {}),
});

/** The pairing's own cautions; where the cover glass is told, what it does in the place of the general word. */
export function cautionsFor({ want }: Asked, evaluation: Evaluation): string[] {
  const { pairing, answers } = evaluation;
  const glass = coverGlassCaution(pairing.objective, want.coverGlassMm, pairing.wavelengthNm ?? DEFAULTS.wavelengthNm);
  const own = cautionsOf(evaluation);
  return [
    ...(glass ? [glass] : []),
    ...(numberIn(answers.clearWorkingDistanceMm) === undefined ? ['Its working distance is not known.'] : []),
    ...(want.coverGlassMm === undefined ? own : own.filter((text) => !text.startsWith(COVER_GLASS_CAUTION))),
  ];
}
