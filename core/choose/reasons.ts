import { capital, short } from '../words.ts';
import type { LimitAnswer } from './limit-answers.ts';
import { amountOf, LIMIT_WORDS } from './words.ts';

interface Grounds {
  limits: readonly LimitAnswer[];
  bites: LimitAnswer | undefined;
  onFrontier: boolean;
  level: boolean;
}

/** Why a choice is told and what bites, in one line. */
export function lineOf({ limits, bites, onFrontier, level }: Grounds): string {
  return [
    metOf(limits),
    ...(bites ? [bitesOf(bites)] : []),
    ...(onFrontier ? ['None here is better in one of the figures picked without being worse in another.'] : []),
    ...(level ? ['A tie on paper with the one before: photograph both.'] : []),
  ].join(' ');
}

/** How surely a choice meets what is asked. */
export function metOf(limits: readonly LimitAnswer[]): string {
  if (limits.length === 0) return 'Nothing was asked of it.';
  const sure = limits.filter(({ surely }) => surely).length;
  const all = limits.length === 1 ? 'Meets what is asked' : limits.length === 2 ? 'Meets both' : `Meets all ${limits.length}`;
  return sure === limits.length ? `${all}, surely.` : sure === 0 ? `${all}, none of it surely.` : `${all}, ${sure} of them surely.`;
}

export const nameOfLimit = (name: LimitAnswer['name']): string => (name === 'price' ? 'price' : LIMIT_WORDS[name].short);

/** The number of a limit or of what is judged by it, with its unit. */
export const toldIn = ({ figure }: Pick<LimitAnswer, 'figure'>, value: number): string =>
  figure ? amountOf({ figure }, value) : short(value, 6);

/** What bites, a sentence. */
export function bitesOf(bites: LimitAnswer): string {
  const { name, value, limit } = bites;
  return `${capital(nameOfLimit(name))} bites first: ${toldIn(bites, value as number)} where ${toldIn(bites, limit)} is the limit.`;
}
