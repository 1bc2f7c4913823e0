import { evaluate, pairingSchema, relativeIllumination, scaleOf, stopsOf } from '../../core/index.ts';
import opening from '../../data/opening.json' with { type: 'json' };
import { faster } from '../measure/timed.ts';
import { sampledIllumination } from './sampled.ts';

/** Good enough to be drawn, and what sampling is given to reach: the closed form is good to the last digits all the while. */
const ACCURACY = 1e-4;
const MOST_SIDE = 3200;

/**
 * The corner light at 128 radii in closed form, against sampling the pupil on the coarsest square grid, its side
 * doubled each time, that is as accurate as asked for at every radius.
 */
export function light() {
  const pairing = { ...opening.pairing, relay: { ...opening.pairing.relay, clearApertureMm: 16 }, infinitySpaceMm: 120 };
  const stops = stopsOf(evaluate(pairingSchema.parse(pairing)).sheet);
  if (!stops) throw new Error('the bench pairing has an opening that is not known');
  const slopes = Array.from({ length: 128 }, (_, i) => i / 8 / scaleOf(stops.rig));
  const worst = (side: number): number =>
    Math.max(...slopes.map((t) => Math.abs(sampledIllumination(stops.seen, t, side) - relativeIllumination(stops.seen, t))));
  let side = 50;
  while (worst(side) > ACCURACY && side < MOST_SIDE) side *= 2;
  const timed = faster(
    () => slopes.map((t) => relativeIllumination(stops.seen, t)),
    () => slopes.map((t) => sampledIllumination(stops.seen, t, side)),
  );
  return { ...timed, side, worstErrorOfSampling: worst(side) };
}
