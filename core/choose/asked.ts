import type { FigureId } from '../pairing/registry.ts';
import type { Pairing } from '../pairing/schema.ts';
import type { Objective } from '../parts/objective.ts';
import type { Relay } from '../parts/relay.ts';
import type { Sensor } from '../parts/sensor.ts';
import { subjectOf, type Want } from './want.ts';

/** A part to choose from. */
export interface Offered<Part> {
  readonly part: Part;
  /** The id by which a shelf knows it. */
  readonly id?: string;
  /** It is there already: it costs nothing any more. */
  readonly owned?: boolean;
  readonly price?: number;
}

/** By what the list is sorted, and which end comes first. */
export interface Sort {
  readonly by: FigureId | 'price';
  readonly first: 'least' | 'greatest';
}

/** A search: every objective with every relay at every infinity space, before one sensor. */
export interface Asked {
  readonly want: Want;
  readonly sensor: Sensor;
  readonly objectives: readonly Offered<Objective>[];
  readonly relays: readonly Offered<Relay>[];
  readonly infinitySpacesMm: readonly number[];
  readonly sort: Sort;
  /** The figures of which the frontier is drawn: those of `BETTER`. */
  readonly frontier: readonly FigureId[];
  /** How many choices are told, besides those on the frontier. */
  readonly most: number;
  /** That of an objective and a relay only the spacing that comes first is told, with the others that do. */
  readonly eachPairOnce?: boolean;
}

/** How many pairings one search may consider, spacings counted. */
export const MOST_CONSIDERED = 250_000;
export const MOST_TOLD = 200;

export const DEFAULT_SPACES_MM = [30, 60, 90] as const;
export const DEFAULT_SORT: Sort = { by: 'resolvedDetailUm', first: 'least' };
export const DEFAULT_FRONTIER = ['resolvedDetailUm', 'objectFieldWidthMm'] as const satisfies readonly FigureId[];
export const DEFAULT_TOLD = 24;

/** One of the pairings that a search considers, by the places of its parts. */
export type Place = readonly [objective: number, relay: number, space: number];

export const pairingAt = ({ want, sensor, objectives, relays, infinitySpacesMm }: Asked, [o, r, s]: Place): Pairing => {
  const subject = subjectOf(want);
  return {
    objective: (objectives[o] as Offered<Objective>).part,
    relay: (relays[r] as Offered<Relay>).part,
    sensor,
    infinitySpaceMm: infinitySpacesMm[s] as number,
    ...(subject ? { subject } : {}),
  };
};

/** What is still to be paid for an objective and a relay. */
export interface Price {
  /** The sum of the prices that are known, of what is not owned. */
  readonly known: number;
  /** The parts to be bought whose price is not known. */
  readonly missing: readonly ('objective' | 'relay')[];
}

export function priceOf(objective: Offered<Objective>, relay: Offered<Relay>): Price {
  const parts = [
    ['objective', objective],
    ['relay', relay],
  ] as const;
  const toBuy = parts.filter(([, { owned }]) => !owned);
  return {
    known: toBuy.reduce((sum, [, { price = 0 }]) => sum + price, 0),
    missing: toBuy.filter(([, { price }]) => price === undefined).map(([name]) => name),
  };
}
