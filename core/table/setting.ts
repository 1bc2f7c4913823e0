import type { ZodOptional } from 'zod';
import { Gap, type Leaf, leaf, type Node } from '../figure.ts';
import type { Input } from '../pairing/input.ts';
import { type Ends, quantityIn, quantityOf } from '../parts/quantity.ts';
import type { Guess } from '../parts/typical.ts';

/**
 * What is set on the table and is no part of the pairing: an overlap, a rail's error, an exposure. Each is
 * made once, here, with its leaf; the schema of requests, the inputs with their ± and the page's fields follow.
 */
export interface Setting<K extends string = string> {
  /** Its name in requests; its path is `/<key>`. */
  readonly key: K;
  readonly words: string;
  readonly leaf: Leaf<number>;
  readonly bounds: Ends;
  /** What is taken where it is left out: a choice, not a guess. */
  readonly usual: number | undefined;
  /** A guess, typical of its class, where it is left out; told as an assumption. */
  readonly standing: Standing | undefined;
}

/** What else is set, by key, as plain numbers. */
export type Read = (key: string) => number | undefined;
/** A guess, or one that follows from what else is set; none where too little is. */
export type Standing = Guess | ((read: Read) => Guess | undefined);

interface SettingText<K extends string> {
  key: K;
  words: string;
  symbol: string;
  unit: string;
  bounds: Ends;
  usual?: number;
  standing?: Standing;
}

export const setting = <const K extends string>({ key, symbol, unit, words, bounds, usual, standing }: SettingText<K>): Setting<K> => ({
  key,
  words,
  bounds,
  usual,
  standing,
  leaf: leaf(key, symbol, unit, words),
});

export type Shape<S extends readonly Setting[]> = { [Key in S[number]['key']]: ZodOptional<ReturnType<typeof quantityIn>> };

/** The shape of requests that hold some settings; every one may be left out. */
export const shapeOf = <const S extends readonly Setting[]>(settings: S): Shape<S> =>
  Object.fromEntries(settings.map((one) => [one.key, quantityIn(one.bounds).optional()])) as unknown as Shape<S>;

const pathOf = ({ key }: Setting): string => `/${key}`;

/** A guess cut to what the input may be. */
function within([low, high]: Ends, { value, plusMinus, why }: Guess): Guess {
  const cut = (x: number): number => Math.min(high, Math.max(low, x));
  const [least, greatest] = [cut(value - plusMinus), cut(value + plusMinus)];
  return { value: (least + greatest) / 2, plusMinus: (greatest - least) / 2, why };
}

const guessed = ({ standing, bounds }: Setting, read: Read): Guess | undefined => {
  const guess = typeof standing === 'function' ? standing(read) : standing;
  return guess && within(bounds, guess);
};

/**
 * What a setting's leaf holds, and the input that it is where it is a number.
 * @param read what else is set
 */
export function put(one: Setting, given: unknown, read: Read): { value: unknown; input?: Input } {
  const guess = given === undefined ? guessed(one, read) : undefined;
  const plain = given ?? one.usual;
  const { value, plusMinus, origin } =
    guess !== undefined
      ? { ...guess, origin: 'assumed' as const }
      : plain === undefined
        ? { value: Gap.unknown(pathOf(one)), plusMinus: 0, origin: 'marked' as const }
        : quantityOf(plain as Parameters<typeof quantityOf>[0]);
  if (typeof value !== 'number') return { value };
  const [low, high] = one.bounds;
  return {
    value,
    input: {
      path: pathOf(one),
      leaf: one.leaf as Node,
      value,
      plusMinus,
      least: Math.max(low, value - plusMinus),
      greatest: Math.min(high, value + plusMinus),
      origin,
      guess: guess?.why ?? (origin === 'assumed' ? 'given as typical of its class' : undefined),
      put: (_, x) => x,
    },
  };
}
