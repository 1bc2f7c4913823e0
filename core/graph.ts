import { Gap, type Node } from './figure.ts';

/** The values of a graph's nodes, in its order. */
export type Sheet = unknown[];

export interface Graph {
  /** Every node after all that it needs. */
  readonly order: readonly Node[];
  readonly place: ReadonlyMap<Node, number>;
  /** A sheet with every node worked out from the leaves' values. */
  fill(leaves: ReadonlyMap<Node, unknown>): Sheet;
  /** `sheet` brought up to date after any of its leaves were written. */
  recompute(sheet: Sheet): void;
  /**
   * `sheet` brought up to date after the leaf at `place` was written; where `toward` is given, only what the node
   * there needs. A node none of whose needs comes out otherwise than before stays as it is.
   */
  follow(sheet: Sheet, place: number, toward?: number): void;
  /**
   * Copies of `base` brought up to date, in each of which leaves were written: in `sheets[r]` those at
   * `written[r]`. All copies are taken from node to node together, because one function many times in a row is
   * faster than many once each.
   */
  followAll(base: Sheet, sheets: readonly Sheet[], written: readonly (readonly number[])[]): void;
  /** The places that follow from the leaf at `place`, in order. */
  followers(place: number): readonly number[];
}

type Of = (...values: unknown[]) => unknown;
type Same = (a: unknown, b: unknown) => boolean;

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
  const of = order.map((node): Of => (node.kind === 'leaf' ? () => undefined : (node.of as Of)));
  const open = order.map((node) => node.kind === 'leaf' || node.open);
  const same = order.map((node): Same | undefined => (node.kind === 'leaf' ? undefined : node.same));
  const leaves = order.flatMap((node, i) => (node.kind === 'leaf' ? [i] : []));
  const worked = order.flatMap((node, i) => (node.kind === 'leaf' ? [] : [i]));

  const work = (i: number, sheet: Sheet): unknown => called(of[i] as Of, needs[i] as number[], open[i] as boolean, sheet);
  const alike = (i: number, a: unknown, b: unknown): boolean => {
    if (Object.is(a, b)) return true;
    const by = same[i];
    return by !== undefined && !(a instanceof Gap) && !(b instanceof Gap) && by(a, b);
  };

  const followers = kept((from: number): readonly number[] => {
    const reached = new Set([from]);
    for (const i of worked) if ((needs[i] as number[]).some((n) => reached.has(n))) reached.add(i);
    return [...reached].slice(1);
  });
  const neededBy = kept((at: number): ReadonlySet<number> => {
    const all = new Set([at]);
    for (const i of worked.toReversed()) if (all.has(i)) for (const n of needs[i] as number[]) all.add(n);
    return all;
  });
  const ways = kept((to: number) => kept((from: number) => followers(from).filter((i) => neededBy(to).has(i))));

  /** For each place the run of `follow` in which it last came out otherwise; doubles, which are never used up. */
  const changedIn = new Float64Array(order.length);
  let run = 0;

  const recompute = (sheet: Sheet): void => {
    for (const i of worked) sheet[i] = work(i, sheet);
  };

  return {
    order,
    place,
    fill(values) {
      const sheet: Sheet = new Array(order.length).fill(undefined);
      for (const i of leaves) sheet[i] = values.get(order[i] as Node);
      recompute(sheet);
      return sheet;
    },
    recompute,
    follow(sheet, at, toward) {
      run++;
      changedIn[at] = run;
      for (const i of toward === undefined ? followers(at) : ways(toward)(at)) {
        const own = needs[i] as number[];
        let touched = false;
        for (let k = 0; k < own.length && !touched; k++) touched = changedIn[own[k] as number] === run;
        if (!touched) continue;
        const value = work(i, sheet);
        if (alike(i, value, sheet[i])) continue;
        sheet[i] = value;
        changedIn[i] = run;
      }
    },
    followAll(base, sheets, written) {
      // For each place a bit a sheet, set where it is not as on the base.
      const words = Math.ceil(sheets.length / 32);
      const changed = new Int32Array(order.length * words);
      written.forEach((places, r) => {
        for (const at of places) (changed[at * words + (r >> 5)] as number) |= 1 << (r & 31);
      });
      for (const i of worked)
        for (let w = 0; w < words; w++) {
          const own = needs[i] as number[];
          let touched = 0;
          for (let k = 0; k < own.length; k++) touched |= changed[(own[k] as number) * words + w] as number;
          let other = 0;
          while (touched !== 0) {
            const bit = touched & -touched;
            touched ^= bit;
            const sheet = sheets[32 * w + 31 - Math.clz32(bit)] as Sheet;
            const value = work(i, sheet);
            if (alike(i, value, base[i])) continue;
            sheet[i] = value;
            other |= bit;
          }
          changed[i * words + w] = other;
        }
    },
    followers,
  };
}

/** A function of a number that works each value out once. */
function kept<T>(of: (key: number) => T): (key: number) => T {
  const found = new Map<number, T>();
  return (key) => {
    let value = found.get(key);
    if (value === undefined) {
      value = of(key);
      found.set(key, value);
    }
    return value;
  };
}

/** `of` with its needs picked from the sheet; written out by number, which is several times faster than a spread. */
function called(of: Of, needs: readonly number[], open: boolean, s: Sheet): unknown {
  const count = needs.length;
  if (!open && someGap(needs, s)) return Gap.among(needs.map((n) => s[n]));
  const a = s[needs[0] as number];
  if (count === 1) return of(a);
  const b = s[needs[1] as number];
  if (count === 2) return of(a, b);
  const c = s[needs[2] as number];
  if (count === 3) return of(a, b, c);
  const d = s[needs[3] as number];
  if (count === 4) return of(a, b, c, d);
  const e = s[needs[4] as number];
  if (count === 5) return of(a, b, c, d, e);
  const f = s[needs[5] as number];
  if (count === 6) return of(a, b, c, d, e, f);
  const g = s[needs[6] as number];
  if (count === 7) return of(a, b, c, d, e, f, g);
  return of(...needs.map((n) => s[n]));
}

/** Numbers, which most values are, are told by their type alone. */
function someGap(needs: readonly number[], s: Sheet): boolean {
  for (let k = 0; k < needs.length; k++) {
    const value = s[needs[k] as number];
    if (typeof value === 'object' && value instanceof Gap) return true;
  }
  return false;
}
