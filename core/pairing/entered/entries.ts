import { Gap, type Node } from '../../figure.ts';
import { LeafValues } from '../../leaf-values.ts';
import { BOUNDS, type Bounded, type Quantity, type QuantityInput, quantityOf } from '../../parts/quantity.ts';
import * as typical from '../../parts/typical.ts';
import type { Input } from '../input.ts';

/** What is entered of a pairing: leaves with their values, and the list of numbers that may be moved, in the order entered. */
export interface Entries {
  readonly values: LeafValues;
  readonly list: Input[];
  /** A number into the list alone; `guess` says why it, or its interval, is one. */
  enter(leaf: Node, name: Bounded, path: string, q: Quantity, guess?: string, put?: Input['put']): void;
  /** A number as it is given; `loose` is the ± of a marking that states none. */
  take(leaf: Node, name: Bounded, path: string, q: QuantityInput, loose?: (q: Quantity) => typical.Guess): void;
  takeIfGiven(leaf: Node, name: Bounded, path: string, q: QuantityInput | undefined): void;
  assume(leaf: Node, name: Bounded, path: string, guess: typical.Guess): void;
  /** A number that is moved by itself (`Input.apart`), guessed where it is not given. */
  takeApart(leaf: Node, name: Bounded, path: string, q: QuantityInput | undefined, guess?: () => typical.Guess): void;
}

const statesItsSpread = (q: QuantityInput): boolean => typeof q !== 'number' && (q.plusMinus !== undefined || q.origin === 'measured');

/** Why a number that is given is a guess all the same. */
export const guessed = ({ origin }: Quantity): string | undefined => (origin === 'assumed' ? 'given as typical of its class' : undefined);

const scalar: Input['put'] = (_, x) => x;

export function entries(): Entries {
  const values = new LeafValues();
  const list: Input[] = [];
  let apart: Input['apart'];
  const enter: Entries['enter'] = (leaf, name, path, q, guess, put = scalar) => {
    const [low, high] = BOUNDS[name];
    const least = Math.max(low, q.value - q.plusMinus);
    const greatest = Math.min(high, q.value + q.plusMinus);
    list.push({ path, leaf, value: q.value, plusMinus: q.plusMinus, least, greatest, origin: q.origin, guess, apart, put });
  };
  const take: Entries['take'] = (leaf, name, path, q, loose) => {
    const plain = quantityOf(q);
    const guess = loose && !statesItsSpread(q) ? loose(plain) : undefined;
    values.set(leaf, plain.value);
    enter(leaf, name, path, guess ? { ...plain, plusMinus: guess.plusMinus } : plain, guess?.why ?? guessed(plain));
  };
  const assume: Entries['assume'] = (leaf, name, path, guess) => {
    const { value, plusMinus, why } = typical.within(name, guess);
    values.set(leaf, value);
    enter(leaf, name, path, { value, plusMinus, origin: 'assumed' }, why);
  };
  const takeIfGiven: Entries['takeIfGiven'] = (leaf, name, path, q) => {
    if (q === undefined) values.set(leaf, Gap.unknown(path));
    else take(leaf, name, path, q);
  };
  const takeApart: Entries['takeApart'] = (leaf, name, path, q, guess) => {
    apart = 'one way';
    if (q === undefined && guess) assume(leaf, name, path, guess());
    else takeIfGiven(leaf, name, path, q);
    apart = undefined;
  };
  return { values, list, enter, take, takeIfGiven, assume, takeApart };
}
