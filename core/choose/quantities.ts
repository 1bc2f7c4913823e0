import { type Glassworks, glassOf } from '../pairing/glassworks.ts';
import type { Pairing } from '../pairing/schema.ts';
import { withValue } from '../pairing/sweep.ts';
import { BOUNDS, type QuantityInput } from '../parts/quantity.ts';
import { rimFromThread } from '../parts/typical.ts';

/** The quantities over which a window is looked for: each can be chosen, bought or built. JSON Pointers into a pairing. */
export const VARIABLES = ['/relay/focalLengthMm', '/infinitySpaceMm', '/relay/clearApertureMm'] as const;
export type Variable = (typeof VARIABLES)[number];

interface Quantity {
  /** What has it, after 'any' and 'no'. */
  readonly noun: string;
  readonly bounds: readonly [number, number];
  /** Where it is looked for unless told otherwise, mm. */
  readonly usual: readonly [number, number];
  /** Whether equal steps are equal parts of the value, or equal lengths. */
  readonly steps: 'ratio' | 'length';
}

export const QUANTITIES: Readonly<Record<Variable, Quantity>> = {
  // From a short tube lens or a +10 D close-up lens and less to the longest telephoto that is worth carrying.
  '/relay/focalLengthMm': { noun: 'relay', bounds: BOUNDS.focalLengthMm, usual: [50, 600], steps: 'ratio' },
  // From a relay that touches the objective to more tube than stays straight.
  '/infinitySpaceMm': { noun: 'infinity space', bounds: BOUNDS.infinitySpaceMm, usual: [0, 300], steps: 'length' },
  '/relay/clearApertureMm': { noun: 'clear opening', bounds: BOUNDS.clearApertureMm, usual: [5, 150], steps: 'ratio' },
};

const put = (q: QuantityInput | undefined, value: number): QuantityInput => (typeof q === 'object' ? { ...q, value } : value);

/**
 * The pairing with another value of one quantity. A relay of another focal length is another lens: its glass is
 * left out, and with it what the engraving says twice; the opening that the glass left is held.
 */
export function another(pairing: Pairing, vary: Variable, value: number, works?: Glassworks): Pairing {
  if (vary === '/infinitySpaceMm') return { ...pairing, infinitySpaceMm: put(pairing.infinitySpaceMm, value) };
  if (vary === '/relay/clearApertureMm')
    return { ...pairing, relay: { ...pairing.relay, clearApertureMm: put(pairing.relay.clearApertureMm, value) } };
  const changed = withValue(pairing, vary, value);
  const { focalLengthRangeMm: _, ...relay } = changed.relay;
  if (relay.fNumber !== undefined && relay.entrancePupilDiameterMm !== undefined) delete relay.fNumber;
  const rim = relay.clearApertureMm ?? (pairing.relay.glass && rimOfGlass(pairing, works));
  return { ...changed, relay: { ...relay, ...(rim === undefined ? {} : { clearApertureMm: rim }) } };
}

/** The opening that the glass leaves where nothing narrower stands before it. */
function rimOfGlass(pairing: Pairing, works?: Glassworks): number | undefined {
  const across = glassOf(pairing, works)?.clearDiameterMm ?? Number.POSITIVE_INFINITY;
  const guess = rimFromThread(pairing.relay)?.value ?? Number.POSITIVE_INFINITY;
  return across < guess ? across : undefined;
}
