import type { Pairing } from '../../pairing/schema.ts';

/**
 * How a relay is brought to infinity: a camera lens by its focus ring, all others by the length of the tube behind
 * them. A camera lens that is turned round has no use of its ring.
 */
export type Way = 'ring' | 'tube';

export const wayOf = ({ relay }: Pairing): Way => (relay.kind === 'camera-lens' && !relay.reversed ? 'ring' : 'tube');

/** A sensor that is out of place, by what the user turns or screws: `too long`, `beyond its focus`. */
export const OUT: Record<Way, { readonly short: string; readonly long: string }> = {
  tube: { short: 'too short', long: 'too long' },
  ring: { short: 'short of focus', long: 'beyond focus' },
};
