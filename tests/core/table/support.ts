import type { Node } from '../../../core/figure.ts';

/** What a figure or step is of given values of its needs, in their order: no graph, no other figure. */
export const ofNeeds = (node: Node, ...values: readonly unknown[]): unknown =>
  (node as unknown as { of: (...values: readonly unknown[]) => unknown }).of(...values);
