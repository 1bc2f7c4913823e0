import { trace } from '../../core/glassworks.ts';
import { faster } from '../measure/timed.ts';
import { byHand, copy, like } from './rays.ts';
import { BEAM, PRESCRIBED } from './relay.ts';

const SURFACES = 3;

/** Rays through three surfaces by the general loop, against a loop written for this lens alone. */
export function tracing() {
  // Bundles to trace into, so that neither way pays for more than its copy.
  const [own, hands] = [like(BEAM), like(BEAM)];
  const timed = faster(
    () => trace(PRESCRIBED, copy(BEAM, own)),
    () => byHand(PRESCRIBED, BEAM, copy(BEAM, hands)),
  );
  return { ...timed, millionRaysTimesSurfacesPerSecond: (SURFACES * BEAM.count * timed.perSecond) / 1e6 };
}
