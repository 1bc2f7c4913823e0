import { Gap, type Node } from '../figure.ts';
import type { WorkedOut } from '../pairing/working.ts';

/** A node's value on what was worked out; undefined where there is none. */
export function rawOf<T>({ sheet, graph }: WorkedOut, node: Node): T | undefined {
  const value = sheet[graph.place.get(node) as number];
  return value instanceof Gap ? undefined : (value as T);
}
