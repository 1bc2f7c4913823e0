import { UNKNOWN_CIRCLE } from '../pairing/verdict.ts';
import { capital, listed, short } from '../words.ts';
import type { LimitAnswer } from './limit-answers.ts';
import { amountOf, LIMIT_WORDS } from './words.ts';

interface Grounds {
  limits: readonly LimitAnswer[];
  bites: LimitAnswer | undefined;
  onFrontier: boolean;
  tie: boolean;
}

/** Why a choice is told and what bites, in one line. */
export function lineOf({ limits, bites, onFrontier, tie }: Grounds): string {
  return [
    metOf(limits),
    ...(bites ? [bitesOf(bites)] : []),
    ...(onFrontier ? ['None here is better in one of the figures picked without being worse in another.'] : []),
    ...(tie ? ['A tie on paper with the one before: photograph both.'] : []),
  ].join(' ');
}

/** How surely a choice meets what is asked. */
export function metOf(limits: readonly LimitAnswer[]): string {
  if (limits.length === 0) return 'Nothing was asked of it.';
  const sure = limits.filter(({ surely }) => surely).length;
  const all = limits.length === 1 ? 'Meets what is asked' : limits.length === 2 ? 'Meets both' : `Meets all ${limits.length}`;
  const surely =
    sure === limits.length
      ? `${all}, surely.`
      : sure === 0
        ? `${all}, none of it surely.`
        : `${all}, ${sure === 1 ? 'one' : sure} of them surely.`;
  const without = [...new Set(limits.flatMap((limit) => limit.without ?? []))].map((circle) => UNKNOWN_CIRCLE[circle]);
  return without.length === 0 ? surely : `${surely} ${capital(listed(without))} is not known, and not counted.`;
}

export const nameOfLimit = (name: LimitAnswer['name']): string => (name === 'price' ? 'price' : LIMIT_WORDS[name].short);

/** The number of a limit or of what is judged by it, with its unit: with digits enough to tell it from what it stands beside. */
export const toldIn = ({ figure }: Pick<LimitAnswer, 'figure'>, value: number, beside = value): string =>
  figure ? amountOf({ figure }, value, beside) : short(value, 6);

/** What bites, a sentence. */
export function bitesOf(bites: LimitAnswer): string {
  const { name, value, limit } = bites;
  return `Tightest: ${nameOfLimit(name)}, ${toldIn(bites, value as number, limit)} where ${toldIn(bites, limit)} is the limit.`;
}
