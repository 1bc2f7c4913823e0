/** A quantity in the draft, where anything may have been typed. */
export interface Whole {
  value?: unknown;
  plusMinus?: unknown;
  origin?: unknown;
}

export const partsOf = (here: unknown): Whole =>
  typeof here === 'object' && here !== null ? here : here === undefined ? {} : { value: here };

/** As little as says it: a bare number where there is neither ± nor another origin than 'marked'. */
export function written({ value, plusMinus, origin, ...rest }: Whole): unknown {
  if (value === undefined) return undefined;
  const told = origin === 'marked' ? undefined : origin;
  if (plusMinus === undefined && told === undefined && Object.keys(rest).length === 0) return value;
  return { value, ...(plusMinus === undefined ? {} : { plusMinus }), ...(told === undefined ? {} : { origin: told }), ...rest };
}

/**
 * A quantity with another value, all else of it kept. One that was only guessed stays a guess, now with
 * this value and the guess's own ±: moving it tells nothing new about it.
 */
export function withAmount(here: unknown, value: number, guessed?: { plusMinus: number }): unknown {
  if (here === undefined && guessed) return written({ value, plusMinus: guessed.plusMinus, origin: 'assumed' });
  return written({ ...partsOf(here), value });
}
