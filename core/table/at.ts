import type { Node } from '../figure.ts';
import type { Worked } from '../pairing/evaluate.ts';

/** A number among what was worked out, or undefined where there is none. */
export function numberAt({ graph, sheet }: Pick<Worked<string>, 'graph' | 'sheet'>, node: Node): number | undefined {
  const value = sheet[graph.place.get(node) as number];
  return typeof value === 'number' ? value : undefined;
}
