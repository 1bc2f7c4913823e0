import { type Asked, choosing, wantSchema } from '../../core/choosing.ts';
import { manyParts } from '../support/many-parts.ts';

/** How a search grows with what it considers: parts without glass, five spacings, a wish of six limits. */

const PARTS = manyParts(200);
const asked = (objectives: number, relays: number): Asked => ({
  want: wantSchema.parse({
    subject: { widthMm: 1, heightMm: 1.5, depthMm: 0.4 },
    finestDetailUm: 2,
    minWorkingDistanceMm: 8,
    minCornerIllumination: 0.4,
    maxLengthMm: 400,
  }),
  sensor: { widthMm: 23.5, heightMm: 15.6, pixelPitchUm: 3.9 },
  objectives: PARTS.objectives.slice(0, objectives),
  relays: PARTS.relays.slice(0, relays),
  infinitySpacesMm: [20, 50, 80, 110, 140],
  sort: { by: 'resolvedDetailUm', first: 'least' },
  frontier: ['resolvedDetailUm', 'objectFieldWidthMm'],
  most: 24,
});

interface Growth {
  pairings: number;
  seconds: number;
  usEach: number;
  /** What stands in memory when it is done, less what stood before, MB. */
  heapMb: number;
}

function measured(objectives: number, relays: number): Growth {
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  const began = performance.now();
  const search = choosing(asked(objectives, relays));
  while (!search.next().done);
  const seconds = (performance.now() - began) / 1000;
  globalThis.gc?.();
  const pairings = objectives * relays * 5;
  return {
    pairings,
    seconds: Number(seconds.toPrecision(3)),
    usEach: Number(((1e6 * seconds) / pairings).toPrecision(3)),
    heapMb: Math.round((process.memoryUsage().heapUsed - before) / 1e5) / 10,
  };
}

/** At 1,000, 10,000, 100,000 and 200,000 pairings, the first run thrown away. */
export function growth(): Growth[] {
  measured(20, 10);
  return [measured(20, 10), measured(20, 100), measured(100, 200), measured(200, 200)];
}
