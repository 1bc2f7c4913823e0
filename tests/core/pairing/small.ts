import { type Figure, figure, Gap, leaf, type Node, openFigure } from '../../../core/figure.ts';
import { type Graph, graph, type Sheet } from '../../../core/graph.ts';
import type { Input } from '../../../core/pairing/input.ts';

/** A graph of two or three inputs, small enough to work out by hand. */
export const [x, y, z] = [leaf('x', 'x', 'mm', 'an input'), leaf('y', 'y', '1', 'another'), leaf('z', 'z', '', 'a third')];

/** An input between its ends, moved by itself where it is `apart`. */
export const input = (node: Node, value: number, [least, greatest]: readonly [number, number], more: Partial<Input> = {}): Input => ({
  path: `/${node.id}`,
  leaf: node,
  value,
  plusMinus: Math.max(value - least, greatest - value),
  least,
  greatest,
  origin: 'marked',
  guess: undefined,
  put: (_, to) => to,
  ...more,
});

interface More {
  bounds?: readonly [number, number];
  noneCountsAs?: number;
}
const ANY = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
const text = { unit: 'mm', symbol: 'f', words: 'w', source: 's', as: () => '' } as const;

/** A figure of x, y and z, without bounds unless told. */
export const of3 = (of: (x: number, y: number, z: number) => number | Gap, more: More = {}): Figure =>
  figure({ id: 'f', ...text, needs: [x, y, z], of, bounds: ANY, ...more });

export const open3 = (of: (x: number | Gap, y: number | Gap, z: number | Gap) => number | Gap, more: More = {}): Figure =>
  openFigure({ id: 'f', ...text, needs: [x, y, z], of, bounds: ANY, ...more });

/** Figures worked out from the inputs' values. */
export function sheetOf(figures: readonly Figure[], inputs: readonly Input[]): { all: Graph; sheet: Sheet } {
  const all = graph([...figures, x, y, z]);
  const values = new Map<Node, unknown>([x, y, z].map((node) => [node, 0]));
  for (const { leaf: node, value } of inputs) values.set(node, value);
  return { all, sheet: all.fill(values) };
}
export { Gap };
