import type { Unit } from './units.ts';

/**
 * Figures and what they rest on, as a graph of plain functions.
 *
 * A *leaf* is an input, a *step* a value on the way, a *figure* a number that people read: it carries
 * its unit, its words, its formula and its source, and this is their only home. Each names what it
 * needs as objects, so the graph has no cycles and the types follow; evaluation runs once in order of
 * need, and after a change of one leaf only through what follows from it.
 */

/** A value that cannot be given: `unknown` for want of an input, `none` because there is none. */
export class Gap {
  private constructor(
    readonly state: 'unknown' | 'none',
    readonly missing: readonly string[],
    readonly why: string,
  ) {}
  static unknown(...missing: string[]): Gap {
    return new Gap('unknown', missing, '');
  }
  static none(why: string): Gap {
    return new Gap('none', [], why);
  }
  /** What several gaps come to: nothing exists if one says so, else all that is missing. */
  static join(gaps: readonly Gap[]): Gap {
    return gaps.find((g) => g.state === 'none') ?? new Gap('unknown', [...new Set(gaps.flatMap((g) => g.missing))], '');
  }
  /** What the gaps among some values come to; undefined where there are none. */
  static among(values: readonly unknown[]): Gap | undefined {
    let first: Gap | undefined;
    for (const value of values) {
      if (!(value instanceof Gap)) continue;
      if (first) return Gap.join(values.filter((v) => v instanceof Gap));
      first = value;
    }
    return first;
  }
}

interface Base<T> {
  readonly id: string;
  /** How it is written in a formula; '' for what is not a number. */
  readonly symbol: string;
  readonly words: string;
  /** Never set: carries the type. */
  readonly value?: T;
}

export interface Leaf<T> extends Base<T> {
  readonly kind: 'leaf';
  readonly unit: string;
  /** Which of all leaves it is, from 0 on. */
  readonly number: number;
}

export interface Step<T> extends Base<T> {
  readonly kind: 'step' | 'figure';
  readonly needs: readonly Node<unknown>[];
  readonly of: (...values: never[]) => T | Gap;
  /** True where `of` wants to see gaps itself; otherwise a gap in any need is passed on. */
  readonly open: boolean;
  /** For values that are objects: whether two are alike to all that follows, so that it need not be worked out again. */
  same?(a: T, b: T): boolean;
  readonly unit: string;
  /** The formula in the needs' symbols or values; what it returns can be worked out as it stands. */
  readonly as: (...texts: string[]) => string;
}

export interface Figure<Id extends string = string> extends Step<number> {
  readonly kind: 'figure';
  readonly id: Id;
  readonly unit: Unit;
  readonly source: string;
  /** Physical bounds: low and high are cut here. */
  readonly bounds: readonly [least: number, greatest: number];
  /** What the absence of a value counts as when ± are told: 0 for a space, Infinity for a remedy. */
  readonly noneCountsAs: number;
}

// biome-ignore lint/suspicious/noExplicitAny: a node of any type; the needs' own types are checked where they are used
export type Node<T = any> = Leaf<T> | Step<T>;
type Values<N extends readonly Node[]> = { [K in keyof N]: N[K] extends Node<infer T> ? T : never };
type OpenValues<N extends readonly Node[]> = { [K in keyof N]: N[K] extends Node<infer T> ? T | Gap : never };
type Texts<N extends readonly Node[]> = { [K in keyof N]: string };

let leaves = 0;

export const leaf = <T = number>(id: string, symbol: string, unit: string, words: string): Leaf<T> => ({
  kind: 'leaf',
  number: leaves++,
  id,
  symbol,
  unit,
  words,
});

interface StepText<N extends readonly Node[]> {
  id: string;
  needs: N;
  symbol?: string;
  unit?: string;
  words?: string;
  as?: (...texts: Texts<N>) => string;
}

const blank = { symbol: '', words: '', unit: '', as: () => '' };

export const step = <const N extends readonly Node[], T>(
  def: StepText<N> & { of: (...values: Values<N>) => T | Gap; same?: (a: T, b: T) => boolean },
): Step<T> => ({ ...blank, ...def, kind: 'step', open: false }) as unknown as Step<T>;

/** A step that is shown the gaps among its needs and decides itself. */
export const openStep = <const N extends readonly Node[], T>(def: StepText<N> & { of: (...values: OpenValues<N>) => T | Gap }): Step<T> =>
  ({ ...blank, ...def, kind: 'step', open: true }) as unknown as Step<T>;

interface FigureText<Id extends string, N extends readonly Node[]> {
  id: Id;
  unit: Unit;
  symbol: string;
  words: string;
  source: string;
  needs: N;
  as: (...texts: Texts<N>) => string;
  bounds?: readonly [number, number];
  noneCountsAs?: number;
}

const figureDefaults = { kind: 'figure', bounds: [0, Number.POSITIVE_INFINITY], noneCountsAs: 0 } as const;

export const figure = <const Id extends string, const N extends readonly Node[]>(
  def: FigureText<Id, N> & { of: (...values: Values<N>) => number | Gap },
): Figure<Id> => ({ ...figureDefaults, ...def, open: false }) as unknown as Figure<Id>;

export const openFigure = <const Id extends string, const N extends readonly Node[]>(
  def: FigureText<Id, N> & { of: (...values: OpenValues<N>) => number | Gap },
): Figure<Id> => ({ ...figureDefaults, ...def, open: true }) as unknown as Figure<Id>;
