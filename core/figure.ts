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
}

export interface Step<T> extends Base<T> {
  readonly kind: 'step' | 'figure';
  readonly needs: readonly Node<unknown>[];
  readonly of: (...values: never[]) => T | Gap;
  /** True where `of` wants to see gaps itself; otherwise a gap in any need is passed on. */
  readonly open: boolean;
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

export const leaf = <T = number>(id: string, symbol: string, unit: string, words: string): Leaf<T> => ({
  kind: 'leaf',
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

export const step = <const N extends readonly Node[], T>(def: StepText<N> & { of: (...values: Values<N>) => T | Gap }): Step<T> =>
  ({ ...blank, ...def, kind: 'step', open: false }) as unknown as Step<T>;

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

/** The values of a graph's nodes, in its order. */
export type Sheet = unknown[];

export interface Graph {
  /** Every node after all that it needs. */
  readonly order: readonly Node[];
  readonly place: ReadonlyMap<Node, number>;
  /** A sheet with every node worked out from the leaves' values. */
  fill(leaves: ReadonlyMap<Node, unknown>): Sheet;
  /** `sheet` brought up to date after the leaf at `place` was written. */
  follow(sheet: Sheet, place: number): void;
  /** `sheet` brought up to date after any of its leaves were written. */
  recompute(sheet: Sheet): void;
  /** The places that follow from the leaf at `place`, in order. */
  followers(place: number): readonly number[];
}

/** Puts `outputs` and all that they need in order. */
export function graph(outputs: readonly Node[]): Graph {
  const order: Node[] = [];
  const place = new Map<Node, number>();
  const visit = (node: Node): void => {
    if (place.has(node)) return;
    if (node.kind !== 'leaf') for (const need of node.needs) visit(need);
    place.set(node, order.length);
    order.push(node);
  };
  for (const output of outputs) visit(output);

  const needs = order.map((node) => (node.kind === 'leaf' ? [] : node.needs.map((need) => place.get(need) as number)));
  const work = order.map((node, i) => worker(node, needs[i] as number[]));
  const worked = order.flatMap((node, i) => (node.kind === 'leaf' ? [] : [i]));
  const following = order.map((_, i) => {
    const reached = new Set([i]);
    for (let j = i + 1; j < order.length; j++) if ((needs[j] as number[]).some((n) => reached.has(n))) reached.add(j);
    return [...reached].slice(1);
  });

  const recompute = (sheet: Sheet): void => {
    for (const i of worked) sheet[i] = (work[i] as Worker)(sheet);
  };

  return {
    order,
    place,
    fill(leaves) {
      const sheet: Sheet = order.map((node) => leaves.get(node));
      recompute(sheet);
      return sheet;
    },
    recompute,
    follow(sheet, at) {
      for (const i of following[at] as number[]) sheet[i] = (work[i] as Worker)(sheet);
    },
    followers: (at) => following[at] as number[],
  };
}

type Worker = (sheet: Sheet) => unknown;

function worker(node: Node, needs: readonly number[]): Worker {
  if (node.kind === 'leaf') return () => undefined;
  const of = node.of as (...values: unknown[]) => unknown;
  const plain = called(of, needs);
  if (node.open) return plain;
  return (sheet) => {
    let first: Gap | undefined;
    let more = false;
    for (const n of needs) {
      const value = sheet[n];
      if (!(value instanceof Gap)) continue;
      if (first) more = true;
      else first = value;
    }
    if (!first) return plain(sheet);
    return more ? Gap.join(needs.map((n) => sheet[n]).filter((v) => v instanceof Gap)) : first;
  };
}

/** `of` with its needs picked from the sheet; written out by number, which is several times faster than a spread. */
function called(of: (...values: unknown[]) => unknown, needs: readonly number[]): Worker {
  const [a, b, c, d, e] = needs as [number, number, number, number, number];
  switch (needs.length) {
    case 1:
      return (s) => of(s[a]);
    case 2:
      return (s) => of(s[a], s[b]);
    case 3:
      return (s) => of(s[a], s[b], s[c]);
    case 4:
      return (s) => of(s[a], s[b], s[c], s[d]);
    case 5:
      return (s) => of(s[a], s[b], s[c], s[d], s[e]);
    default:
      return (s) => of(...needs.map((n) => s[n]));
  }
}
