import { alike, type Call, called, callOf } from './call.ts';
import type { Node } from './figure.ts';

/** The values of a graph's nodes, in its order. */
export type Sheet = unknown[];

export interface Graph {
  /** Every node after all that it needs. */
  readonly order: readonly Node[];
  readonly place: ReadonlyMap<Node, number>;
  /** A sheet with every node worked out from the leaves' values. */
  fill(leaves: { get(leaf: Node): unknown }): Sheet;
  /** `sheet` brought up to date after any of its leaves were written. */
  recompute(sheet: Sheet): void;
  /**
   * `sheet` brought up to date after the leaf at `place` was written; where `toward` is given, only what the node
   * there needs. A node none of whose needs comes out otherwise than before stays as it is.
   */
  follow(sheet: Sheet, place: number, toward?: number): void;
  /** The places that follow from the leaf at `place`, in order. */
  followers(place: number): readonly number[];
  /** How each node is worked out; undefined for leaves. */
  readonly calls: readonly (Call | undefined)[];
  /** Where the needs of each node stand. */
  readonly needs: readonly (readonly number[])[];
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
  const calls = order.map((node) => (node.kind === 'leaf' ? undefined : callOf(node)));
  const leaves = order.flatMap((node, i) => (node.kind === 'leaf' ? [i] : []));
  const leafNodes = leaves.map((i) => order[i] as Node);
  const worked = order.flatMap((node, i) => (node.kind === 'leaf' ? [] : [i]));
  const blank: Sheet = order.map(() => undefined);
  // All that is worked out, in turn: flat lists, since to look into an object for each takes as long as a short formula.
  const ofs = worked.map((i) => (calls[i] as Call).of);
  const counts = worked.map((i) => (calls[i] as Call).count);
  const opens = worked.map((i) => (calls[i] as Call).open);
  const needsInTurn = Int32Array.from(worked.flatMap((i) => needs[i] as number[]));

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
    for (let k = 0, from = 0; k < worked.length; k++) {
      const count = counts[k] as number;
      sheet[worked[k] as number] = called(ofs[k] as Call['of'], count, opens[k] as boolean, needsInTurn, from, sheet);
      from += count;
    }
  };

  return {
    order,
    place,
    fill(values) {
      const sheet: Sheet = blank.slice();
      for (let k = 0; k < leaves.length; k++) sheet[leaves[k] as number] = values.get(leafNodes[k] as Node);
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
        const call = calls[i] as Call;
        const value = called(call.of, call.count, call.open, own, 0, sheet);
        if (alike(call, value, sheet[i])) continue;
        sheet[i] = value;
        changedIn[i] = run;
      }
    },
    followers,
    calls,
    needs,
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
