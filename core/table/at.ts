import { Gap, type Node } from '../figure.ts';
import type { Worked } from '../pairing/evaluate.ts';

type Sheets = Pick<Worked<string>, 'graph' | 'sheet'>;

/** A number among what was worked out, or undefined where there is none. */
export const numberAt = (worked: Sheets, node: Node): number | undefined => {
  const value = valueAt<unknown>(worked, node);
  return typeof value === 'number' ? value : undefined;
};

/** A value of whatever type among what was worked out, or undefined where there is none. */
export function valueAt<T>({ graph, sheet }: Sheets, node: Node<T>): T | undefined {
  const value = sheet[graph.place.get(node) as number];
  return value instanceof Gap ? undefined : (value as T);
}
