import { Gap, type Node } from './figure.ts';

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
