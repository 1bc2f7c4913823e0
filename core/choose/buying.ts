import type { Objective } from '../parts/objective.ts';
import type { Relay, RelayKind } from '../parts/relay.ts';

/**
 * What to look at when a part arrives, while it can still go back. Common practice of the trade, from memory,
 * without a source; the seller's and the maker's terms decide.
 */
const OBJECTIVE = [
  'The engraving: magnification, aperture, ∞ and the cover glass must be the ones paid for.',
  'The thread: it must go in by hand, without force, to the shoulder.',
  'The front lens under a lamp held low: no scratch, no haze, no edge where cement has let go.',
  'A flat print before a relay known to be sharp: the circle on the sensor within which it stays crisp, times the tube-lens focal length of the engraving over the relay’s, is the field that you tested good.',
  'The working distance, with a ruler from the print to the foremost rim.',
] as const;

const RELAY: Readonly<Record<RelayKind, readonly string[]>> = {
  supplementary: [
    'Its true power: cast the picture of a far building onto paper and measure lens to paper. Never the sun: it burns.',
    'The clear opening on both sides, with a caliper that does not touch the glass.',
    'Both threads: each must go in by hand, without force.',
    'Against a lamp held low: no scratch, no haze, no coloured rings where cement has let go.',
    'A flat print through the whole rig, both ways round: keep the way that is crisper in the corners.',
  ],
  'camera-lens': [
    'That it reaches infinity, or a little past it: a far edge must come sharp before the stop. Never the sun.',
    'The aperture: open at the number paid for, blades free of oil.',
    'Against a lamp held low: no haze, no fungus, no edge where cement has let go.',
    'The filter thread: it will carry the objective, and a heavy one wants a support of its own.',
  ],
  'tube-lens': [
    'Its focal length: photograph a ruler through the whole rig.',
    'Which side faces the objective: an arrow or the maker’s drawing says it.',
    'The clear opening on both sides, with a caliper that does not touch the glass.',
    'Both threads: each must go in by hand, without force.',
  ],
};

/** What to verify on arrival, each a sentence or two. */
export const verifyOnArrival = (part: Objective | Relay): readonly string[] => ('kind' in part ? RELAY[part.kind] : OBJECTIVE);
