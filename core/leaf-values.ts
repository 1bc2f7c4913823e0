import type { Node } from './figure.ts';

/** What leaves are worth: a map by their numbers, a list, because every report writes and reads all of them. */
export class LeafValues {
  private readonly values: unknown[];

  constructor(as?: LeafValues) {
    this.values = as ? as.values.slice() : [];
  }

  /** Undefined where nothing was set, and for what is no leaf. */
  get(node: Node): unknown {
    return node.kind === 'leaf' ? this.values[node.number] : undefined;
  }

  /** @throws where it is no leaf */
  set(leaf: Node, value: unknown): this {
    if (leaf.kind !== 'leaf') throw new Error(`${leaf.id} is worked out`);
    this.values[leaf.number] = value;
    return this;
  }
}
