import { graph } from '../../graph.ts';
import { soundInputs } from '../../pairing/evaluate.ts';
import { systemMagnification } from '../../pairing/first-order.ts';
import type { Glassworks } from '../../pairing/glassworks.ts';
import { width } from '../../pairing/leaves.ts';
import type { Pairing } from '../../pairing/schema.ts';
import { BOUNDS } from '../../parts/quantity.ts';
import { benchOf } from './bench.ts';
import type { Found } from './found.ts';
import { solveOne } from './one.ts';
import type { Reading } from './readings.ts';
import { MAGNIFICATION } from './unknowns.ts';

/** A magnification with its 95 %. */
export interface Seen {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly from: readonly number[];
}

const GRAPH = graph([systemMagnification]);

/**
 * The pairing's magnification itself: whatever shares it out between relay and objective is no doubt of it. It is
 * solved through the engraving, in proportion to which it is, with the sensor's width alone in doubt; pixels count
 * as they stand.
 *
 * @param readings those of rulers; what was seen at another spacing or focus is another magnification
 */
export function magnificationSeen(pairing: Pairing, readings: readonly Reading[], works?: Glassworks): Seen | undefined {
  const here = readings.filter(({ stood }) => stood.length === 0);
  if (here.length === 0) return undefined;
  const bench = benchOf(pairing, here, [MAGNIFICATION], works, ({ leaf }) => leaf === width);
  if (here.some((_, i) => bench.missing(i).length > 0)) return undefined;
  const { solved } = solveOne(bench, BOUNDS.magnification);
  const found = solved?.ways[0]?.[0];
  const m = GRAPH.fill(soundInputs(pairing, works).values)[GRAPH.place.get(systemMagnification) as number];
  if (!found || typeof m !== 'number') return undefined;
  const engraved = pairing.objective.magnification;
  const perEngraved = m / (typeof engraved === 'number' ? engraved : engraved.value);
  const { value, low, high }: Found = found;
  return { value: value * perEngraved, low: low * perEngraved, high: high * perEngraved, from: here.map(({ place }) => place) };
}
